/** How far apart two raters' values of the same subjects are: bias and limits of agreement. */

import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectOpenFraction, expectSameLength } from './expectations.ts';
import type { Interval } from './interval.ts';
import { mean, variance } from './moments.ts';
import { normalCritical } from './normal-distribution.ts';
import { studentTCritical } from './student-t-distribution.ts';

/** Bias and limits, all in the units of the values. */
export type BlandAltmanResult = {
  /** Mean of first minus second. */
  readonly bias: number;
  /** Standard deviation of the differences, divisor n − 1. */
  readonly standardDeviation: number;
  readonly biasInterval: Interval;
  /** Bias ± z·SD: where the stated share of differences is expected, if they are normal. */
  readonly limits: Interval;
  readonly lowerLimitInterval: Interval;
  readonly upperLimitInterval: Interval;
  readonly pairs: number;
};

/**
 * Bias of two raters and their limits of agreement, x̄−ȳ ± z·SD of the differences.
 *
 * `confidence` sets both the share of differences within the limits and the confidence of the t intervals; a limit's standard
 * error is √(1/n + z²/(2(n − 1)))·SD. Accuracy tested: 1e-9. Undefined below two pairs; equal differences give limits at the
 * bias. RangeError for unequal lengths.
 * Source: Bland and Altman (1986), The Lancet i, 307–310; standard error of a limit: Bland and Altman (1999),
 * Statistical Methods in Medical Research 8, 135–160 (from memory).
 *
 * Example: `blandAltman([10, 20, 30], [8, 17, 29])` gives a bias of 2 and a standard deviation of 1.
 */
export function blandAltman(x: ArrayLike<number>, y: ArrayLike<number>, confidence = 0.95): Defined<BlandAltmanResult> {
  expectOpenFraction(confidence, 'confidence');
  expectSameLength(x, y, 'x and y');
  const differences = Array.from({ length: x.length }, (_, i) => (x[i] as number) - (y[i] as number));
  const bias = mean(differences);
  if (!bias.defined) return bias;
  const spread = variance(differences, 'n-1');
  if (!spread.defined) return undefinedBecause('too-few-observations');
  const standardDeviation = Math.sqrt(spread.value);
  const pairs = x.length;
  const z = normalCritical(confidence);
  const t = studentTCritical(confidence, pairs - 1);
  const around = (centre: number, reach: number): Interval => ({
    lower: centre - reach,
    upper: centre + reach,
    confidence,
  });
  const limits = around(bias.value, z * standardDeviation);
  const limitReach = t * standardDeviation * Math.sqrt(1 / pairs + (z * z) / (2 * (pairs - 1)));
  return defined({
    bias: bias.value,
    standardDeviation,
    biasInterval: around(bias.value, (t * standardDeviation) / Math.sqrt(pairs)),
    limits,
    lowerLimitInterval: around(limits.lower, limitReach),
    upperLimitInterval: around(limits.upper, limitReach),
    pairs,
  });
}
