import { describe, expect, test } from 'vitest';
import { area, box, features, line, point, table, told } from '../sample-layers.ts';
import { KnownIds } from './known-ids.ts';
import { readBlocks } from './read-blocks.ts';
import { readBloom } from './read-bloom.ts';
import { readComplaints } from './read-complaints.ts';
import { readQuadrats } from './read-quadrats.ts';
import { readSites } from './read-sites.ts';
import { readStreets } from './read-streets.ts';
import { readWater } from './read-water.ts';

describe('blocks', () => {
  test('rows of one id are parts of one block; the same outline twice counts once', () => {
    const { records, findings } = readBlocks(
      features(
        'blocks.geojson',
        [box(0, 0, 1), { block_id: 'B1', name: 'Invented Row' }],
        [box(2, 0, 1), { block_id: 'B1' }],
        [box(2, 0, 1), { block_id: 'B1' }],
        [box(4, 0, 1), {}],
        [point(0, 0), { block_id: 'B3' }],
      ),
    );
    expect(records.map((block) => block.polygons.length)).toEqual([2, 1]);
    expect(records[0]).toMatchObject({ blockId: 'B1', name: 'Invented Row' });
    expect(records[1].blockId).toMatch(/^block-[0-9a-f]{16}$/);
    expect(told(findings)).toEqual([
      'feature-repeated warning/left_out B1 block_id',
      'geometry-unexpected warning/left_out B3',
      'id-made-up note/assumed #4 block_id',
      'block-parts-joined note/mended B1 block_id',
    ]);
  });
});

describe('quadrats', () => {
  const full = { quadrat_id: 'Q1', area_m2: 1, stained_pct: 35, measured_on: '2026-06-01', lon: 13.4, lat: 52.5 };

  test('from a table with lon and lat, from points, from outlines', () => {
    const { records } = readQuadrats(table('quadrats.csv', full));
    expect(records[0]).toMatchObject({ quadratId: 'Q1', at: { lon: 13.4, lat: 52.5 }, areaM2: 1, stainedShare: 0.35 });
    const drawn = readQuadrats(features('quadrats.geojson', [box(13.4, 52.5, 1e-5), { ...full, area_m2: '' }]));
    expect(told(drawn.findings)).toEqual(['area-from-outline note/assumed Q1 area_m2']);
    // Degree lengths at 52.5° N on WGS 84: 67 909 m and 111 270 m (series in the latitude; NGA, Length of a Degree).
    expect(drawn.records[0].areaM2).toBeCloseTo(0.6791 * 1.1127, 3);
  });

  test.each([
    [{ stained_pct: 101 }, 'value-out-of-range warning/left_out row 2 stained_pct'],
    [{ area_m2: 0 }, 'value-out-of-range warning/left_out row 2 area_m2'],
    [{ area_m2: '' }, 'field-missing warning/left_out row 2 area_m2'],
    [{ lat: '' }, 'field-missing warning/left_out row 2 lat'],
    [{ lat: 95 }, 'value-out-of-range warning/left_out row 2 lat'],
    [{ measured_on: '' }, 'field-missing warning/left_out row 2 measured_on'],
  ])('%j is left out', (change, expected) => {
    const { records, findings } = readQuadrats(table('quadrats.csv', { ...full, ...change }));
    expect(records).toEqual([]);
    expect(told(findings)).toEqual([expected, 'layer-empty warning/kept']);
  });
});

describe('complaints', () => {
  test('a complaint without a state is open; what is unknown becomes other', () => {
    const { records, findings } = readComplaints(
      features(
        'complaints.geojson',
        [point(1, 2), { complaint_id: 'C1', about: 'larvae', state: 'closed', received_on: '2026-06-01' }],
        [point(1, 2), { complaint_id: 'C2', about: 'smell' }],
        [{ kind: 'none' }, { complaint_id: 'C3' }],
      ),
    );
    expect(records.map(({ about, state, receivedOn }) => [about, state, receivedOn])).toEqual([
      ['larvae', 'closed', '2026-06-01'],
      ['other', 'open', undefined],
    ]);
    expect(told(findings)).toEqual([
      'unknown-word warning/assumed C2 about',
      'feature-without-geometry warning/left_out C3',
      'field-missing note/assumed C2 state',
    ]);
  });
});

describe('bloom', () => {
  const trees = new KnownIds(['T-1']);
  const blocks = new KnownIds(['B-1']);
  const full = { tree_id: 'T-1', observed_on: '2026-05-03', bbch: 63 };
  const read = (...rows: object[]) =>
    readBloom(table('bloom.csv', ...rows.map((row) => ({ ...full, ...row }))), trees, blocks);

  test('of a tree, of a block, of a tree when both are named', () => {
    const { records, findings } = read(
      { larvae_in_galls: 'Yes' },
      { tree_id: '', block_id: 'B-1' },
      { block_id: 'B-9' },
    );
    expect(records.map(({ treeId, blockId }) => [treeId, blockId])).toEqual([
      ['T-1', undefined],
      [undefined, 'B-1'],
      ['T-1', undefined],
    ]);
    expect(records.map(({ larvaeInGalls, beesAtFlowers }) => [larvaeInGalls, beesAtFlowers])[0]).toEqual([
      'yes',
      'unknown',
    ]);
    expect(findings).toEqual([]);
  });

  test.each([
    [{ bbch: 100 }, 'value-out-of-range warning/left_out row 2 bbch'],
    [{ bbch: 62.5 }, 'value-out-of-range warning/left_out row 2 bbch'],
    [{ bbch: '' }, 'field-missing warning/left_out row 2 bbch'],
    [{ tree_id: '' }, 'field-missing warning/left_out row 2 tree_id'],
    [{ tree_id: 'T1' }, 'observation-of-unknown-place warning/left_out row 2 tree_id'],
    [{ tree_id: '', block_id: 'B-9' }, 'observation-of-unknown-place warning/left_out row 2 block_id'],
    [{ observed_on: '3.5.2026' }, 'date-ambiguous warning/left_out row 2 observed_on'],
  ])('%j is left out', (change, expected) => {
    expect(told(read(change).findings)).toEqual([expected, 'layer-empty warning/kept']);
  });

  test('without a block layer, block ids are taken on trust', () => {
    const { records } = readBloom(table('bloom.csv', { ...full, tree_id: '', block_id: 'B-9' }), trees, undefined);
    expect(records[0].blockId).toBe('B-9');
  });
});

describe('sites, water, streets', () => {
  test('a site is at its middle, an unknown kind is other', () => {
    const { records, findings } = readSites(
      features(
        'sites.geojson',
        [box(0, 0, 2), { site_id: 'S1', kind: 'Outdoor dining' }],
        [point(1, 1), { site_id: 'S2', kind: 'zoo' }],
      ),
    );
    expect(records.map(({ kind, at }) => [kind, at.lon, at.lat])).toEqual([
      ['outdoor_dining', 1, 1],
      ['other', 1, 1],
    ]);
    expect(told(findings)).toEqual(['unknown-word warning/assumed S2 kind']);
  });

  test('water of any geometry; without a kind it is water, so that the caution stands', () => {
    const { records, findings } = readWater(
      features(
        'water.geojson',
        [point(0, 0), { kind: 'drain' }],
        [line(0, 0, 1, 1), {}],
        [area(0, 0, 1, 0, 1, 1), { kind: 'pond' }],
      ),
    );
    expect(records.map((feature) => feature.kind)).toEqual(['drain', 'water', 'water']);
    expect(told(findings)).toEqual(['field-missing note/assumed #2 kind', 'unknown-word warning/assumed #3 kind']);
  });

  test('streets are lines', () => {
    const { records, findings } = readStreets(
      features('streets.geojson', [line(0, 0, 1, 1), { name: 'Invented Lane', lanes: 2 }], [point(0, 0), {}]),
    );
    expect(records[0]).toMatchObject({ name: 'Invented Lane', extra: { lanes: 2 } });
    expect(told(findings)).toEqual(['geometry-unexpected warning/left_out #2']);
  });
});
