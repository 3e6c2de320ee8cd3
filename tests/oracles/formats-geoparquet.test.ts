/**
 * GeoParquet against another Parquet reader (the Rust arrow/parquet crates, by parquet-wasm 0.8.0 and apache-arrow 21.2)
 * and against the specification: OGC GeoParquet 1.1.0, metadata of file and column.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { convertLayer } from '@crownfall/exchange/node';
import { type Table, tableFromIPC, tableToIPC } from 'apache-arrow';
import {
  Compression,
  initSync,
  readParquet,
  Table as WasmTable,
  WriterPropertiesBuilder,
  writeParquet,
} from 'parquet-wasm/esm';
import { beforeAll, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';

let folder: string;
let rows: Table;
let bytes: Buffer;

const features = [
  {
    type: 'Feature',
    properties: { tree_id: 'T-1', spread_m: 8.5, stems: 2, felled: false, tags: ['a', 'b'], height_m: null },
    geometry: { type: 'Point', coordinates: [-80.2, 25.77] },
  },
  {
    type: 'Feature',
    properties: { tree_id: 'T-2 ü', spread_m: 9, stems: 2 ** 40, felled: true, height_m: 7 },
    geometry: {
      type: 'Polygon',
      // Clockwise on purpose: RFC 7946 and `orientation` ask for the other way.
      coordinates: [
        [
          [-80.19, 25.77],
          [-80.19, 25.771],
          [-80.189, 25.771],
          [-80.19, 25.77],
        ],
      ],
    },
  },
  { type: 'Feature', properties: { tree_id: 'T-3' }, geometry: null },
];

beforeAll(async () => {
  const require = createRequire(import.meta.url);
  const wasm = join(dirname(require.resolve('parquet-wasm/esm')), 'parquet_wasm_bg.wasm');
  initSync({ module: readFileSync(wasm) });
  folder = temporaryFolder('geoparquet');
  writeFileSync(join(folder, 'in.geojson'), JSON.stringify({ type: 'FeatureCollection', features }));
  await convertLayer(join(folder, 'in.geojson'), join(folder, 'out.parquet'));
  bytes = readFileSync(join(folder, 'out.parquet'));
  rows = tableFromIPC(readParquet(bytes).intoIPCStream());
});

const cells = (name: string): unknown[] => [...(rows.getChild(name) ?? [])];

describe('what we write, another Parquet reader reads', () => {
  test('columns have types, values are as they were', () => {
    const types = Object.fromEntries(rows.schema.fields.map(({ name, type }) => [name, String(type)]));
    expect(types).toMatchObject({
      geometry: 'Binary',
      tree_id: 'Utf8',
      spread_m: 'Float64',
      stems: 'Int64',
      felled: 'Bool',
      height_m: 'Int32',
    });
    expect(cells('tree_id')).toEqual(['T-1', 'T-2 ü', 'T-3']);
    expect(cells('spread_m')).toEqual([8.5, 9, null]);
    expect(cells('stems')).toEqual([2n, 2n ** 40n, null]);
    expect(cells('felled')).toEqual([false, true, null]);
    expect(cells('height_m')).toEqual([null, 7, null]);
    expect(cells('tags').map((cell) => (cell === null ? null : JSON.parse(String(cell))))).toEqual([
      ['a', 'b'],
      null,
      null,
    ]);
  });

  // Well-known binary by hand from OGC 06-103r4: byte order 01, type, then little-endian doubles.
  test('geometry is well-known binary, wound counter-clockwise', () => {
    const [point, polygon, none] = cells('geometry') as (Uint8Array | null)[];
    const doubles = Buffer.from(Float64Array.of(-80.2, 25.77).buffer).toString('hex');
    expect(Buffer.from(point ?? []).toString('hex')).toBe(`0101000000${doubles}`);
    const ring = new DataView((polygon as Uint8Array).buffer, (polygon as Uint8Array).byteOffset + 13);
    const xy = Array.from({ length: 4 }, (_, i) => [ring.getFloat64(16 * i, true), ring.getFloat64(16 * i + 8, true)]);
    expect(
      Buffer.from(polygon ?? [])
        .subarray(0, 13)
        .toString('hex'),
    ).toBe('01030000000100000004000000');
    const twice = xy.slice(1).reduce((sum, [x, y], i) => sum + xy[i][0] * y - x * xy[i][1], 0);
    expect(twice).toBeGreaterThan(0);
    expect(none).toBeNull();
  });

  // GeoParquet 1.1.0, "File metadata" and "Column metadata", field by field.
  test('the geo metadata keeps GeoParquet 1.1.0', () => {
    const geo = JSON.parse(String(rows.schema.metadata.get('geo')));
    expect(Object.keys(geo).sort()).toEqual(['columns', 'primary_column', 'version']);
    expect(geo).toMatchObject({ version: '1.1.0', primary_column: 'geometry' });
    const column = geo.columns.geometry;
    expect(column).toEqual({
      encoding: 'WKB',
      geometry_types: ['Point', 'Polygon'],
      orientation: 'counterclockwise',
      edges: 'planar',
      bbox: [-80.2, 25.77, -80.189, 25.771],
      covering: {
        bbox: { xmin: ['bbox', 'xmin'], ymin: ['bbox', 'ymin'], xmax: ['bbox', 'xmax'], ymax: ['bbox', 'ymax'] },
      },
    });
    expect('crs' in column).toBe(false);
    const boxes = cells('bbox').map((box) => (box === null ? null : { ...(box as object) }));
    expect(boxes).toMatchObject([
      { xmin: -80.2, ymax: 25.77 },
      { xmin: -80.19, ymin: 25.77, xmax: -80.189, ymax: 25.771 },
      null,
    ]);
  });

  test('it begins and ends as Parquet does', () => {
    expect([bytes.subarray(0, 4).toString(), bytes.subarray(-4).toString()]).toEqual(['PAR1', 'PAR1']);
  });
});

describe('what another writer writes, we read', () => {
  async function readBack(path: string): Promise<typeof features> {
    const to = join(folder, 'back.geojson');
    const { findings } = await convertLayer(path, to);
    expect(findings).toEqual([]);
    return JSON.parse(readFileSync(to, 'utf8')).features;
  }

  test.each(['UNCOMPRESSED', 'SNAPPY', 'GZIP', 'BROTLI', 'ZSTD', 'LZ4_RAW'] as const)(
    'packed with %s',
    async (codec) => {
      const geo = String(rows.schema.metadata.get('geo'));
      const properties = new WriterPropertiesBuilder()
        .setCompression(Compression[codec])
        .setKeyValueMetadata(new Map([['geo', geo]]))
        .build();
      const path = join(folder, `${codec}.parquet`);
      writeFileSync(path, writeParquet(WasmTable.fromIPCStream(tableToIPC(rows, 'stream')), properties));
      const read = await readBack(path);
      expect(read.map(({ properties: { tree_id, spread_m, stems } }) => ({ tree_id, spread_m, stems }))).toEqual([
        { tree_id: 'T-1', spread_m: 8.5, stems: 2 },
        { tree_id: 'T-2 ü', spread_m: 9, stems: 2 ** 40 },
        { tree_id: 'T-3', spread_m: null, stems: null },
      ]);
      expect(read.map(({ geometry }) => geometry?.type)).toEqual(['Point', 'Polygon', undefined]);
    },
  );

  test('a system of its own, as PROJJSON with an id, is heeded; an unknown one stops', async () => {
    const geo = JSON.parse(String(rows.schema.metadata.get('geo')));
    const write = (name: string, crs: unknown): string => {
      geo.columns.geometry.crs = crs;
      const key = new WriterPropertiesBuilder().setKeyValueMetadata(new Map([['geo', JSON.stringify(geo)]])).build();
      writeFileSync(join(folder, name), writeParquet(WasmTable.fromIPCStream(tableToIPC(rows, 'stream')), key));
      return join(folder, name);
    };
    const crs84 = {
      type: 'GeographicCRS',
      name: 'WGS 84 (CRS84)',
      datum: {
        type: 'GeodeticReferenceFrame',
        name: 'World Geodetic System 1984',
        ellipsoid: { name: 'WGS 84', semi_major_axis: 6378137, inverse_flattening: 298.257223563 },
      },
      id: { authority: 'OGC', code: 'CRS84' },
    };
    expect((await readBack(write('crs84.parquet', crs84)))[0].geometry?.coordinates).toEqual([-80.2, 25.77]);
    const refused = await convertLayer(write('null.parquet', null), join(folder, 'x.geojson'));
    expect(refused).toMatchObject({ files: [], findings: [{ code: 'crs-missing' }] });
  });
});
