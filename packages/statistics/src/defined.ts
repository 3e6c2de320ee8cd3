/** A result, or the reason why there is none: the room's answer to NaN. */

/** Every reason this room may give for an undefined result, with the words that explain it. */
const REASONS = {
  'no-observations': 'there are no observations',
  'too-few-observations': 'there are fewer observations than the method needs',
  'one-rater': 'only one rater judged, so there is nothing to agree with',
  'one-subject': 'only one subject was judged by more than one rater',
  'no-variation': 'all values are equal, so there is nothing to compare',
  'no-variance': 'the total variance is estimated as zero or less, so no share of it can be told',
  'no-weight': 'all weights are zero',
  'no-links': 'no unit has a neighbour',
  'all-linked': 'the unit neighbours every other unit, so nothing is left to compare it with',
  'zero-control-before': 'the untreated check counted nothing before treatment',
  'zero-control-after': 'the untreated check counted nothing after treatment',
  'zero-treated-before': 'the treated group counted nothing before treatment',
  'control-all-dead': 'nothing in the untreated check survived, so no survivors could show an effect',
  'opposed-directions': 'the directions cancel each other, so they have no mean',
  separation: 'a term, or a sum of terms, tells the outcomes apart perfectly, so its estimate runs off to infinity',
  'collinear-terms': 'a term is a sum of the others, so they cannot be told apart',
  'not-converged': 'the fit did not settle',
  'no-residual-freedom': 'there are as many terms as observations, so no scatter is left to measure',
  'not-whole-counts': 'the likelihood needs whole counts of successes and trials',
  'mostly-undefined': 'the statistic is undefined in too many of the resamples',
} as const;

/** Why a result is undefined, as a stable code that a message catalogue may translate. */
export type UndefinedReason = keyof typeof REASONS;

/** A result that does not exist, and why. */
export type Undefined = { readonly defined: false; readonly reason: UndefinedReason };

/** A value of type T, or the reason why there is none. Results of this room are never NaN. */
export type Defined<T> = { readonly defined: true; readonly value: T } | Undefined;

/** Wraps a value that exists. `defined(3)` gives `{ defined: true, value: 3 }`. */
export function defined<T>(value: T): Defined<T> {
  return { defined: true, value };
}

/** Names a result as undefined. `undefinedBecause('no-links').reason` is `'no-links'`. */
export function undefinedBecause(reason: UndefinedReason): Undefined {
  return { defined: false, reason };
}

/**
 * Says in English why a result is undefined.
 * `reasonInWords('no-observations')` gives `'there are no observations'`.
 */
export function reasonInWords(reason: UndefinedReason): string {
  return REASONS[reason];
}

/** Carries a defined value through a calculation; an undefined one keeps its reason. */
export function mapDefined<T, U>(result: Defined<T>, next: (value: T) => U): Defined<U> {
  return result.defined ? defined(next(result.value)) : result;
}
