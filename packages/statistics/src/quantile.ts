/** Sample quantiles by the nine definitions in use. */

import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectBetween, expectFinite } from './expectations.ts';

/** Hyndman and Fan's numbering. 7 is the usual default, 8 is their recommendation, 1–3 return observed values only. */
export type QuantileType = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9;

/** Rounding below which a position counts as exact: positions are of the order of 1, computed with a few roundings. */
const POSITION_FUZZ = 4 * Number.EPSILON;

/** Plotting positions (α, β) of the continuous types: the quantile lies at position np + α + p(1 − α − β). */
const PLOTTING: Record<4 | 5 | 6 | 7 | 8 | 9, readonly [number, number]> = {
  4: [0, 1],
  5: [0.5, 0.5],
  6: [0, 0],
  7: [1, 1],
  8: [1 / 3, 1 / 3],
  9: [3 / 8, 3 / 8],
};

/**
 * Sample quantiles of a list (any order) at shares from 0 to 1, in the units of the values.
 *
 * Accuracy tested: 1e-12 against R's nine types. Undefined without observations; one observation is every quantile. RangeError
 * for values that are not finite or shares outside 0–1.
 * Source: Hyndman and Fan (1996), The American Statistician 50, 361–365, definitions 1–9.
 *
 * Example: `quantiles([1, 3, 4, 8, 15, 16, 23, 42], [0.25, 0.5])` gives [3.75, 11.5].
 */
export function quantiles(
  values: ArrayLike<number>,
  shares: readonly number[],
  type: QuantileType = 7,
): Defined<number[]> {
  expectFinite(values, 'values');
  const sorted = Float64Array.from(values).sort();
  if (sorted.length === 0) return undefinedBecause('no-observations');
  return defined(shares.map((share) => quantileOfSorted(sorted, share, type)));
}

/**
 * One sample quantile of values already sorted upwards, at least one of them: for callers who need many.
 *
 * Example: `quantileOfSorted([1, 3, 4, 8], 0.5)` gives 3.5.
 */
export function quantileOfSorted(sorted: ArrayLike<number>, share: number, type: QuantileType = 7): number {
  expectBetween(share, 0, 1, 'share');
  const [below, toNext] =
    type <= 3 ? stepPosition(sorted.length, share, type) : linePosition(sorted.length, share, type);
  const left = sorted[Math.min(Math.max(below - 1, 0), sorted.length - 1)] as number;
  const right = sorted[Math.min(Math.max(below, 0), sorted.length - 1)] as number;
  if (toNext === 0) return left;
  return toNext === 1 ? right : (1 - toNext) * left + toNext * right;
}

/** The 1-based position below the quantile, and the weight of the next one, for the step types. */
function stepPosition(count: number, share: number, type: QuantileType): [number, number] {
  const position = type === 3 ? count * share - 0.5 : count * share;
  const below = Math.floor(position + POSITION_FUZZ);
  const beyond = position > below + POSITION_FUZZ;
  if (type === 2) return [below, beyond ? 1 : 0.5];
  if (type === 3) return [below, beyond || below % 2 !== 0 ? 1 : 0];
  return [below, beyond ? 1 : 0];
}

function linePosition(count: number, share: number, type: QuantileType): [number, number] {
  const [alpha, beta] = PLOTTING[type as keyof typeof PLOTTING];
  const position = alpha + share * (count + 1 - alpha - beta);
  const below = Math.floor(position + POSITION_FUZZ);
  const toNext = position - below;
  return [below, Math.abs(toNext) < POSITION_FUZZ ? 0 : toNext];
}
