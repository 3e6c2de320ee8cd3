/** A project in one file, served by the command: edited over HTTP, stopped in the middle of requests, nothing lost. */
import { join } from 'node:path';
import { openProjectStore } from '@crownfall/exchange/node';
import { expect, test } from 'vitest';
import { call, packedProject } from '../cases/server-running.ts';
import { crownfallHere } from './crownfall-here.ts';
import { serve, temporaryFolder } from './crownfall-process.ts';
import { writeTinyTown } from './tiny-town.ts';

test('every edit that was acknowledged before the stop is in the file', { timeout: 300_000 }, async () => {
  const file = await packedProject(writeTinyTown(join(temporaryFolder(), 'town')));
  const { url, stop } = await serve(file);
  const body = { geometry: { type: 'Point', coordinates: [-79.4, 27.4] }, properties: { spread_m: 4 } };
  const acknowledged = new Set<number>();
  const sending = Array.from({ length: 40 }, async (_, i) => {
    const answer = await call(`${url}/api/records/crowns`, 'POST', body).catch(() => null);
    if (answer?.status === 201) acknowledged.add(answer.body.recordId);
    if (i === 10) stopping = stop();
  });
  let stopping: Promise<number | null> = Promise.resolve(null);
  await Promise.all(sending);
  expect(await stopping).toBe(0);
  expect(acknowledged.size).toBeGreaterThan(10);
  const { store } = await openProjectStore(file, { readOnly: true });
  const { records } = (await store?.records('crowns')) ?? { records: [] };
  await store?.close();
  const kept = new Set(records.map(({ recordId }) => recordId));
  for (const recordId of acknowledged) expect(kept.has(recordId)).toBe(true);
  const copied = await crownfallHere(['copy', file, join(temporaryFolder(), 'copy.gpkg'), '--json']);
  expect(copied.code).toBe(0);
  expect(JSON.parse(copied.stdout).layers.crowns).toBe(records.length);
});
