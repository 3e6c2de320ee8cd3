/** Drawing and choosing crowns: the sketch changes, the figures follow. */

import { newId } from '../edits/new-id.ts';
import { newRating, type RatingDraft } from '../outline/rating-draft.ts';
import {
  closedUp,
  newSketch,
  recordOf,
  type Shape,
  type Sketch,
  shapeOf,
  sketchOf,
  type Tool,
} from '../outline/sketch.ts';
import { wordsOf } from '../state/derived-state.ts';
import { makeEdit } from './editing.ts';
import { middleOf } from './middle-of.ts';
import type { Session } from './session.ts';

export function changeSketch(session: Session, sketch: Sketch | null): void {
  session.store.change({ sketch });
  saveDraft(session);
  void previewSketch(session);
}

/** Chooses a tree: its record, and a rating to fill in. Null chooses none. */
export async function chooseTree(session: Session, treeId: string | null): Promise<void> {
  const { store } = session;
  const begun = store.get().ratingDraft;
  store.change({ treeId, tree: null, ...(begun?.treeId === treeId ? {} : { ratingDraft: null }) });
  if (treeId === null) return;
  const feature = treeFeature(session, treeId);
  const blockId = feature?.properties?.block_id;
  store.change({ ...(typeof blockId === 'string' && { blockId }) });
  if (store.get().editing.can !== 'yes') return;
  const tree = await session.reckoner.ask('tree', treeId);
  if (store.get().treeId !== treeId) return;
  store.change(({ ratingDraft }) => ({ tree, ratingDraft: ratingDraft ?? freshRating(session, treeId, begun?.rater) }));
}

/** Opens a block and shows it whole; null closes it. */
export function chooseBlock({ store, map }: Session, blockId: string | null): void {
  store.change({ blockId, treeId: null, tree: null, ratingDraft: null });
  if (blockId !== null) map?.fitBlock(blockId);
}

export function treeFeature({ store }: Session, treeId: string): GeoJSON.Feature | undefined {
  return store.get().layers?.trees.features.find((feature) => feature.properties?.tree_id === treeId);
}

/** Dated the day the figures speak of, so that it counts; today when the project does not fix one. */
export function freshRating({ store }: Session, treeId: string, rater = lastRater() ?? ''): RatingDraft {
  const fixed = store.get().project?.run.settings.as_of;
  return newRating(treeId, fixed ?? new Date().toISOString().slice(0, 10), rater);
}

const RATER = 'crownfall-rater';

function lastRater(): string | null {
  try {
    return localStorage.getItem(RATER);
  } catch {
    return null;
  }
}

export function rememberRater(rater: string): void {
  try {
    localStorage.setItem(RATER, rater);
  } catch {
    // Then it is typed again next time.
  }
}

/** A street tree's crown is then about a hand wide on the screen. */
const DRAWING_ZOOM = 21;

export function startDrawing(session: Session, tool: Tool): void {
  changeSketch(session, newSketch(freeTreeId(session), tool, lastDrawn(session)));
  session.map?.focus();
}

export async function startEditing(session: Session): Promise<void> {
  const { tree } = session.store.get();
  if (!tree) return;
  changeSketch(session, sketchOf(tree.treeId, tree.crown));
  const at = middleOf(treeFeature(session, tree.treeId));
  if (at) session.map?.flyTo(at, DRAWING_ZOOM);
  session.map?.focus();
}

/** A paced crown as an outline by vertices: the outline it is reckoned with. */
export function outlineFromFigures(session: Session): void {
  const { sketch } = session.store.get();
  const geometry = sketch && treeFeature(session, sketch.treeId)?.geometry;
  if (!sketch || geometry?.type !== 'Polygon') return;
  const { vertices } = sketchOf(sketch.treeId, { geometry, properties: {} });
  const shape = { ...shapeOf(sketch), tool: 'polygon' as const, vertices, others: [], closed: true };
  changeSketch(session, { ...sketch, ...shape, past: [...sketch.past, shapeOf(sketch)], future: [] });
}

/** Another crown of the sizes drawn last, to be placed. */
export function copyLast(session: Session): void {
  const last = lastDrawn(session);
  if (last.tool) startDrawing(session, last.tool === 'polygon' ? 'spread' : last.tool);
}

export async function cancelDrawing(session: Session): Promise<void> {
  changeSketch(session, null);
  session.store.change({ preview: null });
  if (session.store.get().editing.can === 'yes') await session.reckoner.ask('endPreview', null);
}

/** Makes the sketch an edit and chooses its tree. */
export async function finishDrawing(session: Session): Promise<void> {
  const { store } = session;
  const sketch = store.get().sketch;
  const after = sketch && recordOf(closedUp(sketch));
  if (!sketch || !after) return store.change({ notice: wordsOf(store.get()).outline.notACrown });
  const dated = { ...after, properties: { ...after.properties, outlined_on: new Date().toISOString().slice(0, 10) } };
  changeSketch(session, null);
  store.change({ preview: null });
  await makeEdit(session, { kind: 'crown', treeId: sketch.treeId, before: sketch.before, after: dated });
  store.change({ notice: wordsOf(store.get()).outline.saved(sketch.treeId) });
  await chooseTree(session, sketch.treeId);
}

export async function removeTree(session: Session): Promise<void> {
  const { tree } = session.store.get();
  if (!tree) return;
  await chooseTree(session, null);
  await makeEdit(session, { kind: 'crown', treeId: tree.treeId, before: tree.crown, after: null });
  session.store.change({ notice: wordsOf(session.store.get()).outline.removed(tree.treeId) });
}

let asking = false;
let changedSince = false;

/** Asks for figures of the newest shape only: shapes that were passed over while an answer was under way are not asked for. */
async function previewSketch(session: Session): Promise<void> {
  if (asking) {
    changedSince = true;
    return;
  }
  asking = true;
  do {
    changedSince = false;
    const { sketch, editing } = session.store.get();
    const record = sketch && recordOf(sketch);
    if (!sketch || !record || editing.can !== 'yes') {
      session.store.change({ preview: null });
      continue;
    }
    const preview = await session.reckoner.ask('preview', { treeId: sketch.treeId, record }).catch(() => null);
    if (session.store.get().sketch?.treeId === sketch.treeId) session.store.change({ preview });
  } while (changedSince);
  asking = false;
}

let saving: ReturnType<typeof setTimeout> | undefined;
/** A crash may cost this much. */
const DRAFT_DELAY_MS = 150;

/** Keeps sketch and rating on disk, soon but not at every move. */
export function saveDraft(session: Session): void {
  clearTimeout(saving);
  saving = setTimeout(() => {
    const { sketch, ratingDraft, planSettings } = session.store.get();
    void session.drafts?.save({ sketch, ratingDraft, planSettings }).catch(() => undefined);
  }, DRAFT_DELAY_MS);
}

/** Sizes and host of the crown drawn last. */
function lastDrawn({ store }: Session): Partial<Shape & { host: string }> {
  const { entries, done } = store.get().history;
  const last = entries.slice(0, done).findLast(({ edit }) => edit.kind === 'crown' && edit.after !== null)?.edit;
  if (last?.kind !== 'crown' || !last.after) return {};
  const { tool, spreadM, diametersM, bearingDeg, radiiM, host } = sketchOf(last.treeId, last.after);
  return { tool, spreadM, diametersM, bearingDeg, radiiM, host };
}

/** N1, N2, …: the first that no tree has or had. In a shared project with letters of chance, for others draw too. */
export function freeTreeId({ store }: Session): string {
  const { layers, history, sharing } = store.get();
  const tail = sharing ? `-${newId().slice(0, 4)}` : '';
  const taken = new Set<unknown>(layers?.trees.features.map((feature) => feature.properties?.tree_id));
  for (const { edit } of history.entries) if (edit.kind === 'crown') taken.add(edit.treeId);
  let number = 1;
  while (taken.has(`N${number}`)) number++;
  return `N${number}${tail}`;
}
