/** The small part of tests/benchmarks/server-load.ts: no 5xx and no lost update with many clients at once. Times nothing. */
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { temporaryFolder } from '../journeys/crownfall-process.ts';
import { writeTinyTown } from '../journeys/tiny-town.ts';
import { type Load, lostUpdates, mixedLoad } from './server-clients.ts';
import { packedProject, type Running, runServer } from './server-running.ts';

let running: Running | null = null;
afterAll(() => running?.close());

test('12 clients, 40 steps each: every acknowledged change is there, none twice', { timeout: 300_000 }, async () => {
  running = await runServer(await packedProject(writeTinyTown(join(temporaryFolder(), 'town'))));
  const load: Load = {
    url: running.url,
    clients: 12,
    requestsEach: 40,
    shared: [1, 2],
    bounds: [-79.501, 27.249, -79.498, 27.251],
  };
  const result = await mixedLoad(load);
  expect(result.outcomes.length).toBeGreaterThanOrEqual(480);
  expect(await lostUpdates(load, result)).toEqual([]);
  expect(running.faults).toEqual([]);
  // The test would prove nothing if nobody had collided, or nobody had written.
  expect(result.acknowledged.versions.size).toBe(2);
  expect(result.acknowledged.conflicts).toBeGreaterThan(0);
});
