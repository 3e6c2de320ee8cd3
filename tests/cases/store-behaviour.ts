/** What every project store must do, whatever it is built on: one suite, run by a test file per store. */
import type { Edit, ProjectStore, Visit } from '@crownfall/exchange';
import type { LonLatGeometry } from '@crownfall/geometry';
import type { RawFeature } from '@crownfall/survey';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';

/** A new, empty store, and how it is thrown away. */
export interface StoreForTest {
  readonly store: ProjectStore;
  readonly remove: () => Promise<void>;
}

const NONE: LonLatGeometry = { kind: 'none' };
const point = (x: number, y: number): LonLatGeometry => ({ kind: 'point', points: Float64Array.of(x, y) });
const square = (x: number, y: number, side: number): LonLatGeometry => ({
  kind: 'area',
  polygons: [[Float64Array.of(x, y, x + side, y, x + side, y + side, x, y + side)]],
});

const ANA = (minute = 0) => ({ author: 'Ana', at: `2026-05-20T10:${String(minute).padStart(2, '0')}:00.000Z` });
const BEN = (minute = 0) => ({ ...ANA(minute), author: 'Ben' });

const CROWNS: readonly RawFeature[] = [
  { row: 1, geometry: point(13.4, 52.1), properties: { tree_id: 'A', spread_m: 7.25, zip: '02134', gap: null } },
  {
    row: 2,
    geometry: square(13.5, 52.2, 0.1),
    properties: { zip: '1', tree_id: 'B', host: 'Quercus', list: [1, 'a'] },
  },
  { row: 3, geometry: NONE, properties: { tree_id: 'C', height_m: 'tall', alive: true, big: 1e21 } },
];

export function storeBehaviour(create: () => Promise<StoreForTest>): void {
  let store: ProjectStore;
  let remove: () => Promise<void>;
  beforeEach(async () => {
    ({ store, remove } = await create());
    await store.importLayer(
      { layer: 'crowns', shape: 'features', features: [CROWNS.slice(0, 2), CROWNS.slice(2)] },
      ANA(),
    );
  });
  afterEach(() => remove());

  const crowns = async () => (await store.records('crowns')).records;
  const crown = async (recordId: number) => await store.record('crowns', recordId);
  const grow = (recordId: number, expectedVersion: number, spread_m: number): Edit => ({
    action: 'update',
    layer: 'crowns',
    recordId,
    expectedVersion,
    properties: { spread_m },
  });

  describe('reading', () => {
    test('what came in is there: values, types, digits, order of fields, nulls', async () => {
      const records = await crowns();
      expect(records.map(({ geometry }) => geometry)).toEqual(CROWNS.map(({ geometry }) => geometry));
      for (const [i, { properties }] of CROWNS.entries()) {
        expect(Object.entries(records[i].properties)).toEqual(Object.entries(properties));
      }
      expect(records.map(({ version }) => version)).toEqual([1, 1, 1]);
    });

    test('by pages, numbers and values', async () => {
      const first = await store.records('crowns', { limit: 2 });
      expect(first.records).toHaveLength(2);
      const second = await store.records('crowns', { limit: 2, after: first.next ?? 0 });
      expect([...first.records, ...second.records]).toEqual(await crowns());
      expect(second.next).toBeNull();
      const [a, , c] = await crowns();
      expect((await store.records('crowns', { ids: [c.recordId, a.recordId, 999] })).records).toEqual([a, c]);
      expect((await store.records('crowns', { where: { tree_id: 'B' } })).records).toHaveLength(1);
      expect(await store.count('crowns', { where: { zip: '02134' } })).toBe(1);
      expect(await store.record('crowns', 999)).toBeNull();
    });

    test('by box: edges count, records without a place only when asked for', async () => {
      const ids = async (bbox: readonly [number, number, number, number], placeless = false) =>
        (await store.records('crowns', { bbox, placeless })).records.map(({ properties }) => properties.tree_id);
      expect(await ids([13.39, 52.0, 13.41, 52.2])).toEqual(['A']);
      expect(await ids([13.4, 52.1, 13.4, 52.1])).toEqual(['A']);
      expect(await ids([13.55, 52.25, 13.56, 52.26])).toEqual(['B']);
      expect(await ids([13.6, 52.3, 14, 53])).toEqual(['B']);
      expect(await ids([0, 0, 1, 1])).toEqual([]);
      expect(await ids([0, 0, 1, 1], true)).toEqual(['C']);
      expect(await ids([-180, -90, 180, 90])).toEqual(['A', 'B']);
      // Across the 180th meridian: everything from 13.45° eastwards to 10°.
      expect(await ids([13.45, -90, 10, 90])).toEqual(['B']);
      expect(await store.count('crowns', { bbox: [13, 52, 14, 53], placeless: true })).toBe(3);
    });

    test('by day, ends included; records without a day count', async () => {
      const days = ['2026-04-30', '2026-05-01', '2026-05-02', undefined, '2026-05-03'];
      const features = days.map((day, i) => ({
        row: i + 2,
        geometry: NONE,
        properties: { tree_id: `T${i}`, ...(day === undefined ? {} : { rated_on: day }) },
      }));
      await store.importLayer({ layer: 'ratings', shape: 'table', features: [features] }, ANA());
      const days_ = { field: 'rated_on', from: '2026-05-01', to: '2026-05-02' };
      const { records } = await store.records('ratings', { days: days_ });
      expect(records.map(({ properties }) => properties.tree_id)).toEqual(['T1', 'T2', 'T3']);
    });

    test('layers: those nobody gave are there and empty', async () => {
      const layers = new Map((await store.layers()).map((summary) => [summary.layer, summary]));
      expect(layers.get('crowns')).toMatchObject({ given: true, count: 3 });
      expect(layers.get('water')).toMatchObject({ given: false, count: 0, extent: null });
      const [west, south, east, north] = layers.get('crowns')?.extent ?? [];
      // The index may keep boxes in single precision, rounded outwards: 1e-5 of a degree.
      expect([west, south, east, north].map((edge) => Math.round((edge ?? 0) * 1e4) / 1e4)).toEqual([
        13.4, 52.1, 13.6, 52.3,
      ]);
    });

    test('misuse is told at the door', async () => {
      await expect(store.records('crowns', { limit: 0 })).rejects.toThrow(RangeError);
      await expect(store.records('crowns', { bbox: [0, 5, 1, 4] })).rejects.toThrow(RangeError);
      await expect(store.applyEdits([], { author: 'Ana', at: 'yesterday' })).rejects.toThrow(RangeError);
      await expect(store.applyEdits([], { author: '', at: ANA().at })).rejects.toThrow(TypeError);
    });
  });

  describe('edits', () => {
    test('fields given change, others stay, null empties; the version rises', async () => {
      const [before] = await crowns();
      const edit: Edit = {
        action: 'update',
        layer: 'crowns',
        recordId: before.recordId,
        expectedVersion: 1,
        geometry: point(13.41, 52.11),
        properties: { spread_m: 8.5, zip: null, height_m: '12 or so', seen: [{ by: 'x' }] },
      };
      const answer = await store.applyEdits([edit], ANA(1));
      expect(answer).toMatchObject({ outcomes: [{ outcome: 'applied', version: 2 }], repeated: false });
      const after = await crown(before.recordId);
      expect(after).toMatchObject({ version: 2, geometry: point(13.41, 52.11) });
      const kept = Object.entries(after?.properties ?? {}).filter(([, value]) => value !== null);
      expect(Object.fromEntries(kept)).toEqual({
        tree_id: 'A',
        spread_m: 8.5,
        height_m: '12 or so',
        seen: [{ by: 'x' }],
      });
      expect(answer.outcomes[0]).toMatchObject({ record: after });
    });

    test('new records are named when they have no name, and named anew when it is taken', async () => {
      const insert = (properties: Record<string, unknown>): Edit => ({
        action: 'insert',
        layer: 'crowns',
        geometry: point(1, 2),
        properties,
      });
      const { outcomes } = await store.applyEdits(
        [insert({}), insert({ tree_id: 'A' }), insert({ tree_id: 'D' })],
        ANA(1),
      );
      const names = outcomes.map((outcome) => outcome.outcome === 'applied' && outcome.record?.properties.tree_id);
      expect(new Set(['A', 'B', 'C', ...names]).size).toBe(6);
      expect(names[2]).toBe('D');
      expect(names.every((name) => typeof name === 'string' && name !== '')).toBe(true);
      // A number is never given twice, not even after deletion.
      const numbers = outcomes.map((outcome) => (outcome.outcome === 'applied' ? outcome.recordId : 0));
      await store.applyEdits([{ action: 'delete', layer: 'crowns', recordId: numbers[2], expectedVersion: 1 }], ANA(2));
      const again = await store.applyEdits([insert({})], ANA(3));
      expect(again.outcomes[0].outcome === 'applied' && again.outcomes[0].recordId).toBeGreaterThan(numbers[2]);
    });

    test('who comes second gets a conflict; both are kept until a person decides', async () => {
      const [{ recordId }] = await crowns();
      await store.applyEdits([grow(recordId, 1, 8)], ANA(1));
      const { outcomes, step } = await store.applyEdits([grow(recordId, 1, 9)], BEN(2));
      expect(step).toBeNull();
      expect(outcomes[0]).toMatchObject({
        outcome: 'conflict',
        conflict: {
          given: { properties: { spread_m: 9 } },
          current: { version: 2, properties: { spread_m: 8 } },
          state: 'open',
        },
      });
      const [conflict] = await store.conflicts('open');
      expect(conflict).toMatchObject({ recordId, givenBy: BEN(2) });
      expect(await store.decideConflict(conflict.conflictId, 'take', ANA(3))).toMatchObject({
        outcome: 'applied',
        version: 3,
      });
      expect((await crown(recordId))?.properties.spread_m).toBe(9);
      expect(await store.conflicts('open')).toEqual([]);
      expect(await store.conflicts()).toMatchObject([{ state: 'taken', decidedBy: ANA(3) }]);
      expect(await store.decideConflict(conflict.conflictId, 'drop', ANA(4))).toBeNull();
    });

    test('a dropped conflict changes nothing; a change to a deleted record is a conflict with nothing', async () => {
      const [{ recordId }] = await crowns();
      await store.applyEdits([{ action: 'delete', layer: 'crowns', recordId, expectedVersion: 1 }], ANA(1));
      const { outcomes } = await store.applyEdits([grow(recordId, 1, 9)], BEN(2));
      expect(outcomes[0]).toMatchObject({ outcome: 'conflict', conflict: { current: null } });
      const [conflict] = await store.conflicts();
      await store.decideConflict(conflict.conflictId, 'drop', ANA(3));
      expect(await store.conflicts()).toMatchObject([{ state: 'dropped' }]);
      expect(await crown(recordId)).toBeNull();
    });

    test('a record that never was is unknown', async () => {
      const { outcomes } = await store.applyEdits([grow(4711, 1, 9)], ANA(1));
      expect(outcomes).toEqual([{ outcome: 'unknown', layer: 'crowns', recordId: 4711 }]);
      expect(await store.conflicts()).toEqual([]);
    });

    test('what can be applied of a request is, beside a conflict', async () => {
      const [a, b] = await crowns();
      await store.applyEdits([grow(a.recordId, 1, 8)], ANA(1));
      const { outcomes } = await store.applyEdits([grow(a.recordId, 1, 9), grow(b.recordId, 1, 4)], BEN(2));
      expect(outcomes.map(({ outcome }) => outcome)).toEqual(['conflict', 'applied']);
    });

    test('the same request again changes nothing and answers the same', async () => {
      const [{ recordId }] = await crowns();
      const request = { ...ANA(1), requestId: '0b9f6c1e-0001' };
      const edits: Edit[] = [
        grow(recordId, 1, 8),
        { action: 'insert', layer: 'crowns', geometry: NONE, properties: { tree_id: 'N' } },
      ];
      const first = await store.applyEdits(edits, request);
      const last = await store.lastChange();
      const second = await store.applyEdits(edits, request);
      expect(second).toEqual({ ...first, repeated: true });
      expect(await store.lastChange()).toBe(last);
      expect(await store.count('crowns')).toBe(4);
    });

    test('edits sent at once are all applied, one after the other', async () => {
      const [{ recordId }] = await crowns();
      const raced = await Promise.all(
        Array.from({ length: 20 }, (_, i) => store.applyEdits([grow(recordId, 1, i + 1)], ANA(i))),
      );
      const outcomes = raced.map(({ outcomes: [outcome] }) => outcome.outcome);
      expect(outcomes.filter((outcome) => outcome === 'applied')).toHaveLength(1);
      expect(outcomes.filter((outcome) => outcome === 'conflict')).toHaveLength(19);
      expect(await store.conflicts('open')).toHaveLength(19);
    });
  });

  describe('undo and redo', () => {
    test('back and forth through several steps', async () => {
      const [a, b] = await crowns();
      const shots = [await crowns()];
      const remove_: Edit = { action: 'delete', layer: 'crowns', recordId: b.recordId, expectedVersion: 1 };
      const insert: Edit = {
        action: 'insert',
        layer: 'crowns',
        geometry: square(1, 1, 1),
        properties: { tree_id: 'N', odd: [1] },
      };
      for (const edits of [[grow(a.recordId, 1, 8), remove_], [insert], [grow(a.recordId, 2, 9)]]) {
        await store.applyEdits(edits, ANA(1));
        shots.push(await crowns());
      }
      const plain = (records: Awaited<ReturnType<typeof crowns>>) =>
        records.map(({ recordId, geometry, properties }) => ({ recordId, geometry, properties }));
      for (const shot of [shots[2], shots[1], shots[0]]) {
        expect(await store.undo(ANA(5))).toMatchObject({ outcome: 'done' });
        expect(plain(await crowns())).toEqual(plain(shot));
      }
      expect(await store.undo(ANA(6))).toEqual({ outcome: 'nothing' });
      for (const shot of [shots[1], shots[2], shots[3]]) {
        expect(await store.redo(ANA(7))).toMatchObject({ outcome: 'done' });
        expect(plain(await crowns())).toEqual(plain(shot));
      }
      expect(await store.redo(ANA(8))).toEqual({ outcome: 'nothing' });
    });

    test('everybody takes back their own; an edit ends redoing', async () => {
      const [a, b] = await crowns();
      await store.applyEdits([grow(a.recordId, 1, 8)], ANA(1));
      await store.applyEdits([grow(b.recordId, 1, 9)], BEN(2));
      expect(await store.undo(ANA(3))).toMatchObject({
        outcome: 'done',
        records: [{ layer: 'crowns', recordId: a.recordId }],
      });
      expect((await crown(b.recordId))?.properties.spread_m).toBe(9);
      await store.applyEdits([grow(a.recordId, 3, 10)], ANA(4));
      expect(await store.redo(ANA(5))).toEqual({ outcome: 'nothing' });
    });

    test('it never overwrites what others wrote since, and leaves their other fields', async () => {
      const [a, b] = await crowns();
      await store.applyEdits([grow(a.recordId, 1, 8)], ANA(1));
      await store.applyEdits([grow(a.recordId, 2, 9)], BEN(2));
      expect(await store.undo(ANA(3))).toMatchObject({
        outcome: 'blocked',
        records: [{ layer: 'crowns', recordId: a.recordId }],
      });
      expect(await crown(a.recordId)).toMatchObject({ version: 3, properties: { spread_m: 9 } });
      const { step } = await store.applyEdits([grow(b.recordId, 1, 8)], ANA(4));
      const other: Edit = {
        action: 'update',
        layer: 'crowns',
        recordId: b.recordId,
        expectedVersion: 2,
        properties: { host: 'Tilia' },
      };
      await store.applyEdits([other], BEN(5));
      expect(await store.undo(ANA(6), step ?? 0)).toMatchObject({ outcome: 'done' });
      const after = await crown(b.recordId);
      expect(after?.properties.host).toBe('Tilia');
      expect(after?.properties.spread_m ?? null).toBeNull();
    });

    test('the project itself can be taken back', async () => {
      await store.changeProject({ title: 'One', season: 2026, units: 'us', imagery: [], settings: { k: 1 } }, ANA(1));
      await store.changeProject({ title: 'Two' }, ANA(2));
      expect(await store.undo(ANA(3))).toMatchObject({ outcome: 'done' });
      expect(await store.project()).toEqual({
        title: 'One',
        season: 2026,
        units: 'us',
        imagery: [],
        settings: { k: 1 },
      });
    });
  });

  describe('journal', () => {
    test('who, when, what, before and after; blame per figure; the history of a tree', async () => {
      const [a] = await crowns();
      await store.applyEdits([grow(a.recordId, 1, 8)], BEN(1));
      const rating: Edit = {
        action: 'insert',
        layer: 'ratings',
        geometry: NONE,
        properties: { tree_id: 'A', browned_pct: 40 },
      };
      await store.applyEdits([rating], ANA(2));
      const history = await store.history('crowns', a.recordId);
      expect(history).toMatchObject([
        { ...BEN(1), action: 'update', version: 2, kind: 'edit', fields: { spread_m: { before: 7.25, after: 8 } } },
      ]);
      expect(Object.keys(history[0].fields)).toEqual(['spread_m']);
      const blame = await store.blame('crowns', a.recordId);
      expect(blame.spread_m).toMatchObject({ ...BEN(1), value: 8 });
      expect(blame.tree_id).toMatchObject({ ...ANA(0), value: 'A' });
      expect(blame.geometry).toMatchObject(ANA(0));
      expect((await store.treeHistory('A')).map(({ layer, action }) => [layer, action])).toEqual([
        ['crowns', 'update'],
        ['ratings', 'insert'],
      ]);
    });

    test('the feed gives what came after a position, oldest first', async () => {
      const since = await store.lastChange();
      const [a] = await crowns();
      await store.applyEdits([grow(a.recordId, 1, 8)], ANA(1));
      await store.undo(ANA(2));
      await store.addVisits([{ visitId: 'v1', visitedOn: '2026-05-20', visitor: 'Ana', did: 'inspected' }], ANA(3));
      await store.saveResults([], ANA(4));
      const feed = await store.changes(since);
      expect(feed.map(({ layer, kind }) => [layer, kind])).toEqual([
        ['crowns', 'edit'],
        ['crowns', 'undo'],
        ['visits', 'note'],
        ['results', 'note'],
      ]);
      expect(feed.every(({ change }, i) => i === 0 || change > feed[i - 1].change)).toBe(true);
      expect(await store.changes(since, 1)).toEqual(feed.slice(0, 1));
      expect(await store.changes(await store.lastChange())).toEqual([]);
    });
  });

  test('a visit is added once, and never changed', async () => {
    const visit: Visit = {
      visitId: 'v1',
      treeId: 'A',
      visitedOn: '2026-05-20',
      visitor: 'Ana',
      did: 'rated',
      details: { wind: 2, photos: [{ name: 'a', sha256: 'f0' }] },
    };
    const outcome = async (visits: readonly Visit[]) =>
      (await store.addVisits(visits, ANA())).map((each) => each.outcome);
    expect(await outcome([visit])).toEqual(['added']);
    expect(await outcome([visit, { ...visit, did: 'cleaned' }, { ...visit, visitId: 'v2' }])).toEqual([
      'known',
      'differs',
      'added',
    ]);
    // What a phone sends again may have been put together anew: the content counts, not the order of its fields.
    const anew = { ...visit, details: { photos: [{ sha256: 'f0', name: 'a' }], wind: 2 } };
    const otherOrder = Object.fromEntries(Object.entries(anew).reverse()) as unknown as Visit;
    expect(await outcome([otherOrder])).toEqual(['known']);
    expect(await outcome([{ ...visit, details: { ...visit.details, wind: 3 } }])).toEqual(['differs']);
    expect(await store.visits({ treeId: 'A' })).toEqual([visit, { ...visit, visitId: 'v2' }]);
    expect(await store.visits({ blockId: 'X' })).toEqual([]);
  });

  test('results replace those of the run before, all of them', async () => {
    const rows = [{ geometry: square(1, 1, 1), properties: { block_id: 'X', stained_m2: 12.5, parts: { a: 1 } } }];
    await store.saveResults(
      [
        { name: 'blocks', rows },
        { name: 'ledger', rows: [] },
      ],
      ANA(1),
    );
    expect(await store.resultTables()).toEqual([
      { name: 'blocks', count: 1 },
      { name: 'ledger', count: 0 },
    ]);
    expect((await store.results('blocks', { bbox: [0, 0, 1.5, 1.5] })).rows).toMatchObject(rows);
    await store.saveResults([{ name: 'trees', rows }], ANA(2));
    expect(await store.resultTables()).toEqual([{ name: 'trees', count: 1 }]);
    await expect(store.saveResults([{ name: 'x"; DROP', rows }], ANA(3))).rejects.toThrow(RangeError);
  });

  test('a layer is replaced in one pass; when its source fails, the old one stands', async () => {
    const before = await crowns();
    const failing = async function* () {
      yield [CROWNS[0]];
      throw new Error('the source broke off');
    };
    await expect(
      store.importLayer({ layer: 'crowns', shape: 'features', features: failing() }, ANA(1)),
    ).rejects.toThrow('broke off');
    expect(await crowns()).toEqual(before);
    expect(await store.importLayer({ layer: 'crowns', shape: 'features', features: [[CROWNS[1]]] }, ANA(2))).toBe(1);
    const [only] = await crowns();
    expect(only).toMatchObject({ properties: { tree_id: 'B' } });
    expect(before.map(({ recordId }) => recordId)).not.toContain(only.recordId);
    expect(await store.applyEdits([grow(only.recordId, only.version, 3)], ANA(3))).toMatchObject({
      outcomes: [{ outcome: 'applied' }],
    });
  });

  test('a whole layer is read as it stood at one moment', async () => {
    const seen: unknown[] = [];
    for await (const records of store.wholeLayer('crowns')) {
      await store.applyEdits([{ action: 'insert', layer: 'crowns', geometry: NONE, properties: {} }], ANA(1));
      seen.push(...records);
    }
    expect(seen).toHaveLength(3);
  });

  test('after closing, calls are misuse', async () => {
    await store.close();
    await expect(store.layers()).rejects.toThrow(TypeError);
  });
}
