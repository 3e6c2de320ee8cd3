import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { regionArea } from '../outline/region-measures.ts';
import { equalAreaPlane } from '../plane/local-plane.ts';
import type { LonLatGeometry } from '../ring.ts';
import { chainsOf } from './chains-of.ts';
import { groundWithin } from './ground-within.ts';
import { nearestPair } from './nearest-pair.ts';

const plane = equalAreaPlane({ lon: -80.2, lat: 25.8 });
const at = (...xy: number[]) => plane.inverse(xy);
const CHORD_M = 0.01;
const areaOf = (geometry: LonLatGeometry, metres: number) =>
  groundWithin(geometry, metres, plane, CHORD_M).reduce((sum, region) => sum + regionArea(region), 0);

describe('groundWithin', () => {
  // Closed forms: a disc, a stadium, and a square with its rounded rim.
  test('areas about a point, a line and a square', () => {
    const point: LonLatGeometry = { kind: 'point', points: at(0, 0) };
    const line: LonLatGeometry = { kind: 'line', lines: [at(0, 0, 20, 0)] };
    const square: LonLatGeometry = { kind: 'area', polygons: [[at(0, 0, 10, 0, 10, 10, 0, 10)]] };
    const disc = Math.PI * 25;
    for (const [geometry, area] of [
      [point, disc],
      [line, disc + 200],
      [square, disc + 200 + 100],
    ] as const) {
      expect(areaOf(geometry, 5)).toBeGreaterThan(area - 1e-3);
      expect(areaOf(geometry, 5)).toBeLessThan(area * 1.005);
    }
  });

  test('no geometry and no distance give nothing', () => {
    expect(groundWithin({ kind: 'none' }, 5, plane, CHORD_M)).toEqual([]);
    expect(groundWithin({ kind: 'point', points: at(0, 0) }, 0, plane, CHORD_M)).toEqual([]);
  });

  test('law: its edge is as far from the feature as asked, never nearer', () => {
    const place = fc.double({ min: -40, max: 40, noNaN: true });
    fc.assert(
      fc.property(place, place, place, place, fc.double({ min: 1, max: 30, noNaN: true }), (x, y, u, v, metres) => {
        const line: LonLatGeometry = { kind: 'line', lines: [at(x, y, u, v)] };
        for (const ring of groundWithin(line, metres, plane, CHORD_M)[0])
          for (let i = 0; i < ring.length; i += 2) {
            const vertex = [ring.slice(i, i + 2)];
            const away = nearestPair(vertex, chainsOf(line, plane.forward))?.distanceM ?? Number.NaN;
            // Vertices of tangents stand out by no more than the tolerance; coordinates went there and back.
            expect(away).toBeGreaterThan(metres - 1e-3);
            expect(away).toBeLessThan(metres + CHORD_M + 1e-3);
          }
      }),
      { seed: 9, numRuns: 40 },
    );
  });
});
