/**
 * GDAL as the other side of every format it knows: what it writes we read, to the same coordinates and values; what we
 * write it reads without a word on stderr. Run with GDAL 3.6.2; skipped where `ogr2ogr` is not installed.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { convertLayer } from '@crownfall/exchange/node';
import { beforeAll, describe, expect, test } from 'vitest';
import { crownfallHere } from '../journeys/crownfall-here.ts';
import { temporaryFolder } from '../temporary-folder.ts';

const installed = spawnSync('ogr2ogr', ['--version']).status === 0;
if (!installed) console.warn('skipped: ogr2ogr (Debian: gdal-bin) is not installed');

/** GDAL's PROJ and ours, there and back through State Plane feet: 1e-9° is 0.1 mm. */
const SAME_PLACE_DEG = 2e-9;

interface Feature {
  readonly type: 'Feature';
  readonly properties: Record<string, unknown>;
  readonly geometry: { readonly type: string; readonly coordinates: unknown } | null;
}

let folder: string;
beforeAll(() => {
  folder = temporaryFolder('formats');
  for (const [name, features] of Object.entries(LAYERS)) {
    writeFileSync(join(folder, `${name}.geojson`), JSON.stringify({ type: 'FeatureCollection', features }));
  }
});

const square = (x: number, y: number, side: number, hole = false): [number, number][] => {
  const ring: [number, number][] = [
    [x, y],
    [x + side, y],
    [x + side, y + side],
    [x, y + side],
    [x, y],
  ];
  return hole ? ring.reverse() : ring;
};
const feature = (properties: Feature['properties'], type: string, coordinates: unknown): Feature => ({
  type: 'Feature',
  properties,
  geometry: { type, coordinates },
});
const fields = (n: number) => ({
  tree_id: `T-${n}`,
  host: n === 2 ? 'Tilia × européa' : 'Bucida buceras',
  spread_m: 7.5 + n,
  stems: n,
});
/** A ring with two islands in its hole, two separate parts, and one plain square. */
const LAYERS: Record<string, Feature[]> = {
  areas: [
    feature(fields(1), 'Polygon', [square(-80.2, 25.77, 0.001)]),
    feature(fields(2), 'MultiPolygon', [
      [square(-80.19, 25.77, 0.001), square(-80.1898, 25.7702, 0.0006, true)],
      [square(-80.1896, 25.7704, 0.0001)],
      [square(-80.1894, 25.7706, 0.0001)],
    ]),
    feature(fields(3), 'Polygon', [square(-80.18, 25.77, 0.001), square(-80.1798, 25.7702, 0.0002, true)]),
  ],
  points: [1, 2, 3].map((n) => feature(fields(n), 'Point', [-80.2 + n / 777, 25.77 + n / 999])),
  lines: [
    feature(fields(1), 'LineString', [
      [-80.2, 25.77],
      [-80.1987654321, 25.7712345678],
    ]),
    feature(fields(2), 'MultiLineString', [square(-80.2, 25.77, 0.001), square(-80.1, 25.77, 0.001)]),
  ],
};

/** Runs a GDAL program; it must succeed and be silent on stderr. */
function gdal(program: string, ...args: string[]): string {
  const { status, stdout, stderr } = spawnSync(program, args, { encoding: 'utf8', maxBuffer: 1 << 26 });
  expect({ program, args, status, stderr }).toEqual({ program, args, status: 0, stderr: '' });
  expect(stdout).not.toMatch(/warning|error/i);
  return stdout;
}

async function readByUs(path: string): Promise<Feature[]> {
  const to = join(mkdtempSync(join(folder, 'ours-')), 'read.geojson');
  const { findings } = await convertLayer(path, to);
  expect(findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  return JSON.parse(readFileSync(to, 'utf8')).features;
}

/** Rings as sets, wherever each begins and whichever way it runs: formats differ in both. */
function places(geometry: Feature['geometry']): string[] {
  const flat = JSON.stringify(geometry?.coordinates).match(/-?\d[\d.e-]*/g) ?? [];
  const pairs: string[] = [];
  for (let i = 0; i + 1 < flat.length; i += 2) {
    pairs.push(
      [flat[i], flat[i + 1]].map((n) => (Math.round(Number(n) / SAME_PLACE_DEG) * SAME_PLACE_DEG).toFixed(8)).join(' '),
    );
  }
  return [...new Set(pairs)].sort();
}

function expectSame(read: readonly Feature[], wanted: readonly Feature[], names = Object.keys(fields(1))): void {
  expect(read.map(({ properties }) => names.map((name) => properties[name]))).toEqual(
    wanted.map(({ properties }) => names.map((name) => properties[name])),
  );
  expect(read.map(({ geometry }) => places(geometry))).toEqual(wanted.map(({ geometry }) => places(geometry)));
  const parts = ({ geometry }: Feature): number =>
    geometry?.type.startsWith('Multi') ? (geometry.coordinates as unknown[]).length : 1;
  expect(read.map(parts)).toEqual(wanted.map(parts));
}

describe.skipIf(!installed)('GDAL writes, we read', () => {
  test.each([
    [
      'a Shapefile in State Plane feet, UTF-8',
      'ESRI Shapefile',
      'shp',
      ['-t_srs', 'EPSG:2236', '-lco', 'ENCODING=UTF-8'],
    ],
    [
      'a Shapefile in UTM, windows-1252 stated by the table alone',
      'ESRI Shapefile',
      'shp',
      ['-t_srs', 'EPSG:32617', '-lco', 'ENCODING=CP1252'],
    ],
    ['a Shapefile with altitudes and measures', 'ESRI Shapefile', 'shp', ['-dim', 'XYZM']],
    ['a zipped Shapefile', 'ESRI Shapefile', 'shz', ['-t_srs', 'EPSG:3857']],
    ['FlatGeobuf with its index, in UTM', 'FlatGeobuf', 'fgb', ['-t_srs', 'EPSG:32617']],
    ['FlatGeobuf without an index', 'FlatGeobuf', 'fgb', ['-lco', 'SPATIAL_INDEX=NO']],
    ['KML', 'LIBKML', 'kml', []],
    ['KML of the older driver', 'KML', 'kml', []],
    ['KMZ', 'LIBKML', 'kmz', []],
  ] as const)('%s', async (_, driver, extension, options) => {
    for (const layer of ['areas', 'points', 'lines']) {
      const home = mkdtempSync(join(folder, 'gdal-'));
      const path = join(home, `crowns.${extension}`);
      gdal('ogr2ogr', '-f', driver, ...options, path, join(folder, `${layer}.geojson`));
      const read = await readByUs(path);
      // The index of FlatGeobuf orders features by place.
      read.sort((a, b) => String(a.properties.tree_id).localeCompare(String(b.properties.tree_id)));
      expectSame(read, LAYERS[layer]);
      if (extension === 'shp') expect(readdirSync(home).length).toBeGreaterThanOrEqual(4);
    }
  });

  test('GPX: waypoints as points, tracks as lines', async () => {
    for (const [layer, type] of [
      ['points', 'POINT'],
      ['lines', 'MULTILINESTRING'],
    ]) {
      const path = join(folder, `${layer}.gpx`);
      gdal(
        'ogr2ogr',
        '-f',
        'GPX',
        '-dsco',
        'GPX_USE_EXTENSIONS=YES',
        '-nlt',
        type,
        path,
        join(folder, `${layer}.geojson`),
      );
      const read = await readByUs(path);
      expectSame(read, LAYERS[layer], ['tree_id', 'host']);
      // GPX knows text alone in its extensions.
      expect(read.map(({ properties }) => Number(properties.spread_m))).toEqual(
        LAYERS[layer].map((f) => f.properties.spread_m),
      );
    }
  });
});

describe.skipIf(!installed).each([
  ['FlatGeobuf', 'fgb'],
  ['GeoPackage', 'gpkg'],
])('we write %s, GDAL reads it', (format, extension) => {
  test.each(['areas', 'points', 'lines'])('%s: silent, typed, every figure and place as it was', async (layer) => {
    const path = join(folder, `${layer}-ours.${extension}`);
    await convertLayer(join(folder, `${layer}.geojson`), path);
    const info = gdal('ogrinfo', '-al', '-so', path);
    expect(info).toContain(`Feature Count: ${LAYERS[layer].length}`);
    expect(info).toContain('ID["EPSG",4326]');
    for (const [name, type] of [
      ['tree_id', 'String'],
      ['spread_m', 'Real'],
      ['stems', 'Integer(64)?'],
    ]) {
      expect(info).toMatch(new RegExp(`^${name}: ${type} `, 'm'));
    }
    const seen = JSON.parse(gdal('ogr2ogr', '-f', 'GeoJSON', '-lco', 'COORDINATE_PRECISION=12', '/vsistdout/', path));
    expectSame(seen.features, LAYERS[layer]);
    const bad = gdal(
      'ogrinfo',
      '-q',
      '-dialect',
      'SQLite',
      '-sql',
      `SELECT COUNT(*) AS bad FROM "${layer}-ours" WHERE ST_IsValid(${format === 'GeoPackage' ? 'geom' : 'geometry'}) = 0`,
      path,
    );
    expect(bad).toContain('bad (Integer) = 0');
  });

  test('what no column can hold plainly: missing values, mixed types, lists, wide whole numbers, no geometry', async () => {
    const odd = [
      { type: 'Feature', properties: { a: 1, b: 'x', c: [1, 2], d: 2 ** 40, e: true, f: null }, geometry: null },
      {
        type: 'Feature',
        properties: { a: 1.5, b: 7, d: -1, f: null },
        geometry: { type: 'Point', coordinates: [1, 2] },
      },
    ];
    const oddFile = join(folder, `odd.${extension}`);
    writeFileSync(join(folder, 'odd.geojson'), JSON.stringify({ type: 'FeatureCollection', features: odd }));
    await convertLayer(join(folder, 'odd.geojson'), oddFile);
    const info = gdal('ogrinfo', '-al', oddFile);
    const types = {
      a: 'Real',
      b: 'String',
      c: 'String',
      d: 'Integer64',
      e: 'Integer\\(Boolean\\)',
      f: 'String',
    };
    for (const [name, type] of Object.entries(types)) expect(info).toMatch(new RegExp(`^${name}: ${type} `, 'm'));
    expect(info).toMatch(/d \(Integer64\) = 1099511627776/);
    const read = await readByUs(oddFile);
    // A GeoPackage has no column type for lists: there it is text.
    const list = format === 'GeoPackage' ? '[1,2]' : [1, 2];
    expect(read[0]).toMatchObject({ properties: { a: 1, b: 'x', c: list, d: 2 ** 40, e: true }, geometry: null });
    expect(read[1]).toMatchObject({ properties: { a: 1.5, b: '7', d: -1 }, geometry: { coordinates: [1, 2] } });
  });

  test('a layer without features', async () => {
    const noneFile = join(folder, `none.${extension}`);
    writeFileSync(join(folder, 'none.geojson'), '{"type":"FeatureCollection","features":[]}');
    await convertLayer(join(folder, 'none.geojson'), noneFile);
    expect(gdal('ogrinfo', '-al', '-so', noneFile)).toContain('Feature Count: 0');
    expect(await readByUs(noneFile)).toEqual([]);
  });
});

describe.skipIf(!installed)('a layer as a GeoPackage', () => {
  const pack = async (name: string, features: readonly object[]): Promise<string> => {
    writeFileSync(join(folder, `${name}.geojson`), JSON.stringify({ type: 'FeatureCollection', features }));
    const path = join(folder, `${name}.gpkg`);
    await convertLayer(join(folder, `${name}.geojson`), path);
    return path;
  };

  test('has an index that GDAL uses and keeps, and a type of its own where all are of one', async () => {
    const path = await pack('trees', LAYERS.points);
    const sql = (text: string): string => gdal('ogrinfo', '-q', path, '-sql', text);
    expect(gdal('ogrinfo', '-so', path, 'trees')).toMatch(/Geometry: Point\n/);
    expect(sql("SELECT HasSpatialIndex('trees', 'geom')")).toMatch(/= 1\n/);
    gdal('ogrinfo', '-q', path, '-sql', 'DELETE FROM trees WHERE fid = 2');
    expect(sql('SELECT COUNT(*) AS left FROM rtree_trees_geom')).toContain('left (Integer) = 2');
    expect(sql('PRAGMA integrity_check')).toContain('= ok');
    expect(sql('PRAGMA foreign_key_check')).not.toContain('OGRFeature');
  });

  test('names that are taken, and names that differ in capitals alone, get an underscore', async () => {
    const properties = { fid: 7, Geom: 'x', host: 'a', Host: 'b' };
    const path = await pack('names', [{ type: 'Feature', properties, geometry: LAYERS.points[0].geometry }]);
    const info = gdal('ogrinfo', '-al', path);
    for (const line of ['fid_ (Integer64) = 7', 'Geom_ (String) = x', 'host (String) = a', 'Host_ (String) = b'])
      expect(info).toContain(line);
  });

  test('a table without places is one of attributes; a file that is there is not overwritten', async () => {
    writeFileSync(join(folder, 'ratings.csv'), 'tree_id,browned_pct\nT1,12.5\nT2,\n');
    const path = join(folder, 'ratings.gpkg');
    await convertLayer(join(folder, 'ratings.csv'), path);
    expect(gdal('ogrinfo', '-al', path)).toMatch(
      /Geometry: None.*browned_pct \(Real\) = 12.5.*tree_id \(String\) = T2/s,
    );
    await expect(convertLayer(join(folder, 'ratings.csv'), path)).rejects.toThrow(RangeError);
  });

  test('the command: a layer into a GeoPackage, one table of several out of one', async () => {
    const path = join(folder, 'city.gpkg');
    expect(await crownfallHere(['convert', join(folder, 'areas.geojson'), '--to', path, '--quiet'])).toMatchObject({
      code: 0,
    });
    gdal('ogr2ogr', '-update', '-nln', 'benches', path, join(folder, 'points.geojson'));
    const out = join(folder, 'benches.geojsonl');
    const none = await crownfallHere(['convert', path, '--to', out, '--quiet']);
    expect(none.code).toBe(1);
    expect(none.stdout).toContain('benches, city');
    expect(await crownfallHere(['convert', path, '--table', 'benches', '--to', out, '--quiet'])).toMatchObject({
      code: 0,
    });
    expect(readFileSync(out, 'utf8').trim().split('\n')).toHaveLength(LAYERS.points.length);
  });
});
