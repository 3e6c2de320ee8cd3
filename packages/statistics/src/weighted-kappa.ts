/** Agreement of two raters on ordered classes, beyond chance. */

import { CompensatedSum } from './compensated-sum.ts';
import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectNonNegative, expectOpenFraction, expectSameLength } from './expectations.ts';
import type { Interval } from './interval.ts';
import { normalCritical } from './normal-distribution.ts';

/**
 * How much a disagreement between classes i and j counts: all alike, |i − j|, (i − j)², or a square table of own weights
 * (from 0 up, 0 on the diagonal).
 */
export type DisagreementWeights = 'unweighted' | 'linear' | 'quadratic' | readonly (readonly number[])[];

/** Kappa and what it was made of; shares are 0–1, agreement shares are weighted alike. */
export type KappaResult = {
  readonly kappa: number;
  /** Standard error of an estimate, for intervals (not the one under no agreement). */
  readonly standardError: number;
  readonly interval: Interval;
  readonly observedAgreement: number;
  readonly expectedAgreement: number;
  readonly ratings: number;
};

/**
 * Weighted kappa of a square table of counts, κ = 1 − Σ d·p / Σ d·e: 1 is full agreement, 0 is chance, negative is worse.
 *
 * p are the observed shares, e the products of their margins, d the disagreement weights; rows are the first rater.
 * The interval is κ ± z·SE, cut at 1. Accuracy tested: 1e-9. Undefined without ratings, and when both raters always gave the same
 * one class (no disagreement could be expected). RangeError for tables that are not square, negative counts or bad weights.
 * Sources: Cohen (1968), Psychological Bulletin 70, 213–220; standard error by Fleiss, Cohen and Everitt (1969),
 * Psychological Bulletin 72, 323–327 (from memory).
 *
 * Example: `weightedKappa([[88, 14, 18], [10, 40, 10], [2, 6, 12]], 'unweighted')` gives κ = 0.4915254237.
 */
export function weightedKappa(
  table: readonly (readonly number[])[],
  weights: DisagreementWeights,
  confidence = 0.95,
): Defined<KappaResult> {
  expectOpenFraction(confidence, 'confidence');
  for (const row of table) {
    expectSameLength(row, table, 'table row and rows');
    expectNonNegative(row, 'table');
  }
  const total = sumOver(table, (count) => count);
  if (total === 0) return undefinedBecause('no-observations');
  const shares = table.map((row) => row.map((count) => count / total));
  const disagreement = disagreementTable(table.length, weights);
  const [rowShares, columnShares] = margins(shares);
  const observed = sumOver(shares, (share, i, j) => share * at(disagreement, i, j));
  const expected = sumOver(
    shares,
    (_, i, j) => (rowShares[i] as number) * (columnShares[j] as number) * at(disagreement, i, j),
  );
  if (expected === 0) return undefinedBecause('no-variation');
  const kappa = 1 - observed / expected;
  const standardError = Math.sqrt(kappaVariance(shares, disagreement, kappa, expected) / total);
  const reach = normalCritical(confidence) * standardError;
  return defined({
    kappa,
    standardError,
    interval: { lower: kappa - reach, upper: Math.min(1, kappa + reach), confidence },
    observedAgreement: 1 - observed,
    expectedAgreement: 1 - expected,
    ratings: total,
  });
}

/** Disagreement weights scaled to 0–1, so that 1 − weight is an agreement weight. */
function disagreementTable(classes: number, weights: DisagreementWeights): readonly (readonly number[])[] {
  if (typeof weights !== 'string') return scaledOwnWeights(classes, weights);
  const most = Math.max(1, classes - 1);
  const weigh = (steps: number): number => {
    if (weights === 'unweighted') return steps === 0 ? 0 : 1;
    return weights === 'linear' ? steps / most : (steps / most) ** 2;
  };
  return Array.from({ length: classes }, (_, i) => Array.from({ length: classes }, (_, j) => weigh(Math.abs(i - j))));
}

function scaledOwnWeights(classes: number, weights: readonly (readonly number[])[]): number[][] {
  if (weights.length !== classes) {
    throw new RangeError(`weights: expected ${classes} rows as in the table, got ${weights.length}`);
  }
  for (const [i, row] of weights.entries()) {
    expectSameLength(row, weights, 'weights row and rows');
    expectNonNegative(row, 'weights');
    if (row[i] !== 0) throw new RangeError(`weights: expected 0 on the diagonal, got ${row[i]} at ${i}`);
  }
  const most = Math.max(...weights.flat(), 0);
  return weights.map((row) => row.map((weight) => (most === 0 ? 0 : weight / most)));
}

/** The variance of √n·κ̂ at the estimate. */
function kappaVariance(
  shares: readonly (readonly number[])[],
  disagreement: readonly (readonly number[])[],
  kappa: number,
  expected: number,
): number {
  const [rowShares, columnShares] = margins(shares);
  const rowMeans = disagreement.map((row) => dot(row, columnShares));
  const columnMeans = disagreement.map((_, j) =>
    dot(
      disagreement.map((row) => row[j] as number),
      rowShares,
    ),
  );
  // In agreement weights v = 1 − d: v − (v̄ᵢ + v̄ⱼ)(1 − κ).
  const spread = sumOver(shares, (share, i, j) => {
    const meanAgreement = 2 - (rowMeans[i] as number) - (columnMeans[j] as number);
    return share * (1 - at(disagreement, i, j) - meanAgreement * (1 - kappa)) ** 2;
  });
  const centre = kappa - (1 - expected) * (1 - kappa);
  return Math.max(0, spread - centre * centre) / (expected * expected);
}

function margins(shares: readonly (readonly number[])[]): [number[], number[]] {
  const rows = shares.map((row) => row.reduce((sum, share) => sum + share, 0));
  const columns = shares.map((_, j) => shares.reduce((sum, row) => sum + (row[j] as number), 0));
  return [rows, columns];
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] as number), 0);
}

function at(table: readonly (readonly number[])[], i: number, j: number): number {
  return table[i]?.[j] as number;
}

function sumOver(table: readonly (readonly number[])[], term: (cell: number, i: number, j: number) => number): number {
  const sum = new CompensatedSum();
  for (const [i, row] of table.entries()) {
    for (const [j, cell] of row.entries()) sum.add(term(cell, i, j));
  }
  return sum.total;
}
