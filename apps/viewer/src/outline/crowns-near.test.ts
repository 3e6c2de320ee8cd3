import { expect, test } from 'vitest';
import { crownsNear, ringsOf } from './crowns-near.ts';

/** A square of `half` degrees about a point, with a hole of a tenth of that. */
const square = (treeId: string, lon: number, lat: number, half: number): GeoJSON.Feature => ({
  type: 'Feature',
  properties: { tree_id: treeId },
  geometry: { type: 'Polygon', coordinates: [half, half / 10].map((d) => ringAbout(lon, lat, d)) },
});
const ringAbout = (lon: number, lat: number, d: number) =>
  [
    [-d, -d],
    [d, -d],
    [d, d],
    [-d, d],
    [-d, -d],
  ].map(([x, y]) => [lon + x, lat + y]);

test('crowns within reach, and whether the point lies in them', () => {
  // 0.0001° of latitude are 11 m.
  const features = [
    square('in', -80, 28, 0.00004),
    square('beside', -80, 28.0001, 0.00004),
    square('far', -80, 28.002, 0.00004),
    { type: 'Feature', properties: { tree_id: 'nowhere' }, geometry: null } as unknown as GeoJSON.Feature,
  ];
  const near = crownsNear(features, [-80.00003, 28.00003]);
  expect(near.map(({ treeId, holds }) => [treeId, holds])).toEqual([
    ['in', true],
    ['beside', false],
  ]);
  expect(near[0].shells).toHaveLength(1);
  expect(near[0].shells[0]).toHaveLength(8);
});

test('all rings of an outline, open; none of a point', () => {
  const { geometry } = square('in', 1, 2, 0.5);
  expect(ringsOf(geometry).map((ring) => ring.length)).toEqual([8, 8]);
  expect(ringsOf({ type: 'Point', coordinates: [1, 2] })).toEqual([]);
});
