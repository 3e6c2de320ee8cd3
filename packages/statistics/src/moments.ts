/** Means, variances and covariances by two passes, with compensated sums. */

import { CompensatedSum, compensatedSum } from './compensated-sum.ts';
import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectFinite, expectNonNegative, expectSameLength } from './expectations.ts';

/** What a sum of squares is divided by: n (the moment) or n − 1 (the unbiased estimate). */
export type Divisor = 'n' | 'n-1';

/**
 * Arithmetic mean Σx/n. Undefined without observations.
 *
 * Example: `mean([40, 80, 90])` gives 70.
 */
export function mean(values: ArrayLike<number>): Defined<number> {
  expectFinite(values, 'values');
  return values.length === 0 ? undefinedBecause('no-observations') : defined(compensatedSum(values) / values.length);
}

/**
 * Weighted mean Σwx/Σw; weights from 0 up. Undefined without observations and when all weights are zero.
 *
 * Example: `weightedMean([0, 1.5, 4.5], [1, 4, 6])` gives 3.
 */
export function weightedMean(values: ArrayLike<number>, weights: ArrayLike<number>): Defined<number> {
  expectFinite(values, 'values');
  expectNonNegative(weights, 'weights');
  expectSameLength(values, weights, 'values and weights');
  if (values.length === 0) return undefinedBecause('no-observations');
  const totalWeight = compensatedSum(weights);
  if (totalWeight === 0) return undefinedBecause('no-weight');
  const sum = new CompensatedSum();
  for (let i = 0; i < values.length; i++) sum.add((values[i] as number) * (weights[i] as number));
  return defined(sum.total / totalWeight);
}

/**
 * Variance Σ(x − x̄)²/(n − 1), or /n. In squared units of the values. Undefined when the divisor is 0.
 *
 * Example: `variance([2, 4, 9], 'n-1')` gives 13.
 */
export function variance(values: ArrayLike<number>, divisor: Divisor): Defined<number> {
  return covariance(values, values, divisor);
}

/**
 * Covariance Σ(x − x̄)(y − ȳ)/(n − 1), or /n, of paired values. Undefined when the divisor is 0.
 *
 * Example: `covariance([1, 2, 3], [2, 4, 6], 'n')` gives 4/3.
 */
export function covariance(x: ArrayLike<number>, y: ArrayLike<number>, divisor: Divisor): Defined<number> {
  expectSameLength(x, y, 'x and y');
  const meanX = mean(x);
  const meanY = mean(y);
  if (!meanX.defined) return meanX;
  if (!meanY.defined) return meanY;
  const count = divisor === 'n' ? x.length : x.length - 1;
  if (count === 0) return undefinedBecause('too-few-observations');
  const sum = new CompensatedSum();
  for (let i = 0; i < x.length; i++) sum.add(((x[i] as number) - meanX.value) * ((y[i] as number) - meanY.value));
  return defined(sum.total / count);
}
