/** Efficacy of a treatment from mortality, corrected for natural mortality. */

import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectBetween } from './expectations.ts';

/**
 * Schneider-Orelli's efficacy (m − c)/(1 − c), a share: m the mortality of the treated group, c that of the untreated one, 0–1.
 *
 * Accuracy tested: 1e-9. Negative when fewer died under treatment. Undefined when all of the untreated group died.
 * RangeError for mortalities outside 0–1.
 * Source: Schneider-Orelli (1947), Entomologisches Praktikum, Aarau (from memory).
 *
 * Example: mortalities of 0.98 treated and 0.5 untreated give 0.96.
 */
export function schneiderOrelliEfficacy(treatedMortality: number, controlMortality: number): Defined<number> {
  expectBetween(treatedMortality, 0, 1, 'treatedMortality');
  expectBetween(controlMortality, 0, 1, 'controlMortality');
  if (controlMortality === 1) return undefinedBecause('control-all-dead');
  return defined((treatedMortality - controlMortality) / (1 - controlMortality));
}
