/**
 * Many clients on one server: a seeded mix of readers' and editors' requests, each client one after the other. Bounded: so many
 * clients, so many requests, then it ends by itself. What was acknowledged is kept, to be held against the server afterwards.
 */
import { Agent, request } from 'node:http';

interface Outcome {
  readonly status: number;
  readonly ms: number;
}

/** What the server acknowledged of changes to shared records. */
interface Acknowledged {
  /** By record: the spread that each acknowledged version holds. */
  readonly versions: Map<number, Map<number, number>>;
  conflicts: number;
  readonly visits: Set<string>;
  ratings: number;
}

export interface LoadResult {
  readonly outcomes: readonly Outcome[];
  readonly seconds: number;
  readonly acknowledged: Acknowledged;
}

export interface Load {
  readonly url: string;
  readonly clients: number;
  readonly requestsEach: number;
  /** Record numbers of crowns that all clients change. */
  readonly shared: readonly number[];
  /** West, south, east, north of the project. */
  readonly bounds: readonly [number, number, number, number];
}

/** Reads only one file that lies on the disk: what this server can do at best. */
export async function staticBaseline(load: Load, path: string): Promise<LoadResult> {
  return run(load, async (ask) => {
    await ask('GET', path);
  });
}

/** Of a hundred requests: 55 collections, 12 single features, 8 figures, 10 records, 10 changes of shared records, 3 ratings, 2 visits. */
export async function mixedLoad(load: Load): Promise<LoadResult> {
  return run(load, async (ask, random, acknowledged) => {
    const dice = random() * 100;
    const recordId = load.shared[Math.floor(random() * load.shared.length)];
    if (dice < 55)
      await ask(
        'GET',
        `/ogc/collections/${COLLECTIONS[Math.floor(random() * 3)]}/items?limit=50&bbox=${box(load, random)}`,
      );
    else if (dice < 67) await ask('GET', `/ogc/collections/crowns/items?limit=1&offset=${Math.floor(random() * 20)}`);
    else if (dice < 75) await ask('GET', '/api/figures');
    else if (dice < 85) await ask('GET', `/api/records/crowns/${recordId}`);
    else if (dice < 95) await changeShared(ask, random, acknowledged, recordId);
    else if (dice < 98) await addRating(ask, acknowledged);
    else await addVisit(ask, acknowledged);
  });
}

const COLLECTIONS = ['crowns', 'pavement', 'blocks'];

type Ask = (
  method: string,
  path: string,
  body?: object,
  headers?: Readonly<Record<string, string>>,
) => Promise<{ status: number; body: string }>;
type Step = (ask: Ask, random: () => number, acknowledged: Acknowledged) => Promise<void>;

async function run({ url, clients, requestsEach }: Load, step: Step): Promise<LoadResult> {
  const agent = new Agent({ keepAlive: true, maxSockets: clients });
  const outcomes: Outcome[] = [];
  const acknowledged: Acknowledged = { versions: new Map(), conflicts: 0, visits: new Set(), ratings: 0 };
  const ask: Ask = async (method, path, body, headers = {}) => {
    const from = performance.now();
    const answer = await send(agent, `${url}${path}`, method, body, headers);
    outcomes.push({ status: answer.status, ms: performance.now() - from });
    return answer;
  };
  const from = performance.now();
  await Promise.all(
    Array.from({ length: clients }, async (_, client) => {
      const random = seeded(client + 1);
      for (let i = 0; i < requestsEach; i++) await step(ask, random, acknowledged);
    }),
  );
  agent.destroy();
  return { outcomes, seconds: (performance.now() - from) / 1000, acknowledged };
}

/** Reads the record, then changes it with the version seen: two requests, as a person's page does. */
async function changeShared(
  ask: Ask,
  random: () => number,
  acknowledged: Acknowledged,
  recordId: number,
): Promise<void> {
  const seen = await ask('GET', `/api/records/crowns/${recordId}`);
  if (seen.status !== 200) return;
  const { version } = JSON.parse(seen.body) as { version: number };
  const spread = 3 + random();
  const { status, body } = await ask(
    'PATCH',
    `/api/records/crowns/${recordId}`,
    { properties: { outline_sd_m: spread } },
    { 'if-match': `"v${version}"` },
  );
  if (status === 412) acknowledged.conflicts++;
  if (status !== 200) return;
  const versions = acknowledged.versions.get(recordId) ?? new Map<number, number>();
  const applied = (JSON.parse(body) as { version: number }).version;
  if (versions.has(applied)) throw new Error(`version ${applied} of record ${recordId} was acknowledged twice`);
  versions.set(applied, spread);
  acknowledged.versions.set(recordId, versions);
}

async function addRating(ask: Ask, acknowledged: Acknowledged): Promise<void> {
  const properties = { tree_id: 'load', rated_on: '2026-05-20', rater: 'load', browned_pct: 10, cause: 'unknown' };
  if ((await ask('POST', '/api/records/ratings', { properties })).status === 201) acknowledged.ratings++;
}

/** Sent twice, as a phone does that lost the answer. */
async function addVisit(ask: Ask, acknowledged: Acknowledged): Promise<void> {
  const visitId = crypto.randomUUID();
  const visits = [{ visitId, treeId: 'load', visitedOn: '2026-05-20', visitor: 'load', did: 'inspected' }];
  const first = await ask('POST', '/api/visits', { visits });
  await ask('POST', '/api/visits', { visits });
  if (first.status === 200) acknowledged.visits.add(visitId);
}

function box({ bounds: [west, south, east, north] }: Load, random: () => number): string {
  const [x, y] = [west + random() * (east - west) * 0.8, south + random() * (north - south) * 0.8];
  return [x, y, x + (east - west) * 0.2, y + (north - south) * 0.2].join(',');
}

/** Mulberry32 (public domain): enough to choose requests, and the same every time. */
function seeded(seed: number): () => number {
  let state = seed * 0x9e3779b9;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function send(
  agent: Agent,
  url: string,
  method: string,
  body: object | undefined,
  headers: Readonly<Record<string, string>>,
): Promise<{ status: number; body: string }> {
  const text = body === undefined ? undefined : JSON.stringify(body);
  const type: Record<string, string> =
    text === undefined ? {} : { 'content-type': 'application/json', 'content-length': String(Buffer.byteLength(text)) };
  return new Promise((done, fail) => {
    const outgoing = request(url, { agent, method, headers: { ...headers, ...type } }, (answer) => {
      const pieces: Buffer[] = [];
      answer.on('data', (piece: Buffer) => pieces.push(piece));
      answer.on('end', () => done({ status: answer.statusCode ?? 0, body: Buffer.concat(pieces).toString() }));
    });
    outgoing.on('error', fail);
    outgoing.end(text);
  });
}

/** The value that a share of the outcomes stays at or under (nearest rank), milliseconds. */
export function percentile(outcomes: readonly Outcome[], share: number): number {
  const sorted = outcomes.map(({ ms }) => ms).sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)];
}

/** What speaks against the server: 5xx, updates lost, conflicts or visits that are not kept. Empty when nothing does. */
export async function lostUpdates({ url, shared }: Load, { outcomes, acknowledged }: LoadResult): Promise<string[]> {
  const wrong: string[] = [];
  const get = async (path: string) => JSON.parse((await send(new Agent(), `${url}${path}`, 'GET', undefined, {})).body);
  const faults = outcomes.filter(({ status }) => status >= 500).length;
  if (faults > 0) wrong.push(`${faults} answers of 5xx`);
  for (const recordId of shared) {
    const versions = acknowledged.versions.get(recordId) ?? new Map<number, number>();
    const record = await get(`/api/records/crowns/${recordId}`);
    if (record.version !== versions.size + 1)
      wrong.push(`record ${recordId}: ${versions.size} acknowledged, version ${record.version}`);
    if (versions.size > 0 && record.properties.outline_sd_m !== versions.get(record.version))
      wrong.push(`record ${recordId}: another value than acknowledged last`);
    const { changes } = await get(`/api/records/crowns/${recordId}/history`);
    for (const [version, spread] of versions) {
      const entry = changes.find((change: { version: number }) => change.version === version);
      if (entry?.fields.outline_sd_m.after !== spread)
        wrong.push(`record ${recordId}: version ${version} is not in the journal`);
    }
  }
  const { conflicts } = await get('/api/conflicts?state=open');
  if (conflicts.length !== acknowledged.conflicts)
    wrong.push(`${acknowledged.conflicts} conflicts told, ${conflicts.length} kept`);
  const { visits } = await get('/api/visits?treeId=load');
  if (visits.length !== acknowledged.visits.size)
    wrong.push(`${acknowledged.visits.size} visits acknowledged, ${visits.length} kept`);
  const { features } = await get('/api/records/ratings?tree_id=load&limit=10000');
  if (features.length !== acknowledged.ratings)
    wrong.push(`${acknowledged.ratings} ratings acknowledged, ${features.length} kept`);
  return wrong;
}
