/** Rating trees one after another in walking order. */
import { missingFrom, type RatingDraft, ratingRecord } from '../outline/rating-draft.ts';
import { walkingOrder } from '../outline/walking-order.ts';
import { rankedBlocks, wordsOf } from '../state/derived-state.ts';
import { chooseTree, freshRating, rememberRater, saveDraft, treeFeature } from './drawing.ts';
import { makeEdit } from './editing.ts';
import { middleOf } from './middle-of.ts';
import type { Session } from './session.ts';

export function changeRating(session: Session, part: Partial<RatingDraft>): void {
  session.store.change(({ ratingDraft }) => ({ ratingDraft: ratingDraft && { ...ratingDraft, ...part } }));
  saveDraft(session);
}

/** Saves when everything needed is said, else says what is missing; then goes on to the next unrated tree. */
export async function saveRating(session: Session): Promise<void> {
  const { store } = session;
  const draft = store.get().ratingDraft;
  if (!draft) return;
  const words = wordsOf(store.get());
  const missing = missingFrom(draft);
  if (missing.length > 0) return store.change({ notice: missing.map((each) => words.rating.missing[each]).join(' ') });
  rememberRater(draft.rater.trim());
  const edit = makeEdit(session, { kind: 'rating', treeId: draft.treeId, after: ratingRecord(draft) });
  store.change({ ratingDraft: freshRating(session, draft.treeId, draft.rater.trim()) });
  saveDraft(session);
  await edit;
  store.change({ notice: words.rating.saved(draft.treeId) });
  await goToUnrated(session, 1);
}

/** Chooses the next (1) or last (−1) tree without a rating, in walking order, block by block as they rank. */
export async function goToUnrated(session: Session, step: 1 | -1): Promise<void> {
  const { store } = session;
  const { treeId } = store.get();
  const stops = walk(session);
  const at = stops.findIndex((each) => each.treeId === treeId);
  for (let i = 1; i <= stops.length; i++) {
    const next = stops[((((at < 0 && step < 0 ? 0 : at) + step * i) % stops.length) + stops.length) % stops.length];
    if (next.rated || next.treeId === treeId) continue;
    await chooseTree(session, next.treeId);
    return showTree(session, next.treeId);
  }
  store.change({ notice: wordsOf(store.get()).rating.allRated });
}

function showTree(session: Session, treeId: string): void {
  const at = middleOf(treeFeature(session, treeId));
  if (at) session.map?.flyTo(at, 20);
}

interface Stop {
  readonly treeId: string;
  readonly rated: boolean;
}

/** All trees in the order of a walk: the chosen block first, then blocks by rank. */
function walk({ store }: Session): readonly Stop[] {
  const state = store.get();
  const byBlock = new Map<string, GeoJSON.Feature[]>();
  for (const feature of state.layers?.trees.features ?? []) {
    const block = String(feature.properties?.block_id ?? '');
    byBlock.set(block, [...(byBlock.get(block) ?? []), feature]);
  }
  const ranked = rankedBlocks(state).map(({ blockId }) => blockId);
  const start = Math.max(0, ranked.indexOf(state.blockId ?? ''));
  const blocks = [...ranked.slice(start), ...ranked.slice(0, start), ''];
  return blocks.flatMap((block) => stopsOf(byBlock.get(block) ?? []));
}

function stopsOf(trees: readonly GeoJSON.Feature[]): Stop[] {
  const placedTrees = trees.flatMap((tree) => {
    const at = middleOf(tree);
    return at ? [{ tree, at }] : [];
  });
  return walkingOrder(placedTrees.map(({ at }) => at)).map((i) => {
    const { properties } = placedTrees[i].tree;
    return { treeId: String(properties?.tree_id), rated: properties?.severity_from === 'rating' };
  });
}
