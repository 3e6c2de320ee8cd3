/** Many hands on one served project: versions, conflicts, repeats, visits, the feed, and figures that follow. */
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../journeys/crownfall-process.ts';
import { STAINED_M2, writeTinyTown } from '../journeys/tiny-town.ts';
import { postgresMissing, startPostgres, type TestPostgres } from './server-postgres.ts';
import { call, fillStore, packedProject, type Running, runServer, until } from './server-running.ts';

const missing = postgresMissing();
const town = (): string => writeTinyTown(join(temporaryFolder(), 'town'));

let postgres: TestPostgres | null = null;

async function databaseProject(): Promise<string> {
  postgres = await startPostgres();
  const url = postgres.database('served');
  const { openPostgisStore } = await import('@crownfall/exchange/postgis');
  const { readProject } = await import('@crownfall/exchange/node');
  const { store } = await openPostgisStore(url);
  if (store === null) throw new Error('the store did not open');
  await fillStore(store, await readProject(town()));
  await store.close();
  return url;
}

const KINDS = [
  { name: 'a GeoPackage file', skip: false, make: () => packedProject(town()) },
  {
    name: missing === null ? 'PostGIS' : `PostGIS (skipped: ${missing})`,
    skip: missing !== null,
    make: databaseProject,
  },
];

afterAll(() => postgres?.stop());

describe.each(KINDS)('served from $name', ({ skip, make }) => {
  let running: Running;
  let api: string;

  beforeAll(async () => {
    if (skip) return;
    running = await runServer(await make());
    api = `${running.url}/api`;
  });
  afterAll(async () => {
    await running?.close();
  });

  async function newCrown(): Promise<{ id: number; etag: string }> {
    const body = { geometry: { type: 'Point', coordinates: [-79.4, 27.4] }, properties: { spread_m: 4 } };
    const { status, headers, body: told } = await call(`${api}/records/crowns`, 'POST', body);
    expect(status).toBe(201);
    expect(headers.get('location')).toBe(`/api/records/crowns/${told.recordId}`);
    return { id: told.recordId, etag: headers.get('etag') ?? '' };
  }

  test.skipIf(skip)('a record is read, changed with the version seen, and not without it', async () => {
    const { id, etag } = await newCrown();
    const address = `${api}/records/crowns/${id}`;
    const read = await call(address, 'GET');
    expect(read.headers.get('etag')).toBe(etag);
    expect(read.body).toMatchObject({
      type: 'Feature',
      id,
      version: 1,
      geometry: { type: 'Point', coordinates: [-79.4, 27.4] },
    });
    expect((await call(address, 'PATCH', { properties: { spread_m: 5 } })).status).toBe(428);
    const changed = await call(address, 'PATCH', { properties: { spread_m: 5 } }, { 'if-match': etag });
    expect(changed.status).toBe(200);
    expect(changed.headers.get('etag')).toBe('"v2"');
    expect(changed.body.record.properties.spread_m).toBe(5);
    expect((await call(address, 'DELETE', undefined, { 'if-match': '"v2"' })).status).toBe(200);
    expect((await call(address, 'GET')).status).toBe(404);
  });

  test.skipIf(skip)('a late change is refused with both versions, kept, and taken by a person', async () => {
    const { id, etag } = await newCrown();
    const address = `${api}/records/crowns/${id}`;
    await call(address, 'PATCH', { properties: { spread_m: 5 } }, { 'if-match': etag });
    const late = await call(address, 'PATCH', { properties: { spread_m: 6 } }, { 'if-match': etag });
    expect(late.status).toBe(412);
    expect(late.body.conflict).toMatchObject({
      given: { properties: { spread_m: 6 } },
      current: { version: 2, properties: { spread_m: 5 } },
      state: 'open',
    });
    const { conflictId } = late.body.conflict;
    const open = (await call(`${api}/conflicts?state=open`, 'GET')).body.conflicts;
    expect(open.map((each: { conflictId: number }) => each.conflictId)).toContain(conflictId);
    const taken = await call(`${api}/conflicts/${conflictId}`, 'POST', { decision: 'take' });
    expect(taken.body.outcome.record.properties.spread_m).toBe(6);
    expect((await call(`${api}/conflicts/${conflictId}`, 'POST', { decision: 'take' })).status).toBe(409);
    expect((await call(`${api}/conflicts/999999`, 'POST', { decision: 'drop' })).status).toBe(404);
  });

  test.skipIf(skip)('a repeated request adds nothing', async () => {
    const body = {
      properties: { tree_id: 'T-CLEAN', rated_on: '2026-05-20', rater: 'r', browned_pct: 10, cause: 'none' },
    };
    const key = { 'idempotency-key': crypto.randomUUID() };
    const first = await call(`${api}/records/ratings`, 'POST', body, key);
    const second = await call(`${api}/records/ratings`, 'POST', body, key);
    expect(second.status).toBe(201);
    expect(second.body).toEqual(first.body);
    const edits = {
      requestId: crypto.randomUUID(),
      edits: [{ action: 'insert', layer: 'quadrats', geometry: null, properties: { quadrat_id: 'Q1' } }],
    };
    expect((await call(`${api}/edits`, 'POST', edits)).body.repeated).toBe(false);
    expect((await call(`${api}/edits`, 'POST', edits)).body.repeated).toBe(true);
  });

  test.skipIf(skip)('a queue of visits sent twice is added once', async () => {
    const visits = Array.from({ length: 5 }, () => ({
      visitId: crypto.randomUUID(),
      treeId: 'T-GALLED',
      visitedOn: '2026-05-21T09:30:00Z',
      visitor: 'f',
      did: 'inspected',
    }));
    const outcomes = async (sent: unknown[]) =>
      (await call(`${api}/visits`, 'POST', { visits: sent })).body.outcomes.map(
        ({ outcome }: { outcome: string }) => outcome,
      );
    expect(await outcomes(visits)).toEqual(['added', 'added', 'added', 'added', 'added']);
    expect(await outcomes(visits)).toEqual(['known', 'known', 'known', 'known', 'known']);
    expect(await outcomes([{ ...visits[0], did: 'cleaned' }])).toEqual(['differs']);
    expect((await call(`${api}/visits?treeId=T-GALLED`, 'GET')).body.visits).toHaveLength(5);
  });

  test.skipIf(skip)('undo, redo, history and blame', async () => {
    const { id, etag } = await newCrown();
    await call(`${api}/records/crowns/${id}`, 'PATCH', { properties: { spread_m: 9 } }, { 'if-match': etag });
    expect((await call(`${api}/undo`, 'POST', {})).body.outcome).toBe('done');
    expect((await call(`${api}/records/crowns/${id}`, 'GET')).body.properties.spread_m).toBe(4);
    expect((await call(`${api}/redo`, 'POST', {})).body.outcome).toBe('done');
    const { changes } = (await call(`${api}/records/crowns/${id}/history`, 'GET')).body;
    expect(changes.map(({ kind }: { kind: string }) => kind)).toEqual(['edit', 'edit', 'undo', 'redo']);
    expect((await call(`${api}/records/crowns/${id}/blame`, 'GET')).body.spread_m).toMatchObject({
      author: 'local',
      value: 9,
    });
  });

  test.skipIf(skip)('the feed tells every change in order and resumes where it broke off', async () => {
    const { last } = (await call(`${api}/journal?limit=1`, 'GET')).body;
    const first = await listen(`${api}/changes`, { 'last-event-id': String(last) });
    await newCrown();
    await newCrown();
    const told = await first.next('change', 2);
    expect(told.map(({ id }) => id)).toEqual([last + 1, last + 2]);
    first.stop();
    await newCrown();
    const second = await listen(`${api}/changes`, { 'last-event-id': String(told[1].id) });
    await newCrown();
    expect((await second.next('change', 2)).map(({ id }) => id)).toEqual([last + 3, last + 4]);
    second.stop();
  });

  test.skipIf(skip)('figures follow an edit and say which number of the journal they hold', async () => {
    const { features } = (await call(`${api}/records/ratings?tree_id=T-GALLED`, 'GET')).body;
    const stained = async () => {
      const { headers, body } = await call(`${running.url}/ogc/collections/crowns/items/T-GALLED`, 'GET');
      return { journal: Number(headers.get('crownfall-journal')), m2: body.properties.stained_m2 as number };
    };
    const before = await stained();
    expect(before.m2).toBeCloseTo(STAINED_M2, 1);
    const stream = await listen(`${api}/changes`, {});
    const edit = await call(
      `${api}/records/ratings/${features[0].id}`,
      'PATCH',
      { properties: { browned_pct: 80 } },
      { 'if-match': `"v${features[0].version}"` },
    );
    expect(edit.status).toBe(200);
    const { last } = (await call(`${api}/journal?limit=1`, 'GET')).body;
    await until(
      () => call(`${api}/figures`, 'GET'),
      ({ body }) => body.journal >= last,
      120,
    );
    const after = await stained();
    expect(after.journal).toBeGreaterThanOrEqual(last);
    // π r² (1 − e^−0.8), as for 50 % in the town’s own closed form.
    expect(after.m2).toBeCloseTo(Math.PI * 16 * (1 - Math.exp(-0.8)), 1);
    await stream.some('figures', ({ data }) => data.journal >= last);
    stream.stop();
    const assessment = await call(`${api}/assessment`, 'GET');
    expect(assessment.body.journal).toBe(Number(assessment.headers.get('crownfall-journal')));
  });

  test.skipIf(skip)('nothing of it was a fault of the server', () => {
    expect(running?.faults ?? []).toEqual([]);
  });
});

describe('a folder', () => {
  let running: Running;
  beforeAll(async () => {
    running = await runServer(town());
  });
  afterAll(() => running?.close());

  test('is read and says how to edit together', async () => {
    expect((await call(`${running.url}/api/assessment`, 'GET')).status).toBe(200);
    const { status, body } = await call(`${running.url}/api/records/crowns`, 'GET');
    expect(status).toBe(409);
    expect(body.description).toContain('crownfall convert');
  });
});

interface StreamEvent {
  readonly id: number;
  readonly name: string;
  // biome-ignore lint/suspicious/noExplicitAny: events of every shape.
  readonly data: any;
}

/** Server-sent events, read as they come. */
async function listen(url: string, headers: Readonly<Record<string, string>>) {
  const abort = new AbortController();
  const response = await fetch(url, { headers, signal: abort.signal });
  expect(response.headers.get('content-type')).toContain('text/event-stream');
  const events: StreamEvent[] = [];
  const reading = (async () => {
    let rest = '';
    for await (const piece of response.body ?? []) {
      rest += new TextDecoder().decode(piece as Uint8Array);
      const blocks = rest.split('\n\n');
      rest = blocks.pop() ?? '';
      for (const block of blocks) {
        const field = (name: string) => new RegExp(`^${name}: (.*)$`, 'm').exec(block)?.[1];
        const data = field('data');
        if (data !== undefined)
          events.push({ id: Number(field('id')), name: field('event') ?? '', data: JSON.parse(data) });
      }
    }
  })().catch(() => {});
  return {
    next: async (name: string, count: number) =>
      (
        await until(
          async () => events.filter((event) => event.name === name),
          (found) => found.length >= count,
        )
      ).slice(0, count),
    some: (name: string, fits: (event: StreamEvent) => boolean) =>
      until(async () => events.some((event) => event.name === name && fits(event)), Boolean),
    stop: () => {
      abort.abort();
      return reading;
    },
  };
}
