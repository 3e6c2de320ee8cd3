import { basename } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { LAYER_NAMES, type ProjectInput, type RawFeature, type Visit } from '@crownfall/survey';
import type { ProjectStore, Writer } from '../../store/project-store.ts';
import { type History, renumbered, restoreHistory } from './history-file.ts';
import { createProjectStore, openProjectStore } from './open-project-store.ts';
import { wholeFile } from './whole-file.ts';

/**
 * Writes a project into a new GeoPackage file: whole, or not at all; with the history that belongs
 * to it, when there is one, in place of an entry for its coming in. The same project and writer give the same bytes.
 * Throws a `RangeError` when there is a file already (its journal would be lost), an `Outage` when the disk fails.
 */
export async function writeStoreProject(
  path: string,
  input: Omit<ProjectInput, 'sources' | 'findings'>,
  writer: Writer,
  history: History | null = null,
): Promise<void> {
  await wholeFile(path, async (stage) => {
    const store = await createProjectStore(stage, { at: writer.at, bulk: true });
    await filled(store, history === null ? input : renumbered(input, history), writer).finally(() => store.close());
    if (history !== null) await withHistory(stage, input, { writer, history });
    await withVisits(stage, input.visits ?? [], writer);
  });
}

async function filled(
  store: ProjectStore,
  input: Omit<ProjectInput, 'sources' | 'findings'>,
  writer: Writer,
): Promise<void> {
  const { title, season, units, imagery, settings } = input;
  await store.changeProject({ title, season, units, imagery, settings }, writer);
  for (const name of LAYER_NAMES) {
    const layer = input.layers[name];
    if (layer) await store.importLayer({ layer: name, shape: layer.shape, features: portions(layer.features) }, writer);
  }
}

/** The journal of before goes on: what the project file says otherwise by now is one more entry. */
async function withHistory(
  stage: string,
  { title, season, units, imagery, settings }: Omit<ProjectInput, 'sources' | 'findings'>,
  { writer, history }: { readonly writer: Writer; readonly history: History },
): Promise<void> {
  await restoreHistory(stage, history);
  const { store } = await openProjectStore(stage);
  if (store === null) throw new Error(`the file just made cannot be opened: ${basename(stage)}`);
  const facts = { title, season, units, imagery, settings };
  if (!isDeepStrictEqual(await store.project(), facts)) await store.changeProject(facts, writer);
  await store.close();
}

/** Those of the history are known, and stay. */
async function withVisits(stage: string, visits: readonly Visit[], writer: Writer): Promise<void> {
  if (visits.length === 0) return;
  const { store } = await openProjectStore(stage);
  if (store === null) throw new Error(`the file just made cannot be opened: ${basename(stage)}`);
  try {
    const known = new Set((await store.visits()).map(({ visitId }) => visitId));
    const missing = visits.filter(({ visitId }) => !known.has(visitId));
    // Not even an empty step may be counted: the same project gives the same file.
    if (missing.length > 0) await store.addVisits(missing, writer);
  } finally {
    await store.close();
  }
}

const PORTION = 5000;

function* portions(features: readonly RawFeature[]): Generator<readonly RawFeature[]> {
  for (let at = 0; at < features.length; at += PORTION) yield features.slice(at, at + PORTION);
}
