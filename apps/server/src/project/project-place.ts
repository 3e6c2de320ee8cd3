/** Where a project lies: a folder that is only read, or a store that many write to. */
import { readProject } from '@crownfall/exchange/node';
import type { ProjectInput } from '@crownfall/survey';
import { inputOfStore, readRecords } from './input-of-store.ts';
import { openStore } from './open-store.ts';

/** Plain data: it travels to the reckoning thread. */
export type ProjectPlace =
  | { readonly kind: 'folder'; readonly path: string }
  | { readonly kind: 'file'; readonly path: string }
  | { readonly kind: 'database'; readonly url: string };

/** What the words of a command name: a database's address, a file `.gpkg`, else a folder. */
export function placeOf(project: string): ProjectPlace {
  if (/^postgres(ql)?:\/\//i.test(project)) return { kind: 'database', url: project };
  return /\.gpkg$/i.test(project) ? { kind: 'file', path: project } : { kind: 'folder', path: project };
}

/** All records of the project, with the number of the last edit among them. Throws an outage. */
export async function readPlace(place: ProjectPlace): Promise<{ input: ProjectInput; journal: number }> {
  if (place.kind === 'folder') return { input: await readProject(place.path), journal: 0 };
  const { store, findings } = await openStore(place, { readOnly: true });
  if (store === null) return { input: { ...NOTHING, findings }, journal: 0 };
  try {
    const read = place.kind === 'file' ? () => readProject(place.path) : () => readRecords(store);
    return await inputOfStore(store, read);
  } finally {
    await store.close();
  }
}

const NOTHING: ProjectInput = {
  title: '',
  season: 0,
  units: 'metric',
  layers: {},
  imagery: [],
  settings: {},
  sources: [],
  findings: [],
};
