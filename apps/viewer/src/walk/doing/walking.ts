/** What a person does under the trees. Every tap is written to the device at once. */
import { newId } from '../../edits/new-id.ts';
import { fieldPhoto } from '../stop/field-photo.ts';
import { isBloomSeen, isRated, type NewTree, newStop, type Stop, type TakenPhoto } from '../stop/stop.ts';
import { visitOfStop } from '../stop/visit-of-stop.ts';
import type { QueuedVisit } from '../sync/queue.ts';
import { readQueue } from './reading-queue.ts';
import { sendSoon, TAKE_BACK_MS } from './sending.ts';
import { blockTrees, goBack, goOnTo, goTo, type Walk, wordsOf } from './walk-session.ts';
import { packOf, seenTrees } from './walk-state.ts';

/** Cautions come before the first tree of a block, every day. */
export async function startBlock(walk: Walk, blockId: string): Promise<void> {
  const { store, database } = walk;
  store.change({ blockId, treeId: null, stop: null, notice: '', saved: null });
  const trees = blockTrees(store.get());
  const seen = seenTrees(store.get());
  const first = trees.find(({ treeId }) => !seen.has(treeId)) ?? trees[0];
  if (first) chooseTree(walk, first.treeId);
  goTo(walk, (await database.fact<string>(`cautions:${blockId}`)) === localDay() ? 'tree' : 'cautions');
}

export async function cautionsRead(walk: Walk): Promise<void> {
  const { blockId } = walk.store.get();
  goOnTo(walk, 'tree');
  await walk.database.note(`cautions:${blockId}`, localDay());
}

/** Takes up what was begun at this tree, if anything was. */
export function chooseTree({ store }: Walk, treeId: string): void {
  const { begun } = store.get();
  store.change({ treeId, stop: begun.find((stop) => stop.treeId === treeId) ?? null });
}

/** The tree before or after the chosen one; none beyond the ends. */
export function stepTree(walk: Walk, step: 1 | -1): void {
  const { store } = walk;
  const trees = blockTrees(store.get());
  const at = trees.findIndex(({ treeId }) => treeId === store.get().treeId);
  const next = trees[at + step];
  if (next) chooseTree(walk, next.treeId);
}

/** Changes what is noted at the chosen tree; begins its stop if need be. Resolves when it is on the device. */
export async function changeStop(walk: Walk, part: Partial<Stop>): Promise<void> {
  const { store, database } = walk;
  const { stop, begun, blockId, treeId, project } = store.get();
  if (blockId === null || treeId === null) return;
  const now = new Date();
  const day = localDay(now);
  const base = stop ?? newStop({ stopId: uuid(), project, blockId, treeId, startedAt: now.toISOString(), day });
  const changed = { ...base, ...part };
  const others = begun.filter(({ stopId }) => stopId !== changed.stopId);
  store.change({ stop: changed, begun: [...others, changed], saved: null });
  await database.stops.put(changed).catch((error: Error) => store.change({ notice: error.message }));
}

export const isBegun = (stop: Stop | null): boolean =>
  stop !== null &&
  (isRated(stop) ||
    isBloomSeen(stop) ||
    stop.quadrats.length > 0 ||
    stop.photos.length > 0 ||
    stop.notFound ||
    stop.hostSeen !== null ||
    stop.newTree !== null ||
    stop.note.trim() !== '');

/** Seals the visit of the chosen tree and goes on to the next one. Nothing noted means: inspected. */
export async function saveStop(walk: Walk): Promise<void> {
  const { store } = walk;
  if (!store.get().stop) await changeStop(walk, {});
  const { stop } = store.get();
  if (!stop) return;
  await seal(walk, stop);
  const { treeId } = stop;
  store.change({ stop: null, saved: stop, notice: wordsOf(store.get()).tree.saved(treeId) });
  stepTree(walk, 1);
  sendSoon(walk, TAKE_BACK_MS);
}

/** Saves everything that was begun at any tree. */
export async function saveBegun(walk: Walk): Promise<void> {
  for (const stop of walk.store.get().begun) await seal(walk, stop);
  walk.store.change({ stop: null });
  sendSoon(walk, 0);
}

/** The visit that was saved last is open again, unless it may have left. */
export async function takeBack(walk: Walk): Promise<void> {
  const { store, database } = walk;
  const { saved } = store.get();
  if (!saved) return;
  const isBack = await database.reopen(saved.stopId, saved);
  await readQueue(walk);
  store.change({ saved: null, notice: '' });
  if (isBack) chooseTree(walk, saved.treeId);
}

export async function addPhoto(walk: Walk, file: Blob): Promise<void> {
  const { store, database } = walk;
  // Begun first, so that the photo has a visit to belong to.
  await changeStop(walk, {});
  const { stop, project, keepPosition, position } = store.get();
  if (!stop) return;
  const { photo, sha256 } = await fieldPhoto(file);
  const photoId = newId();
  const takenAt = new Date().toISOString();
  await database.photos.put({
    photoId,
    project,
    visitId: stop.stopId,
    takenAt,
    photo,
    state: 'waiting',
    why: '',
  });
  const taken: TakenPhoto = { photoId, sha256, at: keepPosition && position ? position.at : null };
  const now = store.get().begun.find(({ stopId }) => stopId === stop.stopId) ?? stop;
  await changeStop(walk, { photos: [...now.photos, taken] });
  await readQueue(walk);
}

export async function removePhoto(walk: Walk, photoId: string): Promise<void> {
  const { stop } = walk.store.get();
  if (!stop) return;
  await changeStop(walk, { photos: stop.photos.filter((each) => each.photoId !== photoId) });
  await walk.database.photos.delete(photoId);
  await readQueue(walk);
}

/** A tree that no record knows: it gets a name of its own, and a stop to be rated at. */
export async function addTree(walk: Walk, newTree: NewTree): Promise<void> {
  const treeId = `NEW-${newId().slice(0, 8)}`;
  chooseTree(walk, treeId);
  await changeStop(walk, { newTree });
  goBack();
}

/** A visit that the server holds with other content: sent under a name of its own, or left. */
export async function decideDiffering(walk: Walk, queued: QueuedVisit, decision: 'both' | 'leave'): Promise<void> {
  const { database } = walk;
  const { visitId, visit } = queued;
  await database.transaction('rw', database.visits, database.photos, async () => {
    if (decision === 'leave') return void (await database.visits.update(visitId, { state: 'sent' }));
    const own = uuid();
    await database.visits.delete(visitId);
    await database.photos.where({ visitId }).modify({ visitId: own });
    await database.visits.put({
      ...queued,
      visitId: own,
      visit: { ...visit, visitId: own },
      state: 'waiting',
      tried: false,
      theirs: null,
    });
  });
  await readQueue(walk);
  sendSoon(walk, 0);
}

export async function noteOtherSeen({ store, database }: Walk, visitId: string): Promise<void> {
  const { seenOthers, project } = store.get();
  const seen = new Set([...seenOthers, visitId]);
  store.change({ seenOthers: seen });
  await database.note(`seen-others:${project}`, [...seen]);
}

/** The block after the chosen one in the day's order; null after the last. */
export function nextBlock(walk: Walk): { readonly blockId: string; readonly name: string } | null {
  const state = walk.store.get();
  const pack = packOf(state);
  const next = pack && state.packs[state.packs.indexOf(pack) + 1];
  return next ? { blockId: next.blockId, name: next.figures.name ?? next.blockId } : null;
}

async function seal(walk: Walk, stop: Stop): Promise<void> {
  const { project, rater } = walk.store.get();
  const visit = visitOfStop(stop, rater === '' ? 'field' : rater);
  await walk.database.seal(stop.stopId, {
    visitId: stop.stopId,
    project,
    visit,
    sealedAt: new Date().toISOString(),
    state: 'waiting',
    tried: false,
    why: '',
    theirs: null,
  });
  await readQueue(walk);
}

/** The day where the person stands, YYYY-MM-DD. */
function localDay(now = new Date()): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** A version 4 UUID (RFC 9562), also where the browser makes none itself. */
function uuid(): string {
  const hex = newId();
  const variant = '89ab'[Number.parseInt(hex[16], 16) % 4];
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-${variant}${hex.slice(17, 20)}-${hex.slice(20)}`;
}
