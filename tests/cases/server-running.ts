/** A server in this process for tests: a project put into a store, served on a free port of 127.0.0.1. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { ProjectStore } from '@crownfall/exchange';
import { createProjectStore, openProjectStore, readProject } from '@crownfall/exchange/node';
import { openPostgisStore } from '@crownfall/exchange/postgis';
import type { LayerName, ProjectInput } from '@crownfall/survey';
import { buildApp } from '../../apps/server/src/app.ts';
import { openFigures } from '../../apps/server/src/figures/open-figures.ts';
import { stopGently } from '../../apps/server/src/http/stop-gently.ts';
import { Gate } from '../../apps/server/src/people/gate.ts';
import type { Person } from '../../apps/server/src/people/people-file.ts';
import { PhotoShelf } from '../../apps/server/src/photos/photo-shelf.ts';
import { LiveProject } from '../../apps/server/src/project/live-project.ts';
import { folderOf, placeOf } from '../../apps/server/src/project/project-place.ts';
import { FollowingFigures } from '../../apps/server/src/reckoning/following-figures.ts';
import { Reckoner } from '../../apps/server/src/reckoning/reckoner.ts';
import { temporaryFolder } from '../journeys/crownfall-process.ts';

const WRITER = { author: 'test', at: '2026-05-20T12:00:00.000Z' } as const;

/** Puts all layers of a project into an empty store. */
export async function fillStore(store: ProjectStore, input: ProjectInput): Promise<void> {
  const { title, season, units, imagery, settings } = input;
  await store.changeProject({ title, season, units, imagery, settings }, WRITER);
  for (const [layer, raw] of Object.entries(input.layers)) {
    await store.importLayer({ layer: layer as LayerName, shape: raw.shape, features: [raw.features] }, WRITER);
  }
}

/** A GeoPackage file with the project of a folder in it. */
export async function packedProject(folder: string): Promise<string> {
  const path = join(temporaryFolder(), 'town.gpkg');
  const store = await createProjectStore(path);
  await fillStore(store, await readProject(folder));
  await store.close();
  return path;
}

export interface Running {
  readonly url: string;
  readonly store: ProjectStore | null;
  /** What was logged: one object a line. */
  readonly log: Readonly<Record<string, unknown>>[];
  /** Faults alone: there should be none. */
  readonly faults: Readonly<Record<string, unknown>>[];
  readonly photosDir: string;
  close(): Promise<void>;
}

export interface RunOptions {
  /** People with their token hashes: then the server wants tokens. */
  readonly people?: readonly Person[];
  /** The address people use, where a proxy on this machine stands before the server. */
  readonly publicUrl?: string;
}

/** Serves a folder, a .gpkg file or a database. */
export async function runServer(project: string, { people, publicUrl }: RunOptions = {}): Promise<Running> {
  const place = placeOf(project);
  const opened =
    place.kind === 'folder'
      ? null
      : await (place.kind === 'file' ? openProjectStore(place.path) : openPostgisStore(place.url));
  const store = opened?.store ?? null;
  const reckoner = new Reckoner(place);
  const reckoning = await reckoner.reckon();
  if ('stopped' in reckoning) throw new Error(`the project stops: ${JSON.stringify(reckoning.stopped).slice(0, 500)}`);
  let tell = (): void => {};
  const figures = new FollowingFigures(openFigures(reckoning.figures), reckoner, () => tell());
  const live = new LiveProject(figures, store);
  const log: Record<string, unknown>[] = [];
  const faults: Record<string, unknown>[] = [];
  const folder = temporaryFolder();
  const viewerDir = join(folder, 'viewer');
  const photosDir = join(folder, 'photos');
  mkdirSync(viewerDir);
  const app = await buildApp({
    live,
    folder: await folderOf(place),
    viewerDir,
    host: '127.0.0.1',
    gate: people === undefined ? null : new Gate(() => people),
    localName: 'local',
    photos: new PhotoShelf(photosDir),
    tls: null,
    publicUrl: publicUrl ?? null,
    proxies: publicUrl === undefined ? [] : ['127.0.0.1', '::1'],
    log: (line) => log.push(line),
    faults: (line) => faults.push(line),
  });
  tell = app.streams.figures;
  await live.follow();
  const url = await app.server.listen({ port: 0, host: '127.0.0.1' });
  const close = async (): Promise<void> => {
    app.streams.end();
    await stopGently(app.server);
    await live.close();
  };
  return { url, store, log, faults, photosDir, close };
}

export interface Answer {
  readonly status: number;
  readonly headers: Headers;
  // biome-ignore lint/suspicious/noExplicitAny: tests look into answers of every shape.
  readonly body: any;
}

/** A JSON request and its answer. */
export async function call(
  url: string,
  method: string,
  body?: unknown,
  headers: Readonly<Record<string, string>> = {},
): Promise<Answer> {
  const json = body === undefined ? {} : { body: JSON.stringify(body) };
  const type: Record<string, string> = body === undefined ? {} : { 'content-type': 'application/json' };
  const response = await fetch(url, { method, ...json, headers: { ...type, ...headers } });
  const text = await response.text();
  const isJson = /json/.test(response.headers.get('content-type') ?? '');
  return { status: response.status, headers: response.headers, body: isJson && text !== '' ? JSON.parse(text) : text };
}

/** Asks until the answer satisfies, or gives up. */
export async function until<T>(ask: () => Promise<T>, satisfies: (answer: T) => boolean, seconds = 60): Promise<T> {
  for (const end = Date.now() + seconds * 1000; ; ) {
    const answer = await ask();
    if (satisfies(answer)) return answer;
    if (Date.now() > end) throw new Error(`not within ${seconds} s; last: ${JSON.stringify(answer).slice(0, 300)}`);
    await new Promise((go) => setTimeout(go, 50));
  }
}
