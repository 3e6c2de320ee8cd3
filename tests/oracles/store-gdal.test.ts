/**
 * GDAL as the other program: it opens a project file without a word on stderr, reads what we read, and edits it; the file
 * itself keeps index, names, versions and journal. Run with GDAL 3.6.2; skipped where `ogrinfo` is not installed.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { ProjectStore } from '@crownfall/exchange';
import { convertProject, openProjectStore, readProject } from '@crownfall/exchange/node';
import { beforeEach, describe, expect, test } from 'vitest';
import { checkedFile, journalAgrees, plainFile } from '../cases/store-file-checks.ts';
import { temporaryFolder } from '../temporary-folder.ts';

const installed = spawnSync('ogrinfo', ['--version']).status === 0;
if (!installed) console.warn('skipped: ogrinfo (Debian: gdal-bin) is not installed');

const SAMPLE = resolve(import.meta.dirname, '../../sample-geo');
const ANA = { author: 'Ana', at: '2026-05-20T10:00:00.000Z' };

let folder: string;
let file: string;
beforeEach(async () => {
  folder = temporaryFolder('store-gdal');
  file = join(folder, 'town.gpkg');
  await convertProject(SAMPLE, file, { writer: ANA });
});

/** Runs a GDAL program; it must succeed and say nothing on stderr. */
function gdal(program: string, ...args: string[]): string {
  const { status, stdout, stderr } = spawnSync(program, args, { encoding: 'utf8', maxBuffer: 1 << 28 });
  expect({ program, args, status, stderr }).toEqual({ program, args, status: 0, stderr: '' });
  expect(stdout).not.toMatch(/warning|error/i);
  return stdout;
}

const sql = (statement: string) => gdal('ogrinfo', '-q', file, '-sql', statement);

async function withStore<T>(work: (store: ProjectStore) => Promise<T>): Promise<T> {
  const { store, findings } = await openProjectStore(file);
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  if (store === null) throw new Error('the file does not open');
  return work(store).finally(() => store.close());
}

const sampleCrowns = JSON.parse(readFileSync(join(SAMPLE, 'crowns.geojson'), 'utf8')) as {
  features: { properties: { tree_id: string; host: string }; geometry: { type: string; coordinates: unknown } }[];
};

describe.skipIf(!installed)('reading', () => {
  test('all layers open, with counts, fields, words for fields and an index', () => {
    const info = gdal('ogrinfo', '-al', '-so', file);
    expect(info).toMatch(/Layer name: crowns[\s\S]*Feature Count: 1200/);
    expect(info).toMatch(/height_m: Real \(0\.0\)/);
    expect(info).toMatch(/rated_on: Date/);
    expect(info).toMatch(/extra: String\(JSON\)/);
    expect(info).toMatch(/surface: String \(0\.0\), domain name=pavement_surface/);
    expect(gdal('ogrinfo', '-q', file, '-sql', "SELECT HasSpatialIndex('crowns', 'geom')")).toMatch(/= 1\b/);
    expect(gdal('gdalinfo', '--version')).toMatch(/GDAL/);
  });

  test('ogr2ogr reads the very features that the project was made of', () => {
    const out = join(folder, 'crowns.geojson');
    gdal('ogr2ogr', '-f', 'GeoJSON', '-lco', 'COORDINATE_PRECISION=15', '-lco', 'RFC7946=YES', out, file, 'crowns');
    const seen = JSON.parse(readFileSync(out, 'utf8')) as typeof sampleCrowns;
    expect(seen.features.map(({ properties }) => properties.tree_id)).toEqual(
      sampleCrowns.features.map(({ properties }) => properties.tree_id),
    );
    const numbers = (geometry: unknown) =>
      JSON.stringify(geometry)
        .match(/-?\d+\.?\d*(e-?\d+)?/g)
        ?.map(Number) ?? [];
    for (const [i, { geometry }] of seen.features.entries()) {
      const ours = numbers(sampleCrowns.features[i].geometry.coordinates);
      const theirs = numbers(geometry.coordinates);
      expect(theirs).toHaveLength(ours.length);
      expect(Math.max(...theirs.map((value, k) => Math.abs(value - ours[k])))).toBeLessThan(1e-13);
    }
  });

  test('a box finds what GDAL finds by the same index', async () => {
    const { records } = await withStore((store) =>
      store.records('pavement', { bbox: [-80.0585, 28.304, -80.0565, 28.3055], limit: 10000 }),
    );
    const found = gdal('ogrinfo', '-q', '-spat', '-80.0585', '28.304', '-80.0565', '28.3055', file, 'pavement');
    const fids = [...found.matchAll(/OGRFeature\(pavement\):(\d+)/g)]
      .map(([, fid]) => Number(fid))
      .sort((a, b) => a - b);
    expect(fids.length).toBeGreaterThan(10);
    expect(records.map(({ recordId }) => recordId)).toEqual(fids);
  });

  test('while the store is open and writes', async () => {
    await withStore(async (store) => {
      const edit = {
        action: 'insert',
        layer: 'crowns',
        geometry: { kind: 'none' },
        properties: { tree_id: 'NEW' },
      } as const;
      await store.applyEdits([edit], ANA);
      expect(sql("SELECT count(*) AS n FROM crowns WHERE tree_id = 'NEW'")).toMatch(/n \(Integer\) = 1/);
    });
  });
});

describe.skipIf(!installed)('editing', () => {
  test('an UPDATE is journaled as by outside, counted, and can be undone by nobody but by name', async () => {
    const tree = sampleCrowns.features[4].properties.tree_id;
    sql(`UPDATE crowns SET height_m = 12.5, host = 'Tilia cordata' WHERE tree_id = '${tree}'`);
    await withStore(async (store) => {
      const [crown] = (await store.records('crowns', { where: { tree_id: tree } })).records;
      expect(crown).toMatchObject({ version: 2, properties: { height_m: 12.5, host: 'Tilia cordata' } });
      const [change] = await store.history('crowns', crown.recordId);
      expect(change).toMatchObject({ author: 'outside', kind: 'outside', step: null, action: 'update', version: 2 });
      expect(change.fields.host).toEqual({ before: sampleCrowns.features[4].properties.host, after: 'Tilia cordata' });
      expect((await store.blame('crowns', crown.recordId)).host.author).toBe('outside');
      // Whoever saw the record before is told.
      const edit = {
        action: 'update',
        layer: 'crowns',
        recordId: crown.recordId,
        expectedVersion: 1,
        properties: { height_m: 1 },
      } as const;
      expect((await store.applyEdits([edit], ANA)).outcomes[0].outcome).toBe('conflict');
    });
    checkedFile(file);
  });

  test('appended features are named, indexed and journaled; a moved one is found where it is now', async () => {
    const more = {
      type: 'FeatureCollection',
      features: [
        { type: 'Feature', properties: { host: 'Acer' }, geometry: { type: 'Point', coordinates: [-80.2, 28.1] } },
        {
          type: 'Feature',
          properties: { tree_id: sampleCrowns.features[0].properties.tree_id },
          geometry: { type: 'Point', coordinates: [-80.3, 28.1] },
        },
      ],
    };
    writeFileSync(join(folder, 'more.geojson'), JSON.stringify(more));
    gdal('ogr2ogr', '-append', '-nln', 'crowns', file, join(folder, 'more.geojson'));
    sql("UPDATE crowns SET geom = (SELECT geom FROM crowns WHERE fid = 1) WHERE host = 'Acer'");
    await withStore(async (store) => {
      const [copied] = (await store.records('crowns', { bbox: [-80.31, 28, -80.29, 28.2] })).records;
      expect(copied.properties.tree_id).toBe(`${sampleCrowns.features[0].properties.tree_id}-${copied.recordId}`);
      expect((await store.records('crowns', { bbox: [-80.21, 28, -80.19, 28.2] })).records).toEqual([]);
      const [moved] = (await store.records('crowns', { where: { host: 'Acer' } })).records;
      expect(moved).toMatchObject({ version: 2, properties: { tree_id: `T-${moved.recordId}` } });
      expect(moved.geometry).toEqual((await store.record('crowns', 1))?.geometry);
      expect((await store.history('crowns', moved.recordId)).map(({ action, author }) => [action, author])).toEqual([
        ['insert', 'outside'],
        ['update', 'outside'],
      ]);
    });
    checkedFile(file);
    journalAgrees(file);
  });

  test('deleting, replacing and renumbering leave index and journal right', async () => {
    sql('DELETE FROM crowns WHERE fid <= 3');
    sql("INSERT OR REPLACE INTO crowns (fid, tree_id, height_m) VALUES (4, 'again', 3.5)");
    sql('UPDATE crowns SET fid = 9000 WHERE fid = 5');
    sql("INSERT INTO crowns (fid, tree_id) VALUES (6, 'x') ON CONFLICT (fid) DO UPDATE SET height_m = 4.5");
    sql("INSERT OR IGNORE INTO crowns (fid, tree_id) VALUES (7, 'ignored')");
    checkedFile(file);
    await withStore(async (store) => {
      const actions = async (recordId: number) =>
        (await store.history('crowns', recordId)).map(({ action, version }) => [action, version]);
      expect(await actions(1)).toEqual([['delete', 2]]);
      // GDAL lets the deletion inside REPLACE be seen by triggers.
      expect(await actions(4)).toEqual([
        ['delete', 2],
        ['insert', 3],
      ]);
      expect(await actions(5)).toEqual([['delete', 2]]);
      expect(await actions(9000)).toEqual([['insert', 1]]);
      expect(await actions(6)).toEqual([['update', 2]]);
      expect(await actions(7)).toEqual([]);
    });
    journalAgrees(file);
  });

  test('REPLACE by a program that hides its deletion from triggers is journaled as the change it is', async () => {
    const db = plainFile(file, false);
    for (const name of ['ST_IsEmpty', 'ST_MinX', 'ST_MaxX', 'ST_MinY', 'ST_MaxY'])
      db.function(name, (_blob: unknown) => 0);
    db.exec("INSERT OR REPLACE INTO crowns (fid, tree_id, height_m) VALUES (4, 'again', 3.5)");
    db.close();
    checkedFile(file);
    journalAgrees(file);
    await withStore(async (store) => {
      const history = await store.history('crowns', 4);
      expect(history).toMatchObject([{ action: 'update', version: 2, author: 'outside' }]);
      const before = sampleCrowns.features[3].properties.tree_id;
      expect(history[0].fields).toMatchObject({ tree_id: { before, after: 'again' }, height_m: { after: 3.5 } });
      expect(history[0].fields.geometry.after).toEqual({ kind: 'none' });
    });
  });

  test('a column added outside is a field, and journaled from the next opening on', async () => {
    sql('ALTER TABLE crowns ADD COLUMN planted DATE');
    sql("UPDATE crowns SET planted = '1999-04-01' WHERE fid = 1");
    const { store, findings } = await openProjectStore(file);
    expect(findings).toMatchObject([{ code: 'store-columns-adopted', severity: 'note', facts: { layers: 'crowns' } }]);
    expect((await store?.record('crowns', 1))?.properties.planted).toBe('1999-04-01');
    await store?.close();
    sql("UPDATE crowns SET planted = '2001-01-01' WHERE fid = 1");
    await withStore(async (reopened) => {
      expect(reopened.findings).toEqual([]);
      expect((await reopened.history('crowns', 1)).at(-1)?.fields).toEqual({
        planted: { before: '1999-04-01', after: '2001-01-01' },
      });
    });
  });

  test('journal and visits cannot be changed from outside either', async () => {
    sql("INSERT INTO visits (visit_id, visited_on, visitor, did) VALUES ('v', '2026-05-01', 'x', 'rated')");
    const db = plainFile(file, false);
    for (const statement of [
      "UPDATE visits SET did = 'cleaned'",
      'DELETE FROM visits',
      "INSERT OR REPLACE INTO visits (visit_id, visited_on, visitor, did) VALUES ('v', '2026-05-01', 'x', 'cleaned')",
      "UPDATE crownfall_changes SET author = 'me'",
      'DELETE FROM crownfall_changes',
      'DELETE FROM crownfall_change_values',
      "UPDATE crownfall_change_values SET after = 'x'",
    ]) {
      if (statement.includes('change_values'))
        db.exec("INSERT OR IGNORE INTO crownfall_change_values VALUES (1, 'x', NULL, 1)");
      expect(() => db.exec(statement), statement).toThrow(/never|known/);
    }
    db.close();
    await withStore(async (store) => expect(await store.visits()).toMatchObject([{ did: 'rated' }]));
  });
});

describe.skipIf(!installed)('a layer in a GeoPackage that GDAL made', () => {
  /** The sample's crowns in Florida East, US survey feet (EPSG:2236), beside another layer. */
  function project(entry: object): string {
    const home = join(folder, 'home');
    mkdirSync(home, { recursive: true });
    const theirs = join(home, 'city.gpkg');
    gdal(
      'ogr2ogr',
      '-t_srs',
      'EPSG:2236',
      '-select',
      'tree_id,host',
      '-nln',
      'trees',
      theirs,
      join(SAMPLE, 'crowns.geojson'),
    );
    gdal('ogr2ogr', '-update', '-nln', 'parcels', theirs, join(SAMPLE, 'blocks.geojson'));
    const layers = { crowns: { path: 'city.gpkg', ...entry }, pavement: resolve(SAMPLE, 'pavement.geojson') };
    writeFileSync(join(home, 'project.json'), JSON.stringify({ title: 'T', season: 2026, layers }));
    return home;
  }

  test('is read from its table, in its system, numbers of rows left out', async () => {
    const { layers, findings, sources } = await readProject(project({ table: 'trees' }));
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    const crowns = layers.crowns;
    expect([crowns?.crs, crowns?.features.length]).toEqual(['EPSG:2236', 1200]);
    expect(sources[0]).toMatchObject({ file: 'city.gpkg', sha256: expect.stringMatching(/^[0-9a-f]{64}$/) });
    for (const [i, { properties, geometry }] of (crowns?.features ?? []).entries()) {
      const given = sampleCrowns.features[i];
      expect([properties.tree_id, properties.host, 'fid' in properties]).toEqual([
        given.properties.tree_id,
        given.properties.host,
        false,
      ]);
      if (geometry.kind !== 'area') continue;
      const ours = (given.geometry.coordinates as number[][][])[0];
      // Two programs' projections there and back: PROJ 9 and ours agree below a millimetre, 1e-8 of a degree.
      expect(Math.abs(geometry.polygons[0][0][0] - ours[0][0])).toBeLessThan(1e-8);
      expect(Math.abs(geometry.polygons[0][0][1] - ours[0][1])).toBeLessThan(1e-8);
    }
  });

  test('of several tables none is guessed', async () => {
    const errors = async (entry: object) =>
      (await readProject(project(entry))).findings.filter(({ severity }) => severity === 'error');
    const expected = 'parcels, trees';
    expect(await errors({})).toMatchObject([{ code: 'project-invalid', facts: { got: 'none', expected } }]);
    rmSync(join(folder, 'home'), { recursive: true });
    expect(await errors({ table: 'tree' })).toMatchObject([
      { code: 'project-invalid', facts: { got: 'tree', expected } },
    ]);
  });

  test('a project file is read as layers as well: the table of the layer’s name', async () => {
    const home = join(folder, 'home');
    mkdirSync(home);
    const layers = { crowns: '../town.gpkg', pavement: '../town.gpkg' };
    writeFileSync(join(home, 'project.json'), JSON.stringify({ title: 'T', season: 2026, layers }));
    const read = await readProject(home);
    expect(read.layers.crowns?.features).toHaveLength(1200);
    expect(read.layers.pavement?.features.length).toBeGreaterThan(100);
  });
});
