/**
 * 50 clients × 200 mixed requests against a served GeoPackage of sample-geo, and the same number of requests for one static
 * file of the same server in the same run: p99 and throughput as ratios. `npx tsx tests/benchmarks/server-load.ts [postgres]`.
 * Bounded: ends by itself. Server and clients share the machine.
 */
import { openProjectStore, readProject } from '@crownfall/exchange/node';
import { openPostgisStore } from '@crownfall/exchange/postgis';
import {
  type Load,
  type LoadResult,
  lostUpdates,
  mixedLoad,
  percentile,
  staticBaseline,
} from '../cases/server-clients.ts';
import { startPostgres } from '../cases/server-postgres.ts';
import { fillStore, packedProject } from '../cases/server-running.ts';
import { SAMPLE, serve } from '../journeys/crownfall-process.ts';

const CLIENTS = 50;
const REQUESTS = 200;
const SHARED = 20;

const postgres = process.argv[2] === 'postgres' ? await startPostgres() : null;
const project = postgres === null ? await packedProject(SAMPLE) : await databaseProject(postgres.database('load'));
const { store } = postgres === null ? await openProjectStore(project) : await openPostgisStore(project);
if (store === null) throw new Error('the store did not open');
const { records } = await store.records('crowns', { limit: SHARED });
const extent = (await store.layers()).find(({ layer }) => layer === 'crowns')?.extent;
await store.close();
const { url, stop } = await serve(project);
const load: Load = {
  url,
  clients: CLIENTS,
  requestsEach: REQUESTS,
  shared: records.map(({ recordId }) => recordId),
  bounds: extent ?? [0, 0, 1, 1],
};
try {
  await staticBaseline({ ...load, requestsEach: 20 }, '/index.html');
  const before = await staticBaseline(load, '/index.html');
  const mixed = await mixedLoad(load);
  const after = await staticBaseline(load, '/index.html');
  report('static file, before', before);
  report('mixed', mixed);
  report('static file, after', after);
  const p99 = Math.max(percentile(before.outcomes, 0.99), percentile(after.outcomes, 0.99));
  const rate = Math.max(rateOf(before), rateOf(after));
  console.log(`p99 mixed / static: ${(percentile(mixed.outcomes, 0.99) / p99).toFixed(2)}`);
  console.log(`throughput mixed / static: ${(rateOf(mixed) / rate).toFixed(3)}`);
  const wrong = await lostUpdates(load, mixed);
  console.log(wrong.length === 0 ? 'no 5xx, no lost update' : wrong.join('\n'));
  process.exitCode = wrong.length === 0 ? 0 : 1;
} finally {
  await stop();
  postgres?.stop();
}

async function databaseProject(address: string): Promise<string> {
  const opened = await openPostgisStore(address);
  if (opened.store === null) throw new Error('the store did not open');
  await fillStore(opened.store, await readProject(SAMPLE));
  await opened.store.close();
  return address;
}

function rateOf({ outcomes, seconds }: LoadResult): number {
  return outcomes.length / seconds;
}

function report(name: string, result: LoadResult): void {
  const statuses = new Map<number, number>();
  for (const { status } of result.outcomes) statuses.set(status, (statuses.get(status) ?? 0) + 1);
  const times = [0.5, 0.95, 0.99].map((share) => `p${share * 100} ${percentile(result.outcomes, share).toFixed(1)} ms`);
  const count = result.outcomes.length;
  console.log(
    `${name}: ${count} requests, ${rateOf(result).toFixed(0)}/s, ${times.join(', ')}, ${JSON.stringify(Object.fromEntries(statuses))}`,
  );
}
