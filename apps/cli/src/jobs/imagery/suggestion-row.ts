/** A suggestion from imagery as a row in the form of ratings. */
import { rounded } from '@crownfall/exchange';
import type { BrownedShare, FoliageSeparation, QualityFlag } from '@crownfall/imagery';

/** The fields of a rating first, then what the suggestion rests on; those pass through as extra fields. */
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
] as const;

/** Confidence is always low and the cause unknown: a picture from above shows colour, not what fell or why. */
export function suggestionRow(
  treeId: string,
  { share, interval, litPixels, makeUp }: BrownedShare & { readonly suggested: true },
  separation: FoliageSeparation,
  facts: { readonly flown: string; readonly image: string; readonly quality: readonly QualityFlag[] },
): Readonly<Record<(typeof SUGGESTION_COLUMNS)[number], unknown>> {
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
function percent(share: number): number | null {
  return rounded(100 * share, 1);
}

function ruleInWords({ rule, gate }: FoliageSeparation): string {
  const leaf = `leaves from saturation ${gate.leafSaturation.toFixed(2)}`;
  if (rule.by === 'otsu') return `browned below ${rule.index} ${rule.threshold.toFixed(3)} (Otsu), ${leaf}`;
  const error = (100 * rule.crossValidatedError).toFixed(1);
  const name = rule.by === 'logistic' ? 'logistic regression' : 'linear discriminant';
  return `${name} on marked crowns, wrong on ${error} % of the pixels of crowns left out, ${leaf}`;
}
