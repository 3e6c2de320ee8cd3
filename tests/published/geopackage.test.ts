/**
 * A project file against OGC GeoPackage 1.3 (12-128r18), requirement by requirement, by plain SQL on the file. The same
 * after edits, after results were stored, and after a layer was replaced.
 */
import { open } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { convertProject, openProjectStore } from '@crownfall/exchange/node';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkedFile, plainFile } from '../cases/store-file-checks.ts';
import { temporaryFolder } from '../temporary-folder.ts';

const SAMPLE = resolve(import.meta.dirname, '../../sample-geo');
const ANA = { author: 'Ana', at: '2026-05-20T10:00:00.000Z' };

let folder: string;
let file: string;
let db: ReturnType<typeof plainFile>;
beforeAll(async () => {
  folder = temporaryFolder('geopackage');
  file = join(folder, 'town.gpkg');
  await convertProject(SAMPLE, file, { writer: ANA });
  const { store } = await openProjectStore(file);
  if (store === null) throw new Error('the file just made does not open');
  const [crown] = (await store.records('crowns', { limit: 1 })).records;
  const at = { kind: 'point', points: Float64Array.of(-80.06, 28.3) } as const;
  const key = { layer: 'crowns', recordId: crown.recordId, expectedVersion: 1 } as const;
  await store.applyEdits([{ action: 'update', ...key, geometry: at, properties: { height_m: 9 } }], ANA);
  await store.applyEdits([{ action: 'insert', layer: 'water', geometry: at, properties: { kind: 'drain' } }], ANA);
  await store.saveResults(
    [{ name: 'trees', rows: [{ geometry: at, properties: { tree_id: 'x', stained_m2: 1.5 } }] }],
    ANA,
  );
  await store.importLayer(
    { layer: 'sites', shape: 'features', features: [[{ row: 1, geometry: at, properties: { kind: 'school' } }]] },
    ANA,
  );
  await store.close();
  db = plainFile(file);
});
afterAll(async () => {
  db.close();
});

type Row = Readonly<Record<string, unknown>>;
const rows = (sql: string, ...values: unknown[]) => db.prepare(sql).all(...values) as Row[];
const features = () =>
  rows("SELECT * FROM gpkg_contents WHERE data_type = 'features'").map(({ table_name }) => `${table_name}`);
const listed = () => rows('SELECT * FROM gpkg_contents').map(({ table_name }) => `${table_name}`);
const columns = (table: string) => rows('SELECT * FROM pragma_table_info(?)', table);

/** Table 1 of the standard. */
const TYPES =
  /^(BOOLEAN|TINYINT|SMALLINT|MEDIUMINT|INT|INTEGER|FLOAT|DOUBLE|REAL|TEXT(\(\d+\))?|BLOB(\(\d+\))?|DATE|DATETIME|GEOMETRY)$/;
const TIMESTAMP = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/;

describe('the file', () => {
  test('1–2: SQLite 3, application id GPKG, version 10300; 3: .gpkg', async () => {
    const handle = await open(file);
    const bytes = new Uint8Array(100);
    await handle.read(bytes, 0, 100, 0);
    await handle.close();
    expect(Buffer.from(bytes.subarray(0, 16)).toString('hex')).toBe('53514c69746520666f726d6174203300');
    const view = new DataView(bytes.buffer);
    expect(view.getUint32(68)).toBe(0x47504b47);
    expect(view.getUint32(60)).toBe(10300);
    expect(file.endsWith('.gpkg')).toBe(true);
  });

  test('5: columns are declared in the types of the standard only', () => {
    const tables = rows(
      "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT LIKE 'rtree_%'",
    );
    expect(tables.length).toBeGreaterThan(20);
    // NUMERIC is what the standard itself declares in gpkg_data_column_constraints (table 38).
    const wrong = tables.flatMap(({ name }) =>
      columns(`${name}`)
        .filter(({ type }) => !TYPES.test(`${type}`))
        .map(({ name: column, type }) => `${name}.${column} ${type}`),
    );
    expect(wrong.filter((column) => !/^gpkg_data_column_constraints\.(min|max) NUMERIC$/.test(column))).toEqual([]);
  });

  test('5: dates and instants are written as the standard writes them', () => {
    const dated = listed().flatMap((table) =>
      columns(table)
        .filter(({ type }) => type === 'DATE')
        .map(({ name }) => [table, name] as const),
    );
    expect(dated.length).toBeGreaterThanOrEqual(4);
    for (const [table, name] of dated) {
      for (const { day } of rows(`SELECT DISTINCT "${name}" AS day FROM "${table}" WHERE "${name}" NOTNULL`))
        expect(day).toMatch(/^\d{4}-\d\d-\d\d$/);
    }
    for (const { at } of rows('SELECT at FROM crownfall_changes UNION SELECT at FROM crownfall_steps'))
      expect(at).toMatch(TIMESTAMP);
  });

  test('5: values are of the storage class of their column', () => {
    const classes: Readonly<Record<string, readonly string[]>> = {
      TEXT: ['text'],
      DOUBLE: ['real'],
      INTEGER: ['integer'],
      BOOLEAN: ['integer'],
      DATE: ['text'],
      GEOMETRY: ['blob'],
    };
    for (const table of listed()) {
      for (const { name, type } of columns(table)) {
        const found = rows(`SELECT DISTINCT typeof("${name}") AS type FROM "${table}" WHERE "${name}" NOTNULL`).map(
          (row) => row.type,
        );
        expect([table, name, found.filter((each) => !classes[`${type}`].includes(`${each}`))]).toEqual([
          table,
          name,
          [],
        ]);
      }
    }
  });

  test('6–7: integrity and foreign keys', () => checkedFile(file));
});

describe('reference systems and contents', () => {
  test('10–12: gpkg_spatial_ref_sys with -1, 0 and 4326, and every system used', () => {
    expect(
      rows(
        'SELECT srs_id, organization, organization_coordsys_id, definition FROM gpkg_spatial_ref_sys WHERE srs_id < 1 ORDER BY srs_id',
      ),
    ).toEqual([
      { srs_id: -1, organization: 'NONE', organization_coordsys_id: -1, definition: 'undefined' },
      { srs_id: 0, organization: 'NONE', organization_coordsys_id: 0, definition: 'undefined' },
    ]);
    const [wgs84] = rows('SELECT * FROM gpkg_spatial_ref_sys WHERE srs_id = 4326');
    expect(wgs84).toMatchObject({ organization: 'EPSG', organization_coordsys_id: 4326 });
    expect(wgs84.definition).toMatch(/^GEOGCS\["WGS 84".*6378137,298\.257223563/);
    const used = 'SELECT srs_id FROM gpkg_contents WHERE srs_id NOTNULL UNION SELECT srs_id FROM gpkg_geometry_columns';
    expect(rows(`${used} EXCEPT SELECT srs_id FROM gpkg_spatial_ref_sys`)).toEqual([]);
  });

  test('13–16: gpkg_contents: a row per table, which exists; instants; reference systems', () => {
    expect(listed().sort()).toEqual(
      [
        'bloom',
        'blocks',
        'complaints',
        'crowns',
        'pavement',
        'quadrats',
        'ratings',
        'result_trees',
        'sites',
        'streets',
        'visits',
        'water',
      ].sort(),
    );
    for (const { table_name, last_change, data_type, srs_id } of rows('SELECT * FROM gpkg_contents')) {
      expect(columns(`${table_name}`).length).toBeGreaterThan(0);
      expect(last_change).toMatch(TIMESTAMP);
      expect([data_type, srs_id]).toEqual(data_type === 'features' ? ['features', 4326] : ['attributes', null]);
    }
    expect(rows('SELECT identifier FROM gpkg_contents GROUP BY identifier HAVING count(*) > 1')).toEqual([]);
  });

  test('the extent other programs zoom to holds all positions', () => {
    for (const table of features()) {
      const [box] = rows('SELECT min_x, min_y, max_x, max_y FROM gpkg_contents WHERE table_name = ?', table);
      const [data] = rows(
        `SELECT min(minx) AS min_x, min(miny) AS min_y, max(maxx) AS max_x, max(maxy) AS max_y FROM "rtree_${table}_geom"`,
      );
      if (data.min_x === null) continue;
      // The index rounds outwards, by at most two steps of single precision: 1.53e-5° at 80°.
      const slack = 1.6e-5;
      expect(Number(box.min_x)).toBeLessThanOrEqual(Number(data.min_x) + slack);
      expect(Number(box.min_y)).toBeLessThanOrEqual(Number(data.min_y) + slack);
      expect(Number(box.max_x)).toBeGreaterThanOrEqual(Number(data.max_x) - slack);
      expect(Number(box.max_y)).toBeGreaterThanOrEqual(Number(data.max_y) - slack);
    }
  });
});

describe('features', () => {
  test('18, 21–28, 146: one geometry column each, upper-case type, no z or m, the system of the contents', () => {
    const described = rows('SELECT * FROM gpkg_geometry_columns ORDER BY table_name');
    expect(described.map(({ table_name }) => table_name)).toEqual(features().sort());
    for (const { table_name, column_name, geometry_type_name, srs_id, z, m } of described) {
      expect([column_name, geometry_type_name, z, m]).toEqual(['geom', 'GEOMETRY', 0, 0]);
      expect(rows('SELECT srs_id FROM gpkg_contents WHERE table_name = ?', table_name)).toEqual([{ srs_id }]);
      const own = columns(`${table_name}`).filter(({ type }) => type === geometry_type_name);
      expect(own.map(({ name }) => name)).toEqual([column_name]);
    }
  });

  test('29–30: an integer primary key, and a single geometry column', () => {
    for (const table of listed()) {
      const keys = columns(table).filter(({ pk }) => pk !== 0);
      expect(keys).toMatchObject([{ cid: 0, name: 'fid', type: 'INTEGER', notnull: 1 }]);
      expect(columns(table).filter(({ type }) => type === 'GEOMETRY').length).toBe(features().includes(table) ? 1 : 0);
    }
  });

  test('19, 33, 152: blobs begin with GP, version 0, the system of their table; only areas and lines have envelopes', () => {
    let seen = 0;
    for (const table of features()) {
      for (const { geom } of rows(`SELECT geom FROM "${table}" WHERE geom NOTNULL`)) {
        const blob = geom as Buffer;
        const point = blob.length === 29;
        expect([blob.toString('latin1', 0, 2), blob[2], blob[3], blob.readInt32LE(4)]).toEqual([
          'GP',
          0,
          point ? 1 : 3,
          4326,
        ]);
        seen++;
      }
    }
    expect(seen).toBeGreaterThan(1000);
  });
});

describe('extensions', () => {
  test('58–64: every one is registered once, with a definition and a scope', () => {
    const extensions = rows('SELECT * FROM gpkg_extensions ORDER BY extension_name, table_name');
    for (const { definition, scope } of extensions) {
      expect(definition).toMatch(/^http:\/\/www\.geopackage\.org\/spec130\/#extension_/);
      expect(['read-write', 'write-only']).toContain(scope);
    }
    const indexed = extensions.filter(({ extension_name }) => extension_name === 'gpkg_rtree_index');
    expect(indexed.map(({ table_name, column_name, scope }) => [table_name, column_name, scope])).toEqual(
      features()
        .sort()
        .map((table) => [table, 'geom', 'write-only']),
    );
    expect(new Set(extensions.map(({ extension_name }) => extension_name))).toEqual(
      new Set(['gpkg_rtree_index', 'gpkg_schema']),
    );
  });

  test('R-tree extension (annex F.3, from memory; the same as GDAL 3.6.2 makes): the index and its six triggers by their names', () => {
    for (const table of features()) {
      const name = `rtree_${table}_geom`;
      expect(rows('SELECT sql FROM sqlite_master WHERE name = ?', name)[0].sql).toMatch(
        /USING rtree\(id, minx, maxx, miny, maxy\)$/,
      );
      const triggers = rows(
        "SELECT name FROM sqlite_master WHERE type = 'trigger' AND name GLOB ? ORDER BY name",
        `${name}_*`,
      );
      expect(triggers.map((trigger) => `${trigger.name}`.slice(name.length + 1))).toEqual([
        'delete',
        'insert',
        'update1',
        'update2',
        'update3',
        'update4',
      ]);
    }
  });

  test('schema extension (annex F.9, from memory): described columns exist, and words hold to their lists', () => {
    const described = rows('SELECT * FROM gpkg_data_columns');
    expect(described.length).toBeGreaterThan(40);
    for (const { table_name, column_name, constraint_name } of described) {
      expect(columns(`${table_name}`).map(({ name }) => name)).toContain(column_name);
      if (constraint_name === null) continue;
      const words = rows(
        "SELECT value FROM gpkg_data_column_constraints WHERE constraint_name = ? AND constraint_type = 'enum'",
        constraint_name,
      );
      expect(words.length).toBeGreaterThan(1);
    }
    expect(
      rows("SELECT value FROM gpkg_data_column_constraints WHERE constraint_name = 'pavement_surface' ORDER BY rowid"),
    ).toEqual(['concrete', 'asphalt', 'pavers', 'other'].map((value) => ({ value })));
  });
});
