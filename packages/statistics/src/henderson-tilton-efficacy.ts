/** Efficacy of a treatment when treated and untreated groups were unlike before it. */

import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectNonNegative } from './expectations.ts';

/** Live counts (or infested shares) of both groups before and after treatment, all on one scale. */
export type BeforeAfterCounts = {
  readonly treatedBefore: number;
  readonly treatedAfter: number;
  readonly controlBefore: number;
  readonly controlAfter: number;
};

/**
 * Henderson and Tilton's efficacy 1 − (Ta·Cb)/(Tb·Ca), a share: 1 is all gone, 0 no effect, negative worse than untreated.
 *
 * For live counts that differ between groups and change without treatment. Accuracy tested: 1e-9. Undefined when the treated
 * group counted nothing before, or the untreated one nothing before or after. RangeError for negative counts.
 * Source: Henderson and Tilton (1955), J. Econ. Entomol. 48, 157–161 (from memory).
 *
 * Example: treated 300 to 30, untreated 500 to 1000, gives 0.95.
 */
export function hendersonTiltonEfficacy(counts: BeforeAfterCounts): Defined<number> {
  const { treatedBefore, treatedAfter, controlBefore, controlAfter } = counts;
  expectNonNegative([treatedBefore, treatedAfter, controlBefore, controlAfter], 'counts');
  if (treatedBefore === 0) return undefinedBecause('zero-treated-before');
  if (controlBefore === 0) return undefinedBecause('zero-control-before');
  if (controlAfter === 0) return undefinedBecause('zero-control-after');
  return defined(1 - (treatedAfter / treatedBefore) * (controlBefore / controlAfter));
}
