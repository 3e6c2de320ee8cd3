/** The browned share that the picture suggests for the tree at hand. It fills the form; only a person makes it a rating. */
import { suggestionRow } from '@crownfall/imagery';
import { ringsOf } from '../outline/crowns-near.ts';
import { withSuggestion } from '../outline/rating-draft.ts';
import { wordsOf } from '../state/derived-state.ts';
import { freshRating, saveDraft, treeFeature } from './drawing.ts';
import { flownOn } from './flights.ts';
import { middleOf } from './middle-of.ts';
import { failureInWords, hasPicture, openPicture, showPicture } from './picture.ts';
import type { Session } from './session.ts';

/** Asks for the share; asked again once it is there, takes it. */
export function askOrTakeShare(session: Session): void {
  const { suggestion, ratingDraft } = session.store.get();
  const isThere = suggestion?.state === 'made' && suggestion.treeId === ratingDraft?.treeId;
  if (isThere && suggestion.found.suggested) takeShare(session);
  else void askShare(session);
}

/** The crown and its neighbours fill the map. */
const CROWN_ZOOM = 20;

async function askShare(session: Session): Promise<void> {
  const { store } = session;
  const treeId = store.get().ratingDraft?.treeId;
  if (treeId === undefined || !hasPicture(store.get())) return;
  const isWanted = (): boolean => store.get().suggestion?.treeId === treeId;
  showPicture(session);
  const at = middleOf(treeFeature(session, treeId));
  if (at) session.map?.flyTo(at, CROWN_ZOOM);
  store.change({ suggestion: { treeId, state: 'looking', share: 0 } });
  try {
    const picture = await openPicture(session);
    const found = await picture.browned(
      ringsOf(treeFeature(session, treeId)?.geometry),
      () => (store.get().layers?.trees.features ?? []).map(({ geometry }) => ringsOf(geometry)),
      (share) => isWanted() && store.change({ suggestion: { treeId, state: 'looking', share } }),
    );
    if (isWanted()) store.change({ suggestion: { treeId, state: 'made', found, image: picture.name } });
  } catch (error) {
    const why = failureInWords(error, store.get().preferences.language);
    if (isWanted()) store.change({ suggestion: { treeId, state: 'failed', why } });
  }
}

/** Fills the form: the share, what it rests on, and the day of the flight if it was told before. */
function takeShare(session: Session): void {
  const { store } = session;
  const { suggestion, ratingDraft } = store.get();
  if (suggestion?.state !== 'made' || !suggestion.found.suggested || !ratingDraft) return;
  const { found, image, treeId } = suggestion;
  const { suggestion: words } = wordsOf(store.get());
  const facts = { flown: flownOn(session, image), image, quality: found.quality };
  const row = suggestionRow(treeId, found, found.separation, facts);
  const { rule, gate } = found.separation;
  const limit = rule.by === 'otsu' ? `${rule.index} ${rule.threshold.toFixed(3)}` : rule.by;
  const evidence = words.evidence(row.lit_pixels, limit, gate.leafSaturation.toFixed(2));
  const note = found.quality.map((flag) => words.flags[flag]).join(' ');
  store.change({ ratingDraft: withSuggestion(ratingDraft, row, { evidence, note }), suggestion: null });
  saveDraft(session);
}

/** The form without what the picture filled in. */
export function leaveShare(session: Session): void {
  const { ratingDraft } = session.store.get();
  if (!ratingDraft) return;
  session.store.change({ ratingDraft: freshRating(session, ratingDraft.treeId, ratingDraft.rater) });
  saveDraft(session);
}
