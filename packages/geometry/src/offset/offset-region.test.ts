import { describe, expect, test } from 'vitest';
import { regionArea } from '../outline/region-measures.ts';
import { reversed } from '../ring.ts';
import { cleanRegion } from './clean-region.ts';
import { enclosingRadius } from './enclosing-circle.ts';
import { falloutZone } from './fallout-zone.ts';
import { offsetRegion, translated } from './offset-region.ts';
import { isStarShaped } from './simple-rings.ts';

const SQUARE = Float64Array.of(0, 0, 4, 0, 4, 4, 0, 4);
const area = (rings: readonly Float64Array[]) => regionArea(cleanRegion(rings));
/** Distance 0.5 m at 1 mm: the square, four strips, four quarter discs and at most 1 mm around. */
const SQUARE_OFFSET = 16 + 8 + Math.PI / 4;

describe('what a person may draw', () => {
  test.each([
    ['repeated vertices', [0, 0, 0, 0, 4, 0, 4, 0, 4, 0, 4, 4, 0, 4, 0, 0]],
    ['a closed ring, first vertex repeated', [0, 0, 4, 0, 4, 4, 0, 4, 0, 0]],
    ['vertices in a line', [0, 0, 1, 0, 2, 0, 3, 0, 4, 0, 4, 4, 0, 4, 0, 1]],
    ['a spike of no width', [0, 0, 4, 0, 4, 4, 2, 4, 2, 9, 2, 4, 0, 4]],
    ['a spike at the closing vertex', [0, 0, 4, 0, 4, 4, 0, 4, 0, 9, 0, 0]],
    ['clockwise', [0, 0, 0, 4, 4, 4, 4, 0]],
    ['gone around twice', [0, 0, 4, 0, 4, 4, 0, 4, 0, 0, 4, 0, 4, 4, 0, 4]],
    ['a vertex that is not finite', [0, 0, 4, 0, Number.NaN, 2, 4, 4, 0, 4]],
  ])('%s: the offset of the square', (_, numbers) => {
    const result = offsetRegion([Float64Array.from(numbers)], 0.5, 0.001);
    expect(area(result)).toBeGreaterThanOrEqual(SQUARE_OFFSET - 1e-4);
    expect(area(result)).toBeLessThan(SQUARE_OFFSET + 0.004);
  });

  test('a figure of eight: both lobes, though they wind opposite ways', () => {
    const eight = [Float64Array.of(0, 0, 4, 4, 4, 0, 0, 4)];
    expect(area(eight)).toBeCloseTo(8, 9);
    expect(area(offsetRegion(eight, 0.5, 0.001))).toBeGreaterThan(8 + 0.5 * 8);
  });

  test.each([
    ['nothing', []],
    ['an empty ring', [new Float64Array(0)]],
    ['one vertex', [Float64Array.of(1, 1)]],
    ['a line there and back', [Float64Array.of(0, 0, 5, 5)]],
    ['a flat triangle', [Float64Array.of(0, 0, 5, 5, 2, 2)]],
    ['nothing finite', [Float64Array.of(Number.NaN, 0, 1, Number.NaN, 2, 2)]],
  ])('%s gives nothing', (_, region) => {
    expect(offsetRegion(region, 0.5, 0.01)).toEqual([]);
    expect(cleanRegion(region)).toEqual([]);
    expect(falloutZone(region, [{ to_m: 0.5, share: 0.5 }], 0.01).layers).toEqual([[], []]);
  });
});

describe('few vertices', () => {
  test('a convex crown of many small turns keeps one vertex for each', () => {
    const circle = Float64Array.from({ length: 128 }, (_, i) =>
      i % 2 === 0 ? 4 * Math.cos((Math.PI * i) / 64) : 4 * Math.sin((Math.PI * (i - 1)) / 64),
    );
    expect(isStarShaped(circle)).toBe(true);
    expect(offsetRegion([circle], 0.5, 0.01)[0]).toHaveLength(128);
  });

  test('an inner corner with room gives one vertex, without room two', () => {
    const notched = (depth: number) => [
      Float64Array.of(0, 0, 9, 0, 9, 5, 6, 5, 6, 5 - depth, 3, 5 - depth, 3, 5, 0, 5),
    ];
    // Four mitres each at the four outer corners and the two lips, tolerance 12 mm at 0.5 m.
    const lips = offsetRegion(notched(2), 0.5, 0.012)[0].length;
    expect(offsetRegion(notched(0.2), 0.5, 0.012)[0].length).toBe(lips + 4);
  });
});

describe('misuse is refused', () => {
  test.each([
    [-1, 0.01],
    [Number.NaN, 0.01],
    [1, 0],
    [1, Number.NaN],
  ])('distance %f m, tolerance %f m', (distanceM, toleranceM) => {
    expect(() => offsetRegion([SQUARE], distanceM, toleranceM)).toThrow(RangeError);
  });

  test('drift rings out of order', () => {
    const rings = [
      { to_m: 1, share: 0.25 },
      { to_m: 0.5, share: 0.5 },
    ];
    expect(() => falloutZone([SQUARE], rings, 0.01)).toThrow('growing order');
  });
});

describe('resolving', () => {
  test('shells that overlap become one, a hole under a second shell is filled', () => {
    const hole = reversed(Float64Array.of(1, 1, 3, 1, 3, 3, 1, 3));
    expect(area([SQUARE, hole])).toBe(12);
    expect(area([SQUARE, hole, translated([SQUARE], 2, 0)[0]])).toBe(24 - 2);
  });

  test('two shells in contact at a vertex stay two simple rings', () => {
    const clean = cleanRegion([SQUARE, ...translated([SQUARE], 4, 4)]);
    expect(clean).toHaveLength(2);
    expect(regionArea(clean)).toBe(32);
  });

  test('a ring that crosses itself half-way between two cells of the grid', () => {
    const d = 2748779 / 2 ** 20;
    const clean = cleanRegion([Float64Array.of(0, 0, d, d, d, 0, 0, d)]);
    expect(clean).toHaveLength(2);
    expect(regionArea(clean)).toBeCloseTo((d * d) / 2, 5);
  });

  test('a hole in an island in a hole', () => {
    const box = (half: number) => Float64Array.of(-half, -half, half, -half, half, half, -half, half);
    const nested = [box(8), reversed(box(6)), box(4), reversed(box(2))];
    expect(area(nested)).toBe(256 - 144 + 64 - 16);
    expect(cleanRegion(nested)).toHaveLength(4);
  });
});

test('smallest enclosing circle: of a triangle with an obtuse angle its longest side, else through three points', () => {
  expect(enclosingRadius(Float64Array.of(0, 0, 10, 0, 5, 1))).toBeCloseTo(5, 12);
  expect(enclosingRadius(Float64Array.of(0, 0, 4, 0, 4, 3, 0, 3, 2, 2))).toBeCloseTo(2.5, 12);
  expect(enclosingRadius(Float64Array.of(0, 0, 3, 0, 9, 0, 5, 0))).toBeCloseTo(4.5, 12);
});
