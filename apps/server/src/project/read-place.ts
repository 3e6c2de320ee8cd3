/** Reads a project wherever it lies. */
import { readProject } from '@crownfall/exchange/node';
import type { ProjectInput } from '@crownfall/survey';
import { inputOfStore, readRecords } from './input-of-store.ts';
import { openStore } from './open-store.ts';
import type { ProjectPlace } from './project-place.ts';

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
