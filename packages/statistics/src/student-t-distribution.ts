/** Student's t distribution: cumulative share, two-sided tail and quantile. */

import { incompleteBeta } from './beta-function.ts';
import { expectOpenFraction, expectPositive } from './expectations.ts';
import { fQuantile } from './f-distribution.ts';

/**
 * Share of Student's t distribution below t; `freedom` positive, not necessarily whole.
 *
 * Accuracy tested: 1e-12 relative against R's pt. Formula: ½I_x(freedom/2, ½) below 0, x = freedom/(freedom + t²).
 *
 * Example: `studentTCdf(2.7764451051977987, 4)` gives 0.975.
 */
export function studentTCdf(t: number, freedom: number): number {
  const tail = 0.5 * studentTTwoSided(t, freedom);
  return t < 0 ? tail : 1 - tail;
}

/** Probability that Student's t lies farther from 0 than t, on either side: `studentTTwoSided(2.7764451051977987, 4)` gives 0.05. */
export function studentTTwoSided(t: number, freedom: number): number {
  expectPositive(freedom, 'freedom');
  const ratio = t * (t / freedom);
  if (ratio === Number.POSITIVE_INFINITY) return 0;
  return incompleteBeta(1 / (1 + ratio), ratio < 1 ? ratio / (1 + ratio) : 1 / (1 + 1 / ratio), freedom / 2, 0.5)[0];
}

/**
 * The t below which a share p of Student's distribution lies, 0 < p < 1.
 *
 * Accuracy tested: 1e-12 relative against R's qt. Formula: t² is the quantile of F with 1 and `freedom` degrees.
 *
 * Example: `studentTQuantile(0.975, 4)` gives 2.7764451051977987.
 */
export function studentTQuantile(p: number, freedom: number): number {
  expectOpenFraction(p, 'p');
  if (p === 0.5) return 0;
  const tail = Math.min(p, 1 - p);
  // F(freedom, 1) of the reciprocal keeps a small tail a small share instead of 1 − 2·tail.
  const t = Math.sqrt(1 / fQuantile(2 * tail, freedom, 1));
  return p < 0.5 ? -t : t;
}

/** The t with which a two-sided interval holds the given confidence: `studentTCritical(0.95, 4)` gives 2.7764451051977987. */
export function studentTCritical(confidence: number, freedom: number): number {
  expectOpenFraction(confidence, 'confidence');
  return -studentTQuantile((1 - confidence) / 2, freedom);
}
