import { describe, expect, test } from 'vitest';
import { box, features, line, point, told } from '../sample-layers.ts';
import { DEFAULT_SETTINGS } from '../settings.ts';
import { readCrowns } from './read-crowns.ts';

type Entry = Parameters<typeof features>[1];
const read = (...list: Entry[]) => readCrowns(features('crowns.geojson', ...list), DEFAULT_SETTINGS);
const one = (properties: Readonly<Record<string, unknown>>) => {
  const { records, findings } = read([point(1, 2), { tree_id: 'T', ...properties }]);
  return { crown: records[0]?.crown, told: told(findings) };
};
const LEFT = 'layer-empty error/stops';

describe('crowns', () => {
  test('one spread, two diameters, radii as list or text, drawn outline', () => {
    const at = { lon: 1, lat: 2 };
    expect(one({ spread_m: '8' }).crown).toEqual({ from: 'spread', at, spreadM: 8 });
    expect(one({ spread_a_m: 8, spread_b_m: 6, bearing_deg: 30 }).crown).toEqual({
      from: 'diameters',
      at,
      aM: 8,
      bM: 6,
      bearingDeg: 30,
    });
    const radii = { from: 'radii', at, radiiM: [4.1, 3.8, 4, 3.5] };
    for (const radii_m of [
      [4.1, 3.8, 4, 3.5],
      '4.1;3.8;4;3.5',
      '4,1; 3,8; 4; 3,5',
      '[4.1, 3.8, 4, 3.5]',
      '4.1 3.8 4 3.5',
    ]) {
      expect(one({ radii_m }).crown).toEqual(radii);
    }
    const drawn = read([box(1, 2, 0.001), { tree_id: 'T', spread_m: 99 }]);
    expect(drawn.records[0].crown.from).toBe('polygon');
    expect(drawn.records[0].at.lon).toBeCloseTo(1.0005, 12);
    expect(drawn.records[0].at.lat).toBeCloseTo(2.0005, 12);
  });

  test('fields, unknown extra fields kept', () => {
    const { records } = read([
      point(1, 2),
      {
        tree_id: 12,
        host: ' Terminalia buceras ',
        height_m: '9,5',
        spread_m: 8,
        outlined_on: '2026-01-31',
        cultivar: 'None',
        nest: 'yes',
      },
    ]);
    expect(records[0]).toMatchObject({
      treeId: '12',
      host: 'Terminalia buceras',
      heightM: 9.5,
      outlinedOn: '2026-01-31',
    });
    expect(records[0].extra).toEqual({ nest: 'yes' });
    expect('cultivar' in records[0]).toBe(false);
  });

  test.each([
    [{ spread_m: 0 }, 'value-out-of-range warning/left_out T spread_m'],
    [{ spread_m: -4 }, 'value-out-of-range warning/left_out T spread_m'],
    [{ spread_m: 900 }, 'value-out-of-range warning/left_out T spread_m'],
    [{ spread_m: 'wide' }, 'field-not-a-number warning/left_out T spread_m'],
    [{ spread_m: '' }, 'crown-without-size warning/left_out T spread_m'],
    [{}, 'crown-without-size warning/left_out T spread_m'],
    [{ spread_a_m: 8, spread_b_m: 0 }, 'value-out-of-range warning/left_out T spread_b_m'],
    [{ radii_m: '4;3' }, 'outline-radii-too-few warning/left_out T radii_m'],
    [{ radii_m: '4;x;4' }, 'field-not-a-number warning/left_out T radii_m'],
    [{ radii_m: '4;-1;4' }, 'value-out-of-range warning/left_out T radii_m'],
    [{ radii_m: '0;0;0' }, 'outline-zero-size warning/left_out T radii_m'],
  ])('%j is left out', (properties, expected) => {
    const { crown, told: findings } = one(properties);
    expect(crown).toBeUndefined();
    expect(findings).toEqual([expected, LEFT]);
  });

  test('no geometry, a line, coordinates off the earth or not finite', () => {
    const { records, findings } = read(
      [{ kind: 'none' }, { tree_id: 'A', spread_m: 5 }],
      [line(0, 0, 1, 1), { tree_id: 'B' }],
      [point(200, 2), { tree_id: 'C', spread_m: 5 }],
      [box(Number.NaN, 2, 1), {}],
      [point(1, 2), { tree_id: 'D', spread_m: 5 }],
    );
    expect(records.map((tree) => tree.treeId)).toEqual(['D']);
    expect(told(findings)).toEqual([
      'feature-without-geometry warning/left_out A',
      'geometry-unexpected warning/left_out B',
      'lonlat-out-of-range warning/left_out C',
      'coordinates-not-finite warning/left_out #4',
    ]);
    expect(findings[3].where.vertex).toBe(1);
  });

  test('a missing tree_id is made up from the outline, whatever the order of the features', () => {
    const [a, b] = [[point(1, 2), { spread_m: 8 }] as Entry, [point(3, 4), { spread_m: 8 }] as Entry];
    const ids = read(a, b).records.map((tree) => tree.treeId);
    expect(read(b, a).records.map((tree) => tree.treeId)).toEqual([...ids].reverse());
    expect(ids[0]).toMatch(/^crown-[0-9a-f]{16}$/);
    const { findings } = read(a, b);
    expect(told(findings)).toEqual(['tree-id-made-up note/assumed #1 tree_id']);
    expect(findings[0].facts).toEqual({ count: 2 });
  });

  test('the same tree twice counts once', () => {
    const { records, findings } = read(
      [point(1, 2), { tree_id: 'T', spread_m: 8 }],
      [point(1, 2), { tree_id: 'T', spread_m: 8 }],
    );
    expect(records).toHaveLength(1);
    expect(told(findings)).toEqual(['tree-repeated warning/left_out T tree_id']);
  });

  test('a tree_id with another outline is another tree under a free id; nothing is lost', () => {
    const { records, findings } = read(
      [point(1, 2), { tree_id: 'T', spread_m: 8 }],
      [point(5, 2), { tree_id: 'T', spread_m: 8 }],
      [point(6, 2), { tree_id: 'T~2', spread_m: 8 }],
      [point(5, 2), { tree_id: 'T', spread_m: 8 }],
    );
    expect(records.map((tree) => tree.treeId)).toEqual(['T', 'T~3', 'T~2']);
    expect(told(findings)).toEqual([
      'tree-id-duplicate warning/kept T tree_id',
      'tree-repeated warning/left_out T tree_id',
    ]);
    expect(findings[0].facts).toEqual({ renamed_to: 'T~3' });
  });

  test('decimal commas and units are told once for the column', () => {
    const { findings } = read(
      [point(1, 2), { tree_id: 'A', spread_m: '8,5' }],
      [point(2, 2), { tree_id: 'B', spread_m: '8.0 m' }],
    );
    expect(told(findings)).toEqual(['number-mended note/mended A spread_m']);
    expect(findings[0].facts).toEqual({ got: '8,5', read_as: 8.5, count: 2 });
  });

  test('an optional value that is wrong is left out by itself', () => {
    const { records, findings } = read([
      point(1, 2),
      { tree_id: 'T', spread_m: 8, height_m: -3, outlined_on: '2026-02-30' },
    ]);
    expect(records).toHaveLength(1);
    expect(told(findings)).toEqual([
      'value-out-of-range warning/left_out T height_m',
      'date-impossible warning/left_out T outlined_on',
    ]);
  });

  test('spreads estimated from trunks are told once per basis, with count and error; drawn crowns no more', () => {
    const tree = (tree_id: string, spread_basis?: string) => ({
      tree_id,
      spread_m: 8,
      outline_sd_m: 0.8,
      spread_from: 'estimated',
      ...(spread_basis === undefined ? {} : { spread_basis }),
    });
    const { findings } = read(
      [point(1, 2), tree('A', '34 measured Acer trees of this project')],
      [point(1, 2.001), tree('B', '34 measured Acer trees of this project')],
      [point(1, 2.002), tree('C')],
      [box(1, 2.003, 0.001), tree('D')],
      [point(1, 2.004), { tree_id: 'E', spread_m: 8, spread_from: 'measured' }],
    );
    expect(told(findings)).toEqual(['spread-estimated note/assumed', 'spread-estimated note/assumed']);
    // Twice 0.8 m of 8 m.
    expect(findings.map(({ facts }) => facts)).toEqual([
      { count: 2, basis: '34 measured Acer trees of this project', sd_pct: 20 },
      { count: 1, basis: 'the trunk', sd_pct: 20 },
    ]);
  });
});
