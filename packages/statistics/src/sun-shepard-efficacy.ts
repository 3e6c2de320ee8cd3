/** Efficacy of a treatment from mortality, when the untreated population changed meanwhile. */

import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectBetween } from './expectations.ts';

/**
 * Sun and Shepard's efficacy (m + d)/(1 + d), a share: m the mortality of the treated group, d the change of the untreated one
 * over its size before, positive when it grew.
 *
 * Equal to Henderson and Tilton's on the same counts. Accuracy tested: 1e-9. Undefined when the untreated population died out
 * (d = −1). RangeError for a mortality above 1 or a change below −1; a negative mortality means growth under treatment.
 * Source: Sun and Shepard (1947), J. Econ. Entomol. 40, 710–715 (from memory).
 *
 * Example: a mortality of 0.9 while the untreated doubled (1.0) gives 0.95.
 */
export function sunShepardEfficacy(treatedMortality: number, controlChange: number): Defined<number> {
  expectBetween(treatedMortality, -Number.MAX_VALUE, 1, 'treatedMortality');
  expectBetween(controlChange, -1, Number.MAX_VALUE, 'controlChange');
  if (controlChange === -1) return undefinedBecause('zero-control-after');
  return defined((treatedMortality + controlChange) / (1 + controlChange));
}
