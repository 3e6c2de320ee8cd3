/** Iteratively reweighted least squares for shares. */

import { unitDeviance } from './binomial-deviance.ts';
import { type BinomialLink, type LinkedMean, likelihoodSlope, linkedMean, linkOf } from './binomial-link.ts';
import type { Prepared } from './binomial-model.ts';
import { type Defined, defined, undefinedBecause } from './defined.ts';
import { type LeastSquaresFit, leastSquares } from './least-squares.ts';
import { predictors } from './separation.ts';

/** Settled when no linear predictor moves by more than this, relative to their size: Newton's next step would be its square. */
const SETTLED = 1e-10;
const MOST_ITERATIONS = 100;
const MOST_HALVINGS = 60;

/** Relative worsening of a deviance that its own summation may cause. */
const ROUNDING = 1e-12;

/** A settled fit: predictors with the offset, the means there, and the deviance. */
export type Settled = {
  readonly coefficients: readonly number[];
  readonly eta: Float64Array;
  readonly means: readonly LinkedMean[];
  readonly deviance: number;
  readonly iterations: number;
};

/**
 * Fits by Newton's method as least squares of a working response, over and over. The likelihood is concave under both links, so
 * steps that never make the deviance worse lead to its maximum; a step that does is halved back towards where it came from.
 */
export function iterate(data: Prepared, link: BinomialLink): Defined<Settled> {
  // The first step starts from the shares themselves, and if it fails goes back towards coefficients of 0.
  let from = pointAt(
    data,
    link,
    data.columns.map(() => 0),
  );
  let eta: Float64Array = startingPredictors(data, link);
  let means: readonly LinkedMean[] = Array.from(eta, (value) => linkedMean(link, value));
  for (let iterations = 1; iterations <= MOST_ITERATIONS; iterations++) {
    const solved = newtonStep(data, link, eta, means);
    if (!solved.defined) return solved;
    const whole = pointAt(data, link, solved.value.coefficients);
    // Only a whole step tells whether the fit has settled: a halved one is short for another reason.
    const settled = largestMove(eta, whole.eta) <= SETTLED * largestMove(new Float64Array(eta.length), whole.eta, 1);
    const next = notWorse(data, link, from, whole);
    if (!next) return undefinedBecause('not-converged');
    if (settled) return defined({ ...next, iterations });
    from = next;
    ({ eta, means } = next);
  }
  return undefinedBecause('not-converged');
}

type Point = Omit<Settled, 'iterations'>;

function pointAt(data: Prepared, link: BinomialLink, coefficients: readonly number[]): Point {
  const eta = withOffset(data, coefficients);
  const means = Array.from(eta, (value) => linkedMean(link, value));
  return { coefficients, eta, means, deviance: devianceOf(data, means) };
}

/** The new point, or the first between it and the old one whose deviance is no worse than the old one's by more than rounding. */
function notWorse(data: Prepared, link: BinomialLink, from: Point, to: Point): Point | undefined {
  const tolerated = from.deviance + ROUNDING * (from.deviance + 1);
  let next = to;
  for (let halving = 0; halving < MOST_HALVINGS; halving++) {
    if (next.deviance <= tolerated) return next;
    next = pointAt(
      data,
      link,
      next.coefficients.map((value, j) => (value + (from.coefficients[j] as number)) / 2),
    );
  }
  return undefined;
}

function largestMove(from: Float64Array, to: Float64Array, least = 0): number {
  return to.reduce((most, value, i) => Math.max(most, Math.abs(value - (from[i] as number))), least);
}

/** Predictors of the shares themselves, drawn towards a half so that 0 and 1 have finite ones. */
function startingPredictors({ shares, weights }: Prepared, link: BinomialLink): Float64Array<ArrayBuffer> {
  return Float64Array.from(shares, (share, i) => {
    const weight = weights[i] as number;
    return linkOf(link, (weight * share + 0.5) / (weight + 1));
  });
}

/** Least squares of the working response η + score/information, weighted by the information. */
function newtonStep(
  data: Prepared,
  link: BinomialLink,
  eta: Float64Array,
  means: readonly LinkedMean[],
): Defined<LeastSquaresFit> {
  const slopes = means.map((m, i) => likelihoodSlope(link, data.shares[i] as number, m));
  const working = slopes.map(({ score, information }, i) => {
    const own = (eta[i] as number) - (data.offset[i] as number);
    return information === 0 ? own : own + score / information;
  });
  return leastSquares(
    data.columns,
    working,
    slopes.map(({ information }, i) => (data.weights[i] as number) * information),
  );
}

/** w·(dμ/dη)²/(μ(1 − μ)). */
export function workingWeight(data: Prepared, m: LinkedMean, i: number): number {
  return (data.weights[i] as number) * (m.slope / m.mean) * (m.slope / m.complement);
}

/** y − μ, without cancellation near 0 and 1. */
export function responseResidual(data: Prepared, m: LinkedMean, i: number): number {
  const share = data.shares[i] as number;
  return share * m.complement - (1 - share) * m.mean;
}

function withOffset(data: Prepared, coefficients: readonly number[]): Float64Array<ArrayBuffer> {
  return predictors(data.columns, coefficients, data.shares.length).map(
    (value, i) => value + (data.offset[i] as number),
  );
}

/** Σ w · unit deviance. */
export function devianceOf(data: Prepared, means: readonly LinkedMean[]): number {
  return means.reduce((sum, m, i) => sum + (data.weights[i] as number) * unitDeviance(data.shares[i] as number, m), 0);
}
