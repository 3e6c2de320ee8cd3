/** Iteratively reweighted least squares for shares. */

import { unitDeviance } from './binomial-deviance.ts';
import { type BinomialLink, type LinkedMean, linkedMean, linkOf } from './binomial-link.ts';
import type { Prepared } from './binomial-model.ts';
import { type Defined, defined, undefinedBecause } from './defined.ts';
import { type LeastSquaresFit, leastSquares } from './least-squares.ts';
import { predictors } from './separation.ts';

/** Settled when no linear predictor moves by more than this, relative to their size: Newton's next step would be its square. */
const SETTLED = 1e-10;
const MOST_ITERATIONS = 100;
const MOST_HALVINGS = 30;

/** A settled fit: predictors with the offset, the means there, and the deviance. */
export type Settled = {
  readonly coefficients: readonly number[];
  readonly eta: Float64Array;
  readonly means: readonly LinkedMean[];
  readonly deviance: number;
  readonly iterations: number;
};

/** Fits by Fisher scoring: least squares of the working response, over and over, halving steps that make the deviance worse. */
export function iterate(data: Prepared, link: BinomialLink): Defined<Settled> {
  let coefficients: readonly number[] = data.columns.map(() => 0);
  let eta = startingPredictors(data, link);
  let means = Array.from(eta, (value) => linkedMean(link, value));
  let deviance = devianceOf(data, means);
  for (let iterations = 1; iterations <= MOST_ITERATIONS; iterations++) {
    const solved = reweightedStep(data, eta, means);
    if (!solved.defined) return solved;
    let next = solved.value.coefficients;
    let nextEta = withOffset(data, next);
    let nextMeans = Array.from(nextEta, (value) => linkedMean(link, value));
    let nextDeviance = devianceOf(data, nextMeans);
    // The first step leaves the starting values, which no coefficients stand for, so it cannot be halved.
    const tolerated = iterations === 1 ? Number.POSITIVE_INFINITY : deviance + 1e-8 * (Math.abs(deviance) + 1);
    for (let halving = 0; !(nextDeviance <= tolerated) && halving < MOST_HALVINGS; halving++) {
      next = next.map((value, j) => (value + (coefficients[j] as number)) / 2);
      nextEta = withOffset(data, next);
      nextMeans = Array.from(nextEta, (value) => linkedMean(link, value));
      nextDeviance = devianceOf(data, nextMeans);
    }
    const moved = nextEta.reduce((most, value, i) => Math.max(most, Math.abs(value - (eta[i] as number))), 0);
    const size = nextEta.reduce((most, value) => Math.max(most, Math.abs(value)), 1);
    [coefficients, eta, means, deviance] = [next, nextEta, nextMeans, nextDeviance];
    if (moved <= SETTLED * size) return defined({ coefficients, eta, means, deviance, iterations });
  }
  return undefinedBecause('not-converged');
}

/** Predictors of the shares themselves, drawn towards a half so that 0 and 1 have finite ones. */
function startingPredictors({ shares, weights }: Prepared, link: BinomialLink): Float64Array<ArrayBuffer> {
  return Float64Array.from(shares, (share, i) => {
    const weight = weights[i] as number;
    return linkOf(link, (weight * share + 0.5) / (weight + 1));
  });
}

/** Least squares of the working response with the working weights w·(dμ/dη)²/(μ(1 − μ)). */
function reweightedStep(data: Prepared, eta: Float64Array, means: readonly LinkedMean[]): Defined<LeastSquaresFit> {
  const working = means.map(
    (m, i) => (eta[i] as number) - (data.offset[i] as number) + responseResidual(data, m, i) / m.slope,
  );
  return leastSquares(
    data.columns,
    working,
    means.map((m, i) => workingWeight(data, m, i)),
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
