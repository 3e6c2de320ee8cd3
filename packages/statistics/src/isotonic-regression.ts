/** The nearest sequence that never falls (or never rises). */

import { expectFinite, expectPositive, expectSameLength } from './expectations.ts';

/** Weights of the observations (default 1) and the direction (default increasing). */
export type IsotonicOptions = {
  readonly weights?: ArrayLike<number>;
  readonly direction?: 'increasing' | 'decreasing';
};

type Pool = { mean: number; weight: number; count: number };

/**
 * Isotonic regression: the monotone values that make Σw(y − ŷ)² least, by pooling adjacent violators, in linear time.
 *
 * Accuracy tested: 1e-10. Nothing gives nothing. RangeError for weights that are not positive, or of another length.
 * Source: Barlow, Bartholomew, Bremner and Brunk (1972), Statistical Inference under Order Restrictions; de Leeuw, Hornik and
 * Mair (2009), Journal of Statistical Software 32(5).
 *
 * Example: `isotonicRegression([1, 0, 4, 3])` gives [0.5, 0.5, 3.5, 3.5].
 */
export function isotonicRegression(values: ArrayLike<number>, options: IsotonicOptions = {}): number[] {
  const { weights, direction = 'increasing' } = options;
  expectFinite(values, 'values');
  if (weights) expectSameLength(values, weights, 'values and weights');
  const sign = direction === 'increasing' ? 1 : -1;
  const pools: Pool[] = [];
  for (let i = 0; i < values.length; i++) {
    const weight = weights ? (weights[i] as number) : 1;
    expectPositive(weight, 'weights');
    poolIn(pools, { mean: sign * (values[i] as number), weight, count: 1 });
  }
  return pools.flatMap((pool) => new Array<number>(pool.count).fill(sign * pool.mean));
}

/** Adds a pool at the end and merges backwards while the order is violated. */
function poolIn(pools: Pool[], added: Pool): void {
  let last = added;
  for (let before = pools.at(-1); before && before.mean >= last.mean; before = pools.at(-1)) {
    pools.pop();
    const weight = before.weight + last.weight;
    last = {
      mean: before.mean + (last.mean - before.mean) * (last.weight / weight),
      weight,
      count: before.count + last.count,
    };
  }
  pools.push(last);
}
