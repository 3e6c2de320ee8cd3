/**
 * GDAL as second reader and second writer: what we write opens in it without a word on stderr and holds the same figures;
 * what it writes, we read to the same coordinates. Run with GDAL 3.6.2; skipped where `ogrinfo` is not installed.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { convertProject, readProject, writeResults } from '@crownfall/exchange/node';
import { signedArea } from '@crownfall/geometry';
import { beforeAll, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';
import { smallAssessment } from './gdal-files-assessment.ts';

const installed = spawnSync('ogrinfo', ['--version']).status === 0;
if (!installed) console.warn('skipped: ogrinfo (Debian: gdal-bin) is not installed');

let folder: string;
beforeAll(() => {
  folder = temporaryFolder('gdal');
});

/** Runs a GDAL program; it must succeed and be silent on stderr. */
function gdal(program: string, ...args: string[]): string {
  const { status, stdout, stderr } = spawnSync(program, args, { encoding: 'utf8', maxBuffer: 1 << 26 });
  expect({ program, args, status, stderr }).toEqual({ program, args, status: 0, stderr: '' });
  expect(stdout).not.toMatch(/warning|error/i);
  return stdout;
}

function fieldsOf(info: string): Record<string, string> {
  return Object.fromEntries([...info.matchAll(/^(\w+): (\w+(?:\(\w+\))?) \(/gm)].map(([, name, type]) => [name, type]));
}

const FIGURES = /_m2$|_m$|_pct$|score$|dose$/;

describe.skipIf(!installed)('results of a run', () => {
  const assessment = smallAssessment();
  beforeAll(() => writeResults(folder, assessment, { inputs: [], versions: {}, timings: {} }));

  test.each([
    [
      'blocks',
      2,
      {
        block_id: 'String',
        rank: 'Integer',
        score: 'Real',
        score_parts: 'String(JSON)',
        pavement_m2: 'Real',
        stained_hi95_m2: 'Real',
        calibrated: 'Integer(Boolean)',
        bloom_state: 'String',
      },
    ],
    ['trees', 2, { tree_id: 'String', crown_m2: 'Real', severity_pct: 'Real', stained_m2: 'Real' }],
    ['pavement', 3, { pavement_id: 'String', kind: 'String', area_m2: 'Real', stained_pct: 'Real' }],
  ])('%s.geojson opens with its %i features and its fields', (name, count, fields) => {
    const info = gdal('ogrinfo', '-al', '-so', join(folder, `${name}.geojson`));
    expect(info).toContain(`Feature Count: ${count}`);
    expect(info).toContain('GEOGCRS["WGS 84"');
    expect(fieldsOf(info)).toMatchObject(fields);
  });

  test.each(['blocks', 'trees', 'pavement'])('GDAL reads every figure of %s.geojson as we wrote it', (name) => {
    const file = join(folder, `${name}.geojson`);
    const seen = JSON.parse(gdal('ogr2ogr', '-f', 'GeoJSON', '/vsistdout/', file)).features;
    const ours = JSON.parse(readFileSync(file, 'utf8')).features;
    expect(seen).toHaveLength(ours.length);
    ours.forEach(
      (
        { properties, geometry }: { properties: Record<string, unknown>; geometry: { type: string } | null },
        i: number,
      ) => {
        expect(seen[i].geometry?.type).toBe(geometry?.type);
        for (const [field, value] of Object.entries(properties)) {
          if (FIGURES.test(field)) expect(seen[i].properties[field]).toEqual(value);
        }
      },
    );
  });

  // RFC 7946, clauses by number: 3.1.6 (rings), 4 (no crs), 1.5 and 3.2 (members); GEOS, through GDAL, judges validity.
  test.each(['blocks', 'trees', 'pavement'])('%s.geojson keeps RFC 7946, and GEOS finds its polygons valid', (name) => {
    const file = join(folder, `${name}.geojson`);
    const document = JSON.parse(readFileSync(file, 'utf8'));
    expect(Object.keys(document)).toEqual(['type', 'features']);
    for (const { type, geometry } of document.features) {
      expect(type).toBe('Feature');
      const polygons =
        geometry?.type === 'Polygon'
          ? [geometry.coordinates]
          : geometry?.type === 'MultiPolygon'
            ? geometry.coordinates
            : [];
      for (const rings of polygons) {
        rings.forEach((ring: [number, number][], i: number) => {
          expect(ring.length).toBeGreaterThanOrEqual(4);
          expect(ring[0]).toEqual(ring.at(-1));
          expect(Math.sign(signedArea(Float64Array.from(ring.flat())))).toBe(i === 0 ? 1 : -1);
        });
      }
    }
    const sql = `SELECT COUNT(*) AS bad FROM ${name} WHERE ST_IsValid(geometry) = 0`;
    expect(gdal('ogrinfo', '-q', '-dialect', 'SQLite', '-sql', sql, file)).toContain('bad (Integer) = 0');
  });

  test('ledger.csv opens with its rows and columns', () => {
    const info = gdal('ogrinfo', '-al', '-so', '-oo', 'AUTODETECT_TYPE=YES', join(folder, 'ledger.csv'));
    expect(info).toContain('Feature Count: 2');
    expect(fieldsOf(info)).toMatchObject({
      block_id: 'String',
      kind: 'String',
      pavement_m2: 'Real',
      stained_m2: 'Real',
    });
  });
});

/** Property names in the order of the outside contract, "Outputs of reckon"; `surface` is an addition. */
const CONTRACT = {
  blocks:
    'block_id name rank score score_parts pavement_m2 dripline_m2 fallout_m2 stained_m2 stained_lo80_m2 stained_hi80_m2 ' +
    'stained_lo95_m2 stained_hi95_m2 top_share trees trees_rated worst_severity_pct complaints_open bloom_state calibrated',
  trees:
    'tree_id host block_id crown_m2 spread_m severity_pct severity_from cause dose dripline_m2 fallout_m2 stained_m2 ' +
    'stained_lo80_m2 stained_hi80_m2 stained_lo95_m2 stained_hi95_m2',
  pavement: 'pavement_id kind surface block_id area_m2 dripline_m2 fallout_m2 stained_m2 stained_pct',
};

describe('results of a run, without GDAL', () => {
  const files = ['blocks.geojson', 'trees.geojson', 'pavement.geojson', 'ledger.csv', 'findings.json', 'run.json'];
  const write = async (name: string, seconds: number) => {
    const facts = {
      inputs: [{ file: 'a', sha256: '0', bytes: 1 }],
      versions: { crownfall: '1' },
      timings: { read: seconds },
    };
    await writeResults(join(folder, name), smallAssessment(), facts);
    return files.map((file) => readFileSync(join(folder, name, file), 'utf8'));
  };

  test('the same assessment gives the same bytes, the timings of the run excepted', async () => {
    const [one, two] = [await write('one', 1), await write('two', 2)];
    expect(one.slice(0, -1)).toEqual(two.slice(0, -1));
    expect(one[5]).not.toBe(two[5]);
    expect(JSON.parse(one[5])).toEqual({ ...JSON.parse(two[5]), timings: { read: 1 } });
  });

  test('the columns are those of the contract, in its order, then what the records carried beyond', async () => {
    const [blocks, trees, pavement] = (await write('three', 1))
      .slice(0, 3)
      .map((text) => JSON.parse(text).features[0].properties);
    expect(Object.keys(blocks)).toEqual([...CONTRACT.blocks.split(' '), 'rank_given', 'ward', 'note']);
    expect([blocks.rank, blocks.rank_given]).toEqual([1, 'theirs']);
    expect(Object.keys(trees)).toEqual(CONTRACT.trees.split(' '));
    expect(Object.keys(pavement)).toEqual(CONTRACT.pavement.split(' '));
  });

  test('a figure without a range has null ranges; figures carry at most six decimals', async () => {
    const [blocks, , , ledger] = await write('four', 1);
    for (const { properties } of JSON.parse(blocks).features) {
      expect(properties.stained_lo80_m2).toBeLessThan(properties.stained_m2);
      expect(String(properties.pavement_m2)).toMatch(/^\d+\.\d{1,6}$/);
    }
    expect(ledger.split('\r\n')[2]).toMatch(/^,sidewalk,\d+\.\d{1,6},/);
  });
});

describe.skipIf(!installed)('files between us and GDAL', () => {
  const points = [
    [-80.2, 25.77, 'T-1', 8.5],
    [-80.1987654321, 25.7712345678, 'Ü "2", x', 12],
  ] as const;
  const features = points.map(([lon, lat, tree_id, spread_m]) => ({
    type: 'Feature',
    properties: { tree_id, spread_m },
    geometry: { type: 'Point', coordinates: [lon, lat] },
  }));

  function project(crowns: unknown): string {
    const home = mkdtempSync(join(folder, 'project-'));
    const layers = { crowns, pavement: 'pavement.geojson' };
    const ring = [
      [-80.21, 25.76],
      [-80.19, 25.76],
      [-80.19, 25.78],
      [-80.21, 25.76],
    ];
    const pavement = { type: 'Feature', properties: {}, geometry: { type: 'Polygon', coordinates: [ring] } };
    writeFileSync(join(home, 'project.json'), JSON.stringify({ title: 'T', season: 2026, units: 'us', layers }));
    writeFileSync(join(home, 'pavement.geojson'), JSON.stringify({ type: 'FeatureCollection', features: [pavement] }));
    writeFileSync(join(home, 'crowns.geojson'), JSON.stringify({ type: 'FeatureCollection', features }));
    return home;
  }

  // State Plane feet and UTM come back through GDAL's PROJ and ours: 1e-9 degrees is 0.1 mm; GDAL writes 7 to 15 digits.
  test.each([
    [
      'GeoJSON of 2008 in State Plane feet',
      'crowns.json',
      ['-f', 'GeoJSON', '-t_srs', 'EPSG:2236', '-lco', 'COORDINATE_PRECISION=9'],
      {},
    ],
    [
      'GeoJSON of 2008 in UTM',
      'crowns.json',
      ['-f', 'GeoJSON', '-t_srs', 'EPSG:32617', '-lco', 'COORDINATE_PRECISION=9'],
      {},
    ],
    ['RFC 7946', 'crowns.json', ['-f', 'GeoJSON', '-lco', 'RFC7946=YES', '-lco', 'COORDINATE_PRECISION=12'], {}],
    [
      'a text sequence with record separators',
      'crowns.geojsonl',
      ['-f', 'GeoJSONSeq', '-lco', 'RS=YES', '-lco', 'COORDINATE_PRECISION=12'],
      {},
    ],
    ['features by line', 'crowns.geojsonl', ['-f', 'GeoJSONSeq', '-lco', 'COORDINATE_PRECISION=12'], {}],
    [
      'a table parted by semicolons',
      'crowns.csv',
      ['-f', 'CSV', '-lco', 'GEOMETRY=AS_XY', '-lco', 'SEPARATOR=SEMICOLON'],
      { crs: 'EPSG:4326' },
    ],
    [
      'a table in feet with a byte order mark',
      'crowns.csv',
      ['-f', 'CSV', '-t_srs', 'EPSG:2236', '-lco', 'GEOMETRY=AS_XY', '-lco', 'WRITE_BOM=YES'],
      { crs: 'EPSG:2236' },
    ],
  ])('GDAL writes %s, we read it', async (_, name, options, entry) => {
    const home = project({ path: name, ...entry });
    gdal('ogr2ogr', ...options, join(home, name), join(home, 'crowns.geojson'));
    const { layers, findings } = await readProject(home);
    expect(findings).toEqual([]);
    const read = layers.crowns?.features ?? [];
    expect(read.map(({ properties }) => properties)).toEqual(features.map(({ properties }) => properties));
    read.forEach(({ geometry }, i) => {
      const [lon, lat] = geometry.kind === 'point' ? geometry.points : [];
      expect(Math.abs(lon - points[i][0])).toBeLessThan(1e-9);
      expect(Math.abs(lat - points[i][1])).toBeLessThan(1e-9);
    });
  });

  test.each([
    ['csv', ['-oo', 'X_POSSIBLE_NAMES=lon', '-oo', 'Y_POSSIBLE_NAMES=lat', '-oo', 'AUTODETECT_TYPE=YES']],
    ['geojsonl', []],
    ['geojson', []],
  ] as const)('we convert to %s, GDAL reads it', async (format, options) => {
    const home = project('crowns.geojson');
    const to = join(home, `as-${format}`);
    await convertProject(home, to, { format });
    const seen = JSON.parse(
      gdal(
        'ogr2ogr',
        '-f',
        'GeoJSON',
        '-lco',
        'COORDINATE_PRECISION=12',
        ...options,
        '/vsistdout/',
        join(to, `crowns.${format}`),
      ),
    );
    seen.features.forEach(({ properties, geometry }: (typeof features)[number], i: number) => {
      expect(geometry.coordinates).toEqual([points[i][0], points[i][1]]);
      expect(properties).toMatchObject({ tree_id: points[i][2], spread_m: points[i][3] });
    });
    expect(seen.features).toHaveLength(2);
  });
});
