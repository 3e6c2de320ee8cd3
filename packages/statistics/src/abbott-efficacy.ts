/** Efficacy of a treatment when treated and untreated groups were alike before it. */

import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectNonNegative } from './expectations.ts';

/**
 * Abbott's efficacy (C − T)/C, a share, from what lives (or is infested) in the untreated and the treated group afterwards.
 *
 * For groups of equal size that were alike before. Negative when the treated group fared worse. Accuracy tested: 1e-9.
 * Undefined when nothing lives in the untreated group. RangeError for negative counts.
 * Source: Abbott (1925), J. Econ. Entomol. 18, 265–267.
 *
 * Example: 50 % alive untreated and 2 % treated give 0.96.
 */
export function abbottEfficacy(controlAfter: number, treatedAfter: number): Defined<number> {
  expectNonNegative([controlAfter, treatedAfter], 'counts');
  if (controlAfter === 0) return undefinedBecause('zero-control-after');
  return defined((controlAfter - treatedAfter) / controlAfter);
}
