/** Rating trees one after another in walking order. */

import { blockWalk } from '../outline/block-walk.ts';
import { type Missing, missingFrom, type RatingDraft, ratingRecord } from '../outline/rating-draft.ts';
import type { AppState } from '../state/app-state.ts';
import { rankedBlocks, wordsOf } from '../state/derived-state.ts';
import { chooseTree, freshRating, rememberRater, saveDraft, treeFeature } from './drawing.ts';
import { makeEdit } from './editing.ts';
import { rememberFlight } from './flights.ts';
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
  if (missing.length > 0) {
    const say = (each: Missing): string =>
      each === 'date' && draft.suggestion ? words.suggestion.flownMissing : words.rating.missing[each];
    return store.change({ notice: missing.map(say).join(' ') });
  }
  rememberRater(draft.rater.trim());
  rememberFlight(session, draft);
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
  for (const treeId of unratedAhead(session, step)) {
    await chooseTree(session, treeId);
    return showTree(session, treeId);
  }
  store.change({ notice: wordsOf(store.get()).rating.allRated });
}

function showTree(session: Session, treeId: string): void {
  const at = middleOf(treeFeature(session, treeId));
  if (at) session.map?.flyTo(at, 20);
}

/** Trees without a rating, from the chosen tree on and round; a block's walk is worked out when it is reached. */
function* unratedAhead({ store }: Session, step: 1 | -1): Generator<string> {
  const state = store.get();
  const blocks = blocksAhead(state);
  const walks = step === 1 ? blocks : blocks.toReversed();
  const home = Math.max(
    0,
    walks.findIndex(({ trees }) => trees.some((tree) => idOf(tree) === state.treeId)),
  );
  const order = [...walks.slice(home), ...walks.slice(0, home)].filter(({ trees }) => trees.some(isUnrated));
  let passed: readonly GeoJSON.Feature[] = [];
  for (const [k, { trees, outline }] of order.entries()) {
    const walk = blockWalk(trees, outline);
    const ahead = step === 1 ? walk : walk.toReversed();
    const at = k === 0 ? ahead.findIndex((tree) => idOf(tree) === state.treeId) : -1;
    if (k === 0) passed = ahead.slice(0, Math.max(0, at));
    for (const tree of ahead.slice(at + 1)) if (isUnrated(tree)) yield idOf(tree);
  }
  for (const tree of passed) if (isUnrated(tree)) yield idOf(tree);
}

interface BlockTrees {
  readonly trees: readonly GeoJSON.Feature[];
  readonly outline: GeoJSON.Feature | undefined;
}

/** The chosen block first, then blocks by rank, at last the trees of no block. */
function blocksAhead(state: AppState): readonly BlockTrees[] {
  const byBlock = new Map<string, GeoJSON.Feature[]>();
  for (const feature of state.layers?.trees.features ?? []) {
    const block = String(feature.properties?.block_id ?? '');
    byBlock.set(block, [...(byBlock.get(block) ?? []), feature]);
  }
  const outlines = new Map(state.layers?.blocks.features.map((each) => [String(each.properties?.block_id), each]));
  const ranked = rankedBlocks(state).map(({ blockId }) => blockId);
  const start = Math.max(0, ranked.indexOf(state.blockId ?? ''));
  const ids = [...ranked.slice(start), ...ranked.slice(0, start), ''];
  return ids.map((id) => ({ trees: byBlock.get(id) ?? [], outline: outlines.get(id) }));
}

function idOf(tree: GeoJSON.Feature): string {
  return String(tree.properties?.tree_id);
}

function isUnrated(tree: GeoJSON.Feature): boolean {
  return tree.properties?.severity_from !== 'rating';
}
