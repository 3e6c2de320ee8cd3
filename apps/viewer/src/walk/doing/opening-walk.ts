/** Opens the walk: first what is on the device, then what the network offers. */
import type { Visit } from '@crownfall/exchange';
import type { Light } from '../look/walk-colours.ts';
import { packSource } from '../pack/pack-source.ts';
import { readQueue } from './reading-queue.ts';
import { sendSoon } from './sending.ts';
import type { Walk } from './walk-session.ts';
import { startBlock } from './walking.ts';

/** Reads the device, and shows at once what it holds; asks the network in its own time. */
export async function openWalk(walk: Walk): Promise<void> {
  const { store, database } = walk;
  const [light, rater, keepPosition, project] = await Promise.all([
    database.fact<Light>('light'),
    database.fact<string>('rater'),
    database.fact<boolean>('keep-position'),
    database.fact<string>('project'),
  ]);
  store.change({ light: light ?? 'sun', rater: rater ?? '', keepPosition: keepPosition ?? false });
  if (project !== undefined) await takeUpProject(walk, project);
  const wanted = new URLSearchParams(location.hash.slice(1)).get('block');
  if (wanted !== null && store.get().packs.some(({ blockId }) => blockId === wanted)) await startBlock(walk, wanted);
  await lookForSource(walk, wanted);
  sendSoon(walk, 0);
}

/** Asks whether there is a network with a project behind it. */
async function lookForSource(walk: Walk, wanted: string | null): Promise<void> {
  const { store, database } = walk;
  const source = await packSource(new URLSearchParams(location.search).get('open')).catch(() => null);
  store.change({ source: source ?? 'none' });
  if (!source) return;
  if (source.key !== store.get().project) {
    await database.note('project', source.key);
    await takeUpProject(walk, source.key);
  }
  await database.note(`takes-visits:${source.key}`, source.takesVisits);
  const isThere = wanted !== null && source.project.blocks.some(({ blockId }) => blockId === wanted);
  if (isThere && !store.get().packs.some(({ blockId }) => blockId === wanted))
    store.change({ chosen: new Set([wanted]) });
}

async function takeUpProject(walk: Walk, project: string): Promise<void> {
  const { store, database } = walk;
  const [packs, seen, others] = await Promise.all([
    database.packs.where('[project+blockId]').between([project, ''], [project, '\uffff']).toArray(),
    database.fact<readonly string[]>(`seen-others:${project}`),
    database.fact<readonly Visit[]>(`others:${project}`),
  ]);
  const byDay = (await database.fact<readonly string[]>(`day:${project}`)) ?? [];
  const place = (blockId: string): number => (byDay.indexOf(blockId) + byDay.length + 1) % (byDay.length + 1);
  const ordered = packs.toSorted((a, b) => place(a.blockId) - place(b.blockId));
  store.change({ project, packs: ordered, seenOthers: new Set(seen ?? []), others: others ?? [] });
  await readQueue(walk);
}
