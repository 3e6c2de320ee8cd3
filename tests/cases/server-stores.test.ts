/** What a project store promises, asked of both kinds: one GeoPackage file, and PostgreSQL with PostGIS. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import type { Edit, ProjectStore, StoredRecord } from '@crownfall/exchange';
import { createProjectStore, openProjectStore, readProject } from '@crownfall/exchange/node';
import { copyProject, openPostgisStore } from '@crownfall/exchange/postgis';
import type { LonLatGeometry } from '@crownfall/geometry';
import fc from 'fast-check';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../journeys/crownfall-process.ts';
import { writeTinyTown } from '../journeys/tiny-town.ts';
import { postgresMissing, sql, startPostgres, type TestPostgres } from './server-postgres.ts';
import { fillStore } from './server-running.ts';

const ANN = { author: 'ann', at: '2026-05-20T14:03:00.000Z' };
const BOB = { author: 'bob', at: '2026-05-20T14:04:00.000Z' };
const POINT: LonLatGeometry = { kind: 'point', points: Float64Array.of(-79.5, 27.25) };
const NONE = { kind: 'none' } as LonLatGeometry;

const missing = postgresMissing();
if (missing !== null) console.warn(`PostGIS is not tested here: ${missing}`);
let postgres: TestPostgres | null = null;
let databases = 0;

beforeAll(async () => {
  if (missing === null) postgres = await startPostgres();
});
afterAll(() => postgres?.stop());

interface Kind {
  readonly name: string;
  readonly skip: boolean;
  readonly make: () => Promise<{ store: ProjectStore; again: () => Promise<ProjectStore> }>;
}

const KINDS: readonly Kind[] = [
  {
    name: 'GeoPackage',
    skip: false,
    make: async () => {
      const path = join(temporaryFolder(), 'town.gpkg');
      const store = await createProjectStore(path);
      return { store, again: async () => opened(await openProjectStore(path)) };
    },
  },
  {
    name: missing === null ? 'PostGIS' : `PostGIS (skipped: ${missing})`,
    skip: missing !== null,
    make: async () => {
      if (postgres === null) throw new Error('no server');
      const url = postgres.database(`store_${++databases}`);
      return { store: opened(await openPostgisStore(url)), again: async () => opened(await openPostgisStore(url)) };
    },
  },
];

function opened({ store }: { readonly store: ProjectStore | null }): ProjectStore {
  if (store === null) throw new Error('the store did not open');
  return store;
}

const insert = (layer: Edit['layer'], properties: object, geometry: LonLatGeometry = NONE): Edit => ({
  action: 'insert',
  layer,
  geometry,
  properties: { ...properties },
});

const update = (recordId: number, expectedVersion: number, properties: object): Edit => ({
  action: 'update',
  layer: 'crowns',
  recordId,
  expectedVersion,
  properties: { ...properties },
});

describe.each(KINDS)('$name', ({ skip, make }) => {
  let store: ProjectStore;
  let again: () => Promise<ProjectStore>;

  beforeEach(async () => {
    if (!skip) ({ store, again } = await make());
  });
  afterEach(async () => {
    await store?.close();
  });

  /** One crown, as it was stored. */
  async function crown(properties: object = { tree_id: 'T1', spread_m: 6.25 }): Promise<StoredRecord> {
    const { outcomes } = await store.applyEdits([insert('crowns', properties, POINT)], ANN);
    const [outcome] = outcomes;
    if (outcome.outcome !== 'applied' || outcome.record === null) throw new Error(JSON.stringify(outcome));
    return outcome.record;
  }

  test.skipIf(skip)('gives records numbers, versions and names, and finds them again', async () => {
    const given = { spread_m: 6.25, host: 'Terminalia buceras', note: 'by the gate', height_m: '7 ft' };
    const record = await crown(given);
    expect(record.version).toBe(1);
    expect(record.properties).toMatchObject(given);
    expect(record.properties.tree_id).toBe(`T-${record.recordId}`);
    const copy = await crown({ tree_id: `T-${record.recordId}` });
    expect(copy.properties.tree_id).not.toBe(record.properties.tree_id);
    expect(await store.record('crowns', record.recordId)).toEqual(record);
    const found = await store.records('crowns', { where: { tree_id: `T-${record.recordId}` } });
    expect(found.records.map(({ recordId }) => recordId)).toEqual([record.recordId]);
    expect(await store.record('crowns', 999_999)).toBeNull();
  });

  test.skipIf(skip)('keeps values and coordinates bit for bit, over closing and opening', async () => {
    const ring = Float64Array.of(-79.5, 27.25, -79.499999999999986, 27.25, -79.5, 27.250000000000004);
    const area: LonLatGeometry = { kind: 'area', polygons: [[ring], [ring.map((x) => x + 1)]] };
    const properties = {
      tree_id: 'T',
      spread_m: 0.1 + 0.2,
      deep: { a: [1, 'two', null, { b: true }] },
      word: 'Ünïcödé <b>&',
    };
    const { outcomes } = await store.applyEdits([insert('crowns', properties, area)], ANN);
    await store.close();
    store = await again();
    const [outcome] = outcomes;
    if (outcome.outcome !== 'applied') throw new Error('not applied');
    const record = await store.record('crowns', outcome.recordId);
    expect(record?.geometry).toEqual(area);
    expect(record?.properties).toEqual(properties);
  });

  test.skipIf(skip)('a second writer of the same version conflicts; both are kept; a person decides', async () => {
    const { recordId } = await crown();
    const first = await store.applyEdits([update(recordId, 1, { spread_m: 7 })], ANN);
    expect(first.outcomes[0]).toMatchObject({ outcome: 'applied', version: 2 });
    const second = await store.applyEdits([update(recordId, 1, { spread_m: 8 })], BOB);
    expect(second.step).toBeNull();
    expect(second.outcomes[0]).toMatchObject({
      outcome: 'conflict',
      conflict: {
        given: { properties: { spread_m: 8 } },
        givenBy: BOB,
        current: { properties: { spread_m: 7 } },
        state: 'open',
      },
    });
    const [open] = await store.conflicts('open');
    expect(await store.decideConflict(open.conflictId, 'take', ANN)).toMatchObject({
      outcome: 'applied',
      version: 3,
      record: { properties: { spread_m: 8 } },
    });
    expect(await store.conflicts('open')).toEqual([]);
    expect(await store.conflicts()).toMatchObject([{ state: 'taken', decidedBy: ANN }]);
    expect(await store.decideConflict(open.conflictId, 'take', ANN)).toBeNull();
  });

  test.skipIf(skip)(
    'dropping a conflict leaves the record; an edit of a deleted record conflicts with nothing',
    async () => {
      const { recordId } = await crown();
      await store.applyEdits([update(recordId, 1, { spread_m: 7 })], ANN);
      const late = await store.applyEdits([{ action: 'delete', layer: 'crowns', recordId, expectedVersion: 1 }], BOB);
      expect(late.outcomes[0].outcome).toBe('conflict');
      const [open] = await store.conflicts('open');
      expect(await store.decideConflict(open.conflictId, 'drop', ANN)).toBeNull();
      expect(await store.record('crowns', recordId)).toMatchObject({ version: 2, properties: { spread_m: 7 } });
      await store.applyEdits([{ action: 'delete', layer: 'crowns', recordId, expectedVersion: 2 }], ANN);
      const gone = await store.applyEdits([update(recordId, 2, { spread_m: 9 })], BOB);
      expect(gone.outcomes[0]).toMatchObject({ outcome: 'conflict', conflict: { current: null } });
      const never = await store.applyEdits([update(recordId + 1000, 1, { spread_m: 9 })], BOB);
      expect(never.outcomes[0]).toEqual({ outcome: 'unknown', layer: 'crowns', recordId: recordId + 1000 });
    },
  );

  test.skipIf(skip)('a repeated request changes nothing and answers the same', async () => {
    const request = { ...ANN, requestId: '9b2f4bd6-8d5c-4a51-9a4e-1f4f5e2c7a10' };
    const edits = [insert('ratings', { tree_id: 'T1', rated_on: '2026-05-20', browned_pct: 40 })];
    const first = await store.applyEdits(edits, request);
    const second = await store.applyEdits(edits, request);
    expect(second.repeated).toBe(true);
    expect(second.step).toBe(first.step);
    expect(second.outcomes).toEqual(first.outcomes);
    expect(await store.count('ratings')).toBe(1);
  });

  test.skipIf(skip)(
    'undo takes back step after step, redo brings them back, and neither destroys what others wrote',
    async () => {
      const { recordId } = await crown({ tree_id: 'T1', spread_m: 5 });
      await store.applyEdits([update(recordId, 1, { spread_m: 6 })], ANN);
      await store.applyEdits([update(recordId, 2, { spread_m: 7 })], ANN);
      const spread = async () => (await store.record('crowns', recordId))?.properties.spread_m;
      expect((await store.undo(ANN)).outcome).toBe('done');
      expect(await spread()).toBe(6);
      expect((await store.undo(ANN)).outcome).toBe('done');
      expect(await spread()).toBe(5);
      expect((await store.undo(ANN)).outcome).toBe('done');
      expect(await store.record('crowns', recordId)).toBeNull();
      expect((await store.undo(ANN)).outcome).toBe('nothing');
      for (const expected of [5, 6, 7]) {
        expect((await store.redo(ANN)).outcome).toBe('done');
        expect(await spread()).toBe(expected);
      }
      const version = (await store.record('crowns', recordId))?.version ?? 0;
      expect(version).toBeGreaterThan(3);
      await store.applyEdits([update(recordId, version, { spread_m: 9 })], BOB);
      expect(await store.undo(ANN)).toMatchObject({ outcome: 'blocked', records: [{ layer: 'crowns', recordId }] });
      expect(await spread()).toBe(9);
    },
  );

  test.skipIf(skip)('undo leaves another person’s change to another field', async () => {
    const { recordId } = await crown({ tree_id: 'T1', spread_m: 5, host: 'a' });
    await store.applyEdits([update(recordId, 1, { spread_m: 6 })], ANN);
    await store.applyEdits([update(recordId, 2, { host: 'b' })], BOB);
    expect((await store.undo(ANN)).outcome).toBe('done');
    expect((await store.record('crowns', recordId))?.properties).toMatchObject({ spread_m: 5, host: 'b' });
  });

  test.skipIf(skip)(
    'the journal tells who changed what, in order; blame tells who last wrote each figure',
    async () => {
      const { recordId } = await crown({ tree_id: 'T1', spread_m: 5 });
      await store.applyEdits([update(recordId, 1, { spread_m: 6, height_m: 11 })], BOB);
      await store.applyEdits([insert('ratings', { tree_id: 'T1', rated_on: '2026-05-20', browned_pct: 40 })], ANN);
      const changes = await store.changes(0);
      expect(changes.map(({ change }) => change)).toEqual(
        [...changes].map(({ change }) => change).sort((a, b) => a - b),
      );
      expect(changes.map(({ layer, action, author }) => `${layer} ${action} ${author}`)).toEqual([
        'crowns insert ann',
        'crowns update bob',
        'ratings insert ann',
      ]);
      expect(await store.lastChange()).toBe(changes[2].change);
      expect(await store.changes(changes[1].change)).toEqual([changes[2]]);
      const history = await store.history('crowns', recordId);
      expect(history[1].fields).toEqual({
        spread_m: { before: 5, after: 6 },
        height_m: { before: null, after: 11 },
      });
      expect((await store.treeHistory('T1')).map(({ layer }) => layer)).toEqual(['crowns', 'crowns', 'ratings']);
      const blame = await store.blame('crowns', recordId);
      expect(blame.spread_m).toMatchObject({ author: 'bob', value: 6 });
      expect(blame.tree_id).toMatchObject({ author: 'ann', value: 'T1' });
    },
  );

  test.skipIf(skip)('pages, boxes, the date line and days', async () => {
    const at = (lon: number, lat: number): LonLatGeometry => ({ kind: 'point', points: Float64Array.of(lon, lat) });
    const places = [at(0, 0), at(10, 0), at(179.9, 0), at(-179.9, 0), at(10, 5), NONE];
    await store.applyEdits(
      places.map((place, i) =>
        insert('crowns', { tree_id: `T${i}`, outlined_on: i === 0 ? '2026-05-01' : null }, place),
      ),
      ANN,
    );
    const names = async (query: object): Promise<unknown[]> =>
      (await store.records('crowns', query)).records.map(({ properties }) => properties.tree_id);
    expect(await names({ bbox: [-1, -1, 10, 0] })).toEqual(['T0', 'T1']);
    expect(await names({ bbox: [179, -1, -179, 1] })).toEqual(['T2', 'T3']);
    expect(await names({ bbox: [9, 4, 11, 6], placeless: true })).toEqual(['T4', 'T5']);
    expect(await names({ days: { field: 'outlined_on', from: '2026-06-01' } })).toEqual(['T1', 'T2', 'T3', 'T4', 'T5']);
    const page = await store.records('crowns', { limit: 4 });
    expect(page.records).toHaveLength(4);
    expect(await names({ after: page.next })).toEqual(['T4', 'T5']);
    expect(await store.count('crowns', { bbox: [-1, -1, 10, 0] })).toBe(2);
  });

  test.skipIf(skip)('visits are added once under the client’s id', async () => {
    const visit = {
      visitId: '0f0e9c1e-6a3b-4dd2-8a57-5d2c3b1a9e77',
      treeId: 'T1',
      visitedOn: '2026-05-20',
      visitor: 'ann',
      did: 'inspected',
      details: { photos: ['a'], weather: 'dry' },
    };
    const outcome = async (given: typeof visit) => (await store.addVisits([given], ANN))[0].outcome;
    expect(await outcome(visit)).toBe('added');
    expect(await outcome({ ...visit })).toBe('known');
    expect(await outcome({ ...visit, did: 'cleaned' })).toBe('differs');
    expect(await store.visits({ treeId: 'T1' })).toEqual([visit]);
  });

  test.skipIf(skip)('project facts are journaled and undone like edits', async () => {
    await store.changeProject({ title: 'A town', settings: { cell_side_m: 90 } }, ANN);
    await store.changeProject({ title: 'Another' }, ANN);
    expect((await store.undo(ANN)).outcome).toBe('done');
    expect(await store.project()).toMatchObject({ title: 'A town', settings: { cell_side_m: 90 } });
  });

  test.skipIf(skip)('results are replaced as a whole', async () => {
    const rows = [{ geometry: POINT, properties: { block_id: 'B', stained_m2: 12.5 } }];
    await store.saveResults(
      [
        { name: 'blocks', rows },
        { name: 'trees', rows: [] },
      ],
      ANN,
    );
    await store.saveResults([{ name: 'blocks', rows: [...rows, ...rows] }], ANN);
    const page = await store.results('blocks');
    expect(page.rows).toHaveLength(2);
    expect(page.rows[0]).toMatchObject(rows[0]);
  });

  test.skipIf(skip)(
    'a hundred writers at once lose nothing: every record ends as the last one acknowledged',
    async () => {
      const { recordId } = await crown({ tree_id: 'T1', spread_m: 1 });
      const writes = Array.from({ length: 100 }, async (_, i) => {
        const seen = await store.record('crowns', recordId);
        const { outcomes } = await store.applyEdits([update(recordId, seen?.version ?? 0, { spread_m: i + 2 })], BOB);
        return outcomes[0];
      });
      const outcomes = await Promise.all(writes);
      const applied = outcomes.filter((outcome) => outcome.outcome === 'applied');
      const versions = applied.map((outcome) => ('version' in outcome ? outcome.version : 0)).sort((a, b) => a - b);
      expect(versions).toEqual(versions.map((_, i) => i + 2));
      expect(applied.length + (await store.conflicts('open')).length).toBe(100);
      const last = applied.find((outcome) => 'version' in outcome && outcome.version === versions.at(-1));
      expect(await store.record('crowns', recordId)).toEqual(last && 'record' in last ? last.record : null);
    },
  );

  test.skipIf(skip)('a whole project comes in and out as it was', async () => {
    const input = await readProject(writeTinyTown(join(temporaryFolder(), 'town')));
    await fillStore(store, input);
    for (const { layer, given, count } of await store.layers()) {
      const raw = input.layers[layer];
      expect(given).toBe(raw !== undefined);
      expect(count).toBe(raw?.features.length ?? 0);
      const out: object[] = [];
      for await (const records of store.wholeLayer(layer)) {
        out.push(...records.map(({ geometry, properties }) => ({ geometry, properties })));
      }
      expect(out).toEqual((raw?.features ?? []).map(({ geometry, properties }) => ({ geometry, properties })));
    }
  });

  test.skipIf(skip)('any values and places survive (property)', async () => {
    const value = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.boolean(),
    );
    const properties = fc.dictionary(
      fc.constantFrom('host', 'spread_m', 'outlined_on', 'note', 'Größe', 'radii_m'),
      value,
    );
    const coordinate = fc.double({ min: -90, max: 90, noNaN: true });
    const points = fc.array(coordinate, { minLength: 2, maxLength: 2 }).map((xy) => Float64Array.from(xy));
    const written: { geometry: LonLatGeometry; properties: object }[] = fc
      .sample(fc.record({ geometry: points.map((p) => ({ kind: 'point', points: p }) as const), properties }), 200)
      .map((record, i) => ({ ...record, properties: { tree_id: `P${i}`, ...record.properties } }));
    await store.applyEdits(
      written.map((record) => insert('crowns', record.properties, record.geometry)),
      ANN,
    );
    const { records } = await store.records('crowns', { limit: 1000 });
    records.forEach((record, i) => {
      expect(record.properties).toEqual(JSON.parse(JSON.stringify(written[i].properties)));
      expect(record.geometry).toEqual(written[i].geometry);
    });
  });
});

test.skipIf(missing !== null)('another program’s writing to the database is named, counted and journaled', async () => {
  if (postgres === null) throw new Error('no server');
  const url = postgres.database('outside');
  const store = opened(await openPostgisStore(url));
  await store.applyEdits([insert('crowns', { tree_id: 'T1', spread_m: 5, word: 'kept' }, POINT)], ANN);
  sql(url, "UPDATE crownfall.crowns SET spread_m = 7.5, host = 'Quercus virginiana' WHERE tree_id = 'T1'");
  sql(url, "UPDATE crownfall.crowns SET spread_m = 7.5 WHERE tree_id = 'T1'");
  sql(url, 'INSERT INTO crownfall.crowns (spread_m, geom) VALUES (4, ST_SetSRID(ST_MakePoint(-79.4, 27.3), 4326))');
  sql(url, "DELETE FROM crownfall.crowns WHERE tree_id = 'T-2'");
  expect(await store.record('crowns', 1)).toMatchObject({
    version: 2,
    properties: { tree_id: 'T1', spread_m: 7.5, word: 'kept', host: 'Quercus virginiana' },
  });
  const told = (await store.changes(0)).map(({ author, action, recordId, version }) => [
    author,
    action,
    recordId,
    version,
  ]);
  expect(told).toEqual([
    ['ann', 'insert', 1, 1],
    ['outside', 'update', 1, 2],
    ['outside', 'insert', 2, 1],
    ['outside', 'delete', 2, 2],
  ]);
  expect(await store.undo(ANN)).toMatchObject({ outcome: 'blocked' });
  expect(() => sql(url, 'DELETE FROM crownfall.journal')).toThrow(/never changed/);
  // QGIS and GDAL see the table as a layer of its own, with typed columns.
  const seen = spawnSync('ogrinfo', ['-so', url.replace('postgres:', 'postgresql:'), 'crownfall.crowns'], {
    encoding: 'utf8',
  });
  expect(seen.stdout).toMatch(/spread_m: Real/);
  expect(seen.stdout).toMatch(/Feature Count: 1/);
  await store.close();
});

test.skipIf(missing !== null)('from one file to PostGIS and back nothing changes', async () => {
  if (postgres === null) throw new Error('no server');
  const input = await readProject(writeTinyTown(join(temporaryFolder(), 'town')));
  const first = await createProjectStore(join(temporaryFolder(), 'first.gpkg'));
  await fillStore(first, input);
  await first.addVisits(
    [{ visitId: 'v-00000001', treeId: 'T-CLEAN', visitedOn: '2026-05-20', visitor: 'a', did: 'inspected' }],
    ANN,
  );
  const middle = opened(await openPostgisStore(postgres.database('moved')));
  const last = await createProjectStore(join(temporaryFolder(), 'last.gpkg'));
  await copyProject(first, middle, ANN);
  await copyProject(middle, last, ANN);
  for (const { layer, given } of await first.layers()) {
    expect((await last.layers()).find((each) => each.layer === layer)?.given).toBe(given);
    const contents = async (store: ProjectStore) =>
      (await store.records(layer)).records.map(({ geometry, properties }) => ({ geometry, properties }));
    expect(await contents(last)).toEqual(await contents(first));
  }
  expect(await last.project()).toEqual(await first.project());
  expect(await last.visits()).toEqual(await first.visits());
  await expect(copyProject(first, middle, ANN)).rejects.toThrow(RangeError);
  for (const store of [first, middle, last]) await store.close();
});
