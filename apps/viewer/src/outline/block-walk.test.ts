import { describe, expect, test } from 'vitest';
import { blockWalk } from './block-walk.ts';

const tree = (lon: number, lat: number): GeoJSON.Feature => ({
  type: 'Feature',
  properties: {},
  geometry: { type: 'Point', coordinates: [lon, lat] },
});

const placeOf = (feature: GeoJSON.Feature) => (feature.geometry as GeoJSON.Point).coordinates;

const DEG = 0.0002; // some 22 m

describe('the walk of a block', () => {
  test('goes round a block and does not cross it', () => {
    // Eight trees round a square; the shortest open walk leaves out one side: 7 sides (closed form).
    const places = [
      [0, 2],
      [2, 0],
      [1, 2],
      [0, 0],
      [2, 2],
      [1, 0],
      [0, 1],
      [2, 1],
    ];
    const walk = blockWalk(
      places.map(([x, y]) => tree(x * DEG, y * DEG)),
      undefined,
    ).map(placeOf);
    const steps = walk.slice(1).map((to, i) => Math.hypot(to[0] - walk[i][0], to[1] - walk[i][1]) / DEG);
    expect(steps.reduce((sum, step) => sum + step, 0)).toBeCloseTo(7, 9);
    expect(new Set(walk).size).toBe(8);
  });

  test('keeps to the outline of a narrow block, though across it would be nearer', () => {
    // Two rows 10 m apart, trees 22 m apart in each: across and along costs less than round, but houses stand between.
    const row = [1, 2, 3, 4, 5];
    const trees = row.flatMap((x) => [tree(x * DEG, 0.2 * DEG), tree(x * DEG, 0.65 * DEG)]);
    const outline: GeoJSON.Feature = {
      type: 'Feature',
      properties: {},
      geometry: {
        type: 'Polygon',
        coordinates: [
          [
            [0, 0],
            [6 * DEG, 0],
            [6 * DEG, 0.85 * DEG],
            [0, 0.85 * DEG],
            [0, 0],
          ],
        ],
      },
    };
    const rows = (walk: readonly GeoJSON.Feature[]) =>
      walk.map((each) => placeOf(each)[1]).filter((lat, i, all) => i > 0 && lat !== all[i - 1]).length;
    expect(rows(blockWalk(trees, outline))).toBe(1);
    expect(rows(blockWalk(trees, undefined))).toBeGreaterThan(1);
  });

  test('few trees, and the same trees twice, are no trouble', () => {
    expect(blockWalk([], undefined)).toEqual([]);
    expect(blockWalk([tree(0, 0), tree(1, 1)], undefined).length).toBe(2);
    expect(blockWalk([tree(1, 1), tree(1, 1), tree(1, 1)], undefined).length).toBe(3);
  });
});
