/**
 * One server of the sample town for all journeys that only read it: it starts when the first of them asks and stops after the last
 * test. Named in vitest.config.ts among the files that run once around all tests.
 */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { SAMPLE, type Served, serve } from './crownfall-process.ts';

const DOOR = 'CROWNFALL_SERVED_SAMPLE';

export async function setup(): Promise<() => Promise<void>> {
  let served: Promise<Served> | undefined;
  const door = createServer((_, response) => {
    served ??= serve(SAMPLE);
    served.then(
      ({ url }) => void response.end(url),
      (error: Error) => void response.writeHead(500).end(error.message),
    );
  });
  await new Promise<void>((listening) => void door.listen(0, '127.0.0.1', listening));
  process.env[DOOR] = `http://127.0.0.1:${(door.address() as AddressInfo).port}`;
  return async () => {
    delete process.env[DOOR];
    door.close();
    await (await served?.catch(() => undefined))?.stop();
  };
}

/** Where the sample town is served. */
export async function servedSample(): Promise<string> {
  const answer = await fetch(process.env[DOOR] ?? '');
  const said = await answer.text();
  if (!answer.ok) throw new Error(said);
  return said;
}
