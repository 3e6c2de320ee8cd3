/** Does a combination of terms tell the outcomes apart, so that no finite estimate exists? */

import { linkedMean } from './binomial-link.ts';
import { leastSquares } from './least-squares.ts';

/** complete: all observations are told apart; quasi: some; none: finite estimates exist; unknown: no proof either way. */
export type Separation = 'none' | 'quasi' | 'complete' | 'unknown';

/** Newton steps: a diverging fit moves the predictors by about 1 each, and the finite part settles by a factor e each. */
const STEPS = 30;

/** A step this small means that the fit has settled. */
const SETTLED = 1e-6;

/** Share of the largest move below which an observation counts as not moving. */
const STILL = 1e-5;

/**
 * Looks for a direction of the coefficients along which the likelihood of shares `y` (0–1) never falls: no observation with
 * y = 1 moves down, none with y = 0 moves up, those between do not move. Whether one exists does not depend on the link.
 *
 * A logit fit is followed: when finite estimates exist it settles; when not, its steps turn into such a direction, which is
 * then checked observation by observation, so an answer of 'quasi' or 'complete' is a proof up to rounding.
 * Sources: Albert and Anderson (1984), Biometrika 71, 1–10; Lesaffre and Albert (1989), JRSS B 51, 109–116 (from memory).
 *
 * Example: y = [0, 0, 1, 1] with the columns [1, 1, 1, 1] and [1, 2, 3, 4] gives 'complete'.
 */
export function findSeparation(
  columns: readonly ArrayLike<number>[],
  y: ArrayLike<number>,
  weights: ArrayLike<number>,
): Separation {
  const rows = y.length;
  let eta = new Float64Array(rows);
  let step = new Float64Array(rows);
  for (let k = 0; k < STEPS; k++) {
    const means = Array.from(eta, (value) => linkedMean('logit', value));
    const working = means.map((m, i) => {
      const share = y[i] as number;
      return (share * m.complement - (1 - share) * m.mean) / m.slope;
    });
    const fit = leastSquares(
      columns,
      working,
      means.map((m, i) => m.slope * (weights[i] as number)),
    );
    if (!fit.defined) break;
    step = predictors(columns, fit.value.coefficients, rows);
    if (largest(step) < SETTLED) return 'none';
    eta = eta.map((value, i) => value + (step[i] as number));
  }
  return certify(step, y, weights);
}

/** The linear predictors Xb. */
export function predictors(
  columns: readonly ArrayLike<number>[],
  coefficients: readonly number[],
  rows: number,
): Float64Array<ArrayBuffer> {
  const eta = new Float64Array(rows);
  for (const [j, column] of columns.entries()) {
    const coefficient = coefficients[j] as number;
    for (let i = 0; i < rows; i++) eta[i] = (eta[i] as number) + coefficient * (column[i] as number);
  }
  return eta;
}

function certify(step: Float64Array, y: ArrayLike<number>, weights: ArrayLike<number>): Separation {
  const most = largest(step);
  if (most === 0) return 'unknown';
  let still = 0;
  for (let i = 0; i < step.length; i++) {
    if (weights[i] === 0) continue;
    const move = (step[i] as number) / most;
    const share = y[i] as number;
    const allowed = Math.abs(move) <= STILL || (share === 1 && move > 0) || (share === 0 && move < 0);
    if (!allowed) return 'unknown';
    if (Math.abs(move) <= STILL) still++;
  }
  return still === 0 ? 'complete' : 'quasi';
}

function largest(values: Float64Array): number {
  return values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}
