import { describe, expect, test } from 'vitest';
import { cleanRegion } from '../offset/clean-region.ts';
import { regionArea } from '../outline/region-measures.ts';
import { widenLine } from './widen-line.ts';

const area = (line: number[], widthM: number, options: Parameters<typeof widenLine>[2] = {}) =>
  regionArea(cleanRegion(widenLine(Float64Array.from(line), widthM, { chordToleranceM: 1e-6, ...options })));

describe('closed forms', () => {
  test('round ends: length × width and a disc', () => {
    expect(area([0, 0, 10, 0], 3)).toBeCloseTo(30 + Math.PI * 2.25, 4);
  });

  test('flat ends: length × width', () => {
    expect(regionArea(widenLine(Float64Array.of(0, 0, 6, 8), 3, { caps: 'flat' }))).toBeCloseTo(30, 12);
  });

  test('a right angle with flat ends: two rectangles, a quarter disc, the inner square once', () => {
    expect(area([0, 0, 10, 0, 10, 10], 2, { caps: 'flat' })).toBeCloseTo(20 + 20 - 1 + Math.PI / 4, 4);
  });

  test('a closed square has round joints at all four corners, also with flat ends asked for', () => {
    const closed = [0, 0, 10, 0, 10, 10, 0, 10, 0, 0];
    const exact = 144 - 64 - (4 - Math.PI);
    expect(area(closed, 2, { caps: 'flat' })).toBeCloseTo(exact, 4);
    expect(area(closed, 2)).toBeCloseTo(exact, 4);
  });

  test('two streets of one line that cross count the crossing once', () => {
    const cross = [-10, 0, 10, 0, 10, -20, 0, -20, 0, 10];
    expect(area(cross, 2)).toBeCloseTo(20 * 2 + 20 * 2 + 10 * 2 + 30 * 2 - 4 - 3 + (3 * Math.PI) / 4 + Math.PI, 4);
  });

  test('a line gone back over itself is the line', () => {
    expect(area([0, 0, 10, 0, 2, 0, 7, 0], 3)).toBeCloseTo(30 + Math.PI * 2.25, 4);
  });

  test('a short last segment does not eat into the line with flat ends', () => {
    const bent = area([0, 0, 10, 0, 9.5, 0.3], 4, { caps: 'flat' });
    expect(bent).toBeGreaterThan(40 + (Math.PI * 4) / 2 - 1e-6);
  });
});

describe('degenerate lines', () => {
  test('one place: a disc with round ends, nothing with flat ones', () => {
    expect(area([2, 2, 2, 2, 2, 2], 3)).toBeCloseTo(Math.PI * 2.25, 4);
    expect(widenLine(Float64Array.of(2, 2), 3, { caps: 'flat' })).toEqual([]);
  });

  test('no points, no width: nothing', () => {
    expect(widenLine(new Float64Array(0), 3)).toEqual([]);
    expect(widenLine(Float64Array.of(0, 0, 5, 5), 0)).toEqual([]);
  });

  test('points that are not finite are passed over', () => {
    expect(area([0, 0, Number.NaN, 4, 10, 0], 3)).toBeCloseTo(30 + Math.PI * 2.25, 4);
  });

  test('misuse', () => {
    const line = Float64Array.of(0, 0, 5, 5);
    expect(() => widenLine(line, -1)).toThrow(RangeError);
    expect(() => widenLine(line, Number.NaN)).toThrow(RangeError);
    expect(() => widenLine(line, 1, { chordToleranceM: 0 })).toThrow(RangeError);
    expect(() => widenLine(line, 1, { segmentsPerQuadrant: 0 })).toThrow(RangeError);
  });
});
