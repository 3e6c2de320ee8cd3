import { expect, test } from 'vitest';
import { tilesOver } from './pack-tiles.ts';

test('tiles over a point are those of the slippy map’s published formula', () => {
  // OpenStreetMap wiki, "Slippy map tilenames": x = n (lon + 180) / 360, y = n (1 − asinh(tan lat) / π) / 2.
  const at = [13.37771496361961, 52.51628011262304] as const;
  const tiles = tilesOver([[...at, ...at]]);
  expect(tiles.map(({ z, x, y }) => [z, x, y])[0]).toEqual([17, 70406, 42987]);
  expect(tiles.length).toBe(4);
});

test('boxes that overlap give each tile once', () => {
  const box = [-80.06, 28.3, -80.059, 28.301] as const;
  expect(tilesOver([box, box])).toEqual(tilesOver([box]));
  expect(tilesOver([])).toEqual([]);
});
