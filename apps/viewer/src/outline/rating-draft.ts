/** A rating while it is made, and the keys that make it: digits are the browned share, letters the rest. */
import type { SuggestionRow } from '@crownfall/imagery';
import { CAUSES, type Cause, CONFIDENCES, type Confidence, GALL_LOADS, type GallLoad } from '@crownfall/survey';
import type { RatingRecord } from '../edits/edit.ts';

export interface RatingDraft {
  readonly treeId: string;
  readonly brownedPct: number | null;
  readonly defoliatedPct: number | null;
  readonly gallLoad: GallLoad | null;
  readonly cause: Cause | null;
  readonly confidence: Confidence | null;
  readonly evidence: string;
  readonly ratedOn: string;
  readonly rater: string;
  /** Which share digits go to, and the digits typed so far. */
  readonly digitsTo: 'browned' | 'defoliated';
  readonly digits: string;
  /** What the picture suggested and the form was filled with; a person's rating in all else. */
  readonly suggestion?: PictureSuggestion | null;
}

/** What is recorded beside the rating of a suggestion that a person stands by. */
export interface PictureSuggestion {
  /** What it rests on: no evidence of a cause. */
  readonly evidence: string;
  readonly fields: Readonly<Record<string, string | number>>;
}

export const newRating = (treeId: string, ratedOn: string, rater: string): RatingDraft => ({
  treeId,
  brownedPct: null,
  defoliatedPct: null,
  gallLoad: null,
  cause: null,
  confidence: null,
  evidence: '',
  ratedOn,
  rater,
  digitsTo: 'browned',
  digits: '',
});

/**
 * A digit. The first means tens of per cent, a second makes it exact, a third can make it 100: `4` → 40, `4 5` → 45,
 * `1 0 0` → 100. `fresh`: the digits before were a while ago and are done with.
 */
export function withDigit(draft: RatingDraft, digit: string, fresh: boolean): RatingDraft {
  const typed = (fresh ? '' : draft.digits) + digit;
  const digits = typed.length > 3 || Number(typed) > 100 ? digit : typed;
  const pct = digits.length === 1 ? Number(digits) * 10 : Number(digits);
  return { ...draft, digits, ...(draft.digitsTo === 'browned' ? { brownedPct: pct } : { defoliatedPct: pct }) };
}

/** The next of a list of choices; after the last comes the first. */
function nextChoice<Choice>(choices: readonly Choice[], present: Choice | null): Choice {
  return choices[present === null ? 0 : (choices.indexOf(present) + 1) % choices.length];
}

/** The letter keys of the rating, the same in every language; their meaning stands beside each field. */
export function withLetter(draft: RatingDraft, letter: string): RatingDraft | null {
  switch (letter) {
    case 'b':
      return { ...draft, digitsTo: 'browned', digits: '' };
    case 'd':
      return { ...draft, digitsTo: 'defoliated', digits: '' };
    case 'g':
      return { ...draft, gallLoad: nextChoice(GALL_LOADS, draft.gallLoad) };
    case 'c':
      return { ...draft, cause: nextChoice(CAUSES, draft.cause) };
    case 's':
      return { ...draft, confidence: nextChoice(CONFIDENCES, draft.confidence) };
    default:
      return null;
  }
}

export type Missing = 'share' | 'cause' | 'evidence' | 'rater' | 'date';

/**
 * What must still be said. A cause may be blamed on a crown only on evidence: galls seen for frass, or words. Brown leaves
 * alone are none.
 */
export function missingFrom(draft: RatingDraft): readonly Missing[] {
  const blames = draft.cause !== null && draft.cause !== 'none' && draft.cause !== 'unknown';
  const galls = draft.cause === 'frass' && draft.gallLoad !== null && draft.gallLoad !== 'none';
  return [
    ...(draft.brownedPct === null && draft.defoliatedPct === null ? (['share'] as const) : []),
    ...(draft.cause === null ? (['cause'] as const) : []),
    ...(blames && !galls && draft.evidence.trim() === '' ? (['evidence'] as const) : []),
    ...(draft.rater.trim() === '' ? (['rater'] as const) : []),
    ...(/^\d{4}-\d\d-\d\d$/.test(draft.ratedOn) ? [] : (['date'] as const)),
  ];
}

/** The form filled with what the picture suggests; what the person said of the cause stays. */
export function withSuggestion(
  draft: RatingDraft,
  row: SuggestionRow,
  words: Pick<PictureSuggestion, 'evidence'> & { readonly note: string },
): RatingDraft {
  const { browned_lo95_pct, browned_hi95_pct, lit_pixels, shaded_pct, not_leaf_pct, image } = row;
  const figures = { note: words.note, browned_lo95_pct, browned_hi95_pct, lit_pixels, shaded_pct, not_leaf_pct, image };
  const fields = Object.entries(figures).filter((pair): pair is [string, string | number] => pair[1] !== '');
  return {
    ...draft,
    brownedPct: row.browned_pct,
    cause: draft.cause ?? row.cause,
    confidence: row.confidence,
    ratedOn: row.rated_on,
    digits: '',
    suggestion: { evidence: words.evidence, fields: Object.fromEntries(fields) },
  };
}

/** The row of the ratings table; only what was said is in it. A suggestion is the picture's, and its person stands by it. */
export function ratingRecord(draft: RatingDraft): RatingRecord {
  const { suggestion } = draft;
  const person = draft.rater.trim();
  const evidence = [draft.evidence.trim(), suggestion?.evidence ?? ''].filter((text) => text !== '').join('; ');
  const row: Record<string, string | number | null> = {
    tree_id: draft.treeId,
    rated_on: draft.ratedOn,
    rater: suggestion ? 'imagery' : person,
    browned_pct: draft.brownedPct,
    defoliated_pct: draft.defoliatedPct,
    gall_load: draft.gallLoad,
    cause: draft.cause,
    evidence: evidence || null,
    confidence: draft.confidence,
    ...(suggestion && { ...suggestion.fields, confirmed_by: person }),
  };
  return Object.fromEntries(Object.entries(row).filter((pair): pair is [string, string | number] => pair[1] !== null));
}
