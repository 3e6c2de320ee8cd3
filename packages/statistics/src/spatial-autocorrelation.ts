/** What the global measures of spatial association share: linked units, their deviations, the z test. */

import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectFinite, expectSameLength } from './expectations.ts';
import { normalTwoSided } from './normal-distribution.ts';
import type { SpatialWeights } from './spatial-weights.ts';

/** A statistic with its moments when values are placed at random, and the normal test of it. */
export type SpatialTest = {
  readonly statistic: number;
  readonly expectation: number;
  readonly variance: number;
  readonly z: number;
  /** Two-sided normal probability of a z at least as far from 0. */
  readonly pValue: number;
};

/** Values of the linked units only, with weights renumbered to them. */
export type LinkedUnits = {
  readonly values: number[];
  readonly weights: SpatialWeights;
  /** Units left out because nothing links to them or from them. */
  readonly islands: number;
};

/** Leaves out units without any link; undefined when fewer than 4 units or no links are left, or when all values are equal. */
export function linkedUnits(values: ArrayLike<number>, weights: SpatialWeights): Defined<LinkedUnits> {
  expectSameLength(values, weights, 'values and weights');
  expectFinite(values, 'values');
  if (values.length === 0) return undefinedBecause('no-observations');
  const linked = new Set<number>();
  for (const [from, links] of weights.entries()) {
    for (const { to, weight } of links) {
      if (weight > 0) linked.add(from).add(to);
    }
  }
  if (linked.size === 0) return undefinedBecause('no-links');
  if (linked.size < 4) return undefinedBecause('too-few-observations');
  const kept = [...linked].sort((a, b) => a - b);
  const numberOf = new Map(kept.map((unit, i) => [unit, i]));
  const keptValues = kept.map((unit) => values[unit] as number);
  if (keptValues.every((value) => value === keptValues[0])) return undefinedBecause('no-variation');
  return defined({
    values: keptValues,
    weights: kept.map((unit) =>
      (weights[unit] ?? []).map(({ to, weight }) => ({ to: numberOf.get(to) as number, weight })),
    ),
    islands: values.length - kept.length,
  });
}

/** Deviations from the mean. */
export function deviations(values: readonly number[]): number[] {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.map((value) => value - mean);
}

/** Σ over links of weight · term. */
export function overLinks(weights: SpatialWeights, term: (from: number, to: number) => number): number {
  let sum = 0;
  for (const [from, links] of weights.entries()) {
    for (const { to, weight } of links) sum += weight * term(from, to);
  }
  return sum;
}

/** Σx^power. */
export function powerSum(values: readonly number[], power: number): number {
  return values.reduce((sum, value) => sum + value ** power, 0);
}

/** The normal test of a statistic; undefined when its variance vanishes, as when every unit neighbours every other. */
export function spatialTest(statistic: number, expectation: number, variance: number): Defined<SpatialTest> {
  // A variance of rounding size means that every placing of the values gives the same statistic.
  if (!(variance > 1e-12 * expectation * expectation)) return undefinedBecause('all-linked');
  const z = (statistic - expectation) / Math.sqrt(variance);
  return defined({ statistic, expectation, variance, z, pValue: normalTwoSided(z) });
}
