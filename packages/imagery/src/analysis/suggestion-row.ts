/** A browned share suggested from imagery, as a row in the form of ratings: it counts once a person has confirmed it. */
import type { BrownedShare } from './browned-share.ts';
import type { FoliageSeparation } from './foliage-separation.ts';
import type { QualityFlag } from './image-quality.ts';

/** The fields of a rating first, then what the suggestion rests on. Empty text where nothing is known. */
export type SuggestionRow = {
  readonly tree_id: string;
  /** The day the image was flown. */
  readonly rated_on: string;
  readonly rater: 'imagery';
  readonly browned_pct: number;
  /** A picture from above shows colour, not what fell or why. */
  readonly cause: 'unknown';
  readonly evidence: string;
  readonly confidence: 'low';
  readonly note: string;
  /** Left to the person who looks at the crown. */
  readonly confirmed_by: '';
  readonly browned_lo95_pct: number | '';
  readonly browned_hi95_pct: number | '';
  readonly lit_pixels: number;
  readonly shaded_pct: number;
  readonly not_leaf_pct: number;
  readonly image: string;
};

export const SUGGESTION_COLUMNS = [
  'tree_id',
  'rated_on',
  'rater',
  'browned_pct',
  'cause',
  'evidence',
  'confidence',
  'note',
  'confirmed_by',
  'browned_lo95_pct',
  'browned_hi95_pct',
  'lit_pixels',
  'shaded_pct',
  'not_leaf_pct',
  'image',
] as const satisfies readonly (keyof SuggestionRow)[];

export function suggestionRow(
  treeId: string,
  { share, interval, litPixels, makeUp }: BrownedShare & { readonly suggested: true },
  separation: FoliageSeparation,
  facts: { readonly flown: string; readonly image: string; readonly quality: readonly QualityFlag[] },
): SuggestionRow {
  return {
    tree_id: treeId,
    rated_on: facts.flown,
    rater: 'imagery',
    browned_pct: percent(share),
    cause: 'unknown',
    evidence: `${Math.round(litPixels)} lit leaf pixels from above; ${ruleInWords(separation)}`,
    confidence: 'low',
    note: facts.quality.length > 0 ? `image: ${facts.quality.join(', ')}` : '',
    confirmed_by: '',
    browned_lo95_pct: interval === null ? '' : percent(interval.lower),
    browned_hi95_pct: interval === null ? '' : percent(interval.upper),
    lit_pixels: Math.round(litPixels),
    shaded_pct: percent(makeUp.shaded),
    not_leaf_pct: percent(makeUp.notLeaf),
    image: facts.image,
  };
}

/** A share as per cent with one decimal: no picture tells more. */
function percent(share: number): number {
  return Math.round(100 * share * 10) / 10;
}

function ruleInWords({ rule, gate }: FoliageSeparation): string {
  const leaf = `leaves from saturation ${gate.leafSaturation.toFixed(2)}`;
  if (rule.by === 'otsu') return `browned below ${rule.index} ${rule.threshold.toFixed(3)} (Otsu), ${leaf}`;
  const error = (100 * rule.crossValidatedError).toFixed(1);
  const name = rule.by === 'logistic' ? 'logistic regression' : 'linear discriminant';
  return `${name} on marked crowns, wrong on ${error} % of the pixels of crowns left out, ${leaf}`;
}
