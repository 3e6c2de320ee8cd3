import {
  cochranSampleSize,
  costOptimalAllocation,
  type Defined,
  defined,
  neymanAllocation,
  percentileBootstrap,
  proportionalAllocation,
  type QuantileType,
  quantiles,
  stratifiedMeanVariance,
  stratifiedSampleSize,
  wilsonInterval,
} from '@crownfall/statistics';
import { describe, expect, test } from 'vitest';
import { quantileTypes } from './statistics/quantiles.ts';
import { required } from './statistics/required.ts';
import { wilson } from './statistics/wilson.ts';

const near = (value: number, wanted: number, tolerance: number): void =>
  expect(Math.abs(value - wanted)).toBeLessThanOrEqual(tolerance);

describe('Wilson interval, cases of Newcombe (1998), limits of R’s prop.test', () => {
  test.each(wilson.cases)('$inputs.x of $inputs.n', ({ inputs, expected }) => {
    const plain = required(wilsonInterval(inputs.x, inputs.n));
    near(plain.lower, expected.lower, wilson.tolerance);
    near(plain.upper, expected.upper, wilson.tolerance);
    // prop.test drops the correction when the share equals its null value of one half; Newcombe's method 4 does not.
    if (2 * inputs.x === inputs.n) return;
    const corrected = required(wilsonInterval(inputs.x, inputs.n, { continuityCorrection: true }));
    near(corrected.lower, expected.with_continuity_correction[0] as number, wilson.tolerance);
    near(corrected.upper, expected.with_continuity_correction[1] as number, wilson.tolerance);
  });

  // Newcombe (1998), Table I, method 3, printed to four decimals (from memory).
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('%i of %i as printed', (x, n, lower, upper) => {
    const interval = required(wilsonInterval(x, n));
    near(interval.lower, lower, 0.00005);
    near(interval.upper, upper, 0.00005);
  });
});

describe('quantile types 1–9 (Hyndman and Fan 1996) against R’s quantile', () => {
  test.each([1, 2, 3, 4, 5, 6, 7, 8, 9] as QuantileType[])('type %i', (type) => {
    const got = required(quantiles(quantileTypes.x, quantileTypes.probs, type));
    const wanted = quantileTypes.expected[`type${type}`];
    for (const [i, value] of got.entries()) near(value, wanted[i] as number, 1e-11);
  });
});

describe('sample sizes: Cochran (1977), section 4.4 (printed 400 and 356, from memory)', () => {
  test.each([
    [2, 0.5, 0.05, 3200, 400, 355.654348430119, 356],
    [1.95996398454005, 0.5, 0.05, 1000, 384.145882069412, 277.733453173188, 278],
    [1.95996398454005, 0.1, 0.03, 240, 384.145882069412, 147.950928264963, 148],
  ])('z %f, p %f, ± %f, N %i', (z, p, halfWidth, population, endless, corrected, whole) => {
    const size = required(cochranSampleSize(p, { z, halfWidth, population }));
    near(size.endless, endless, 1e-9);
    near(size.corrected, corrected, 1e-9);
    expect(size.whole).toBe(whole);
  });
});

// Strata as in Scheaffer, Mendenhall and Ott's television example (from memory); formulas Neyman (1934), Cochran (1977).
describe('allocation', () => {
  const strata = [
    { size: 155, standardDeviation: 5, cost: 1 },
    { size: 62, standardDeviation: 15, cost: 1.5 },
    { size: 93, standardDeviation: 10, cost: 2.25 },
  ];
  const expectSizes = (result: Defined<number[]>, wanted: number[]): void => {
    for (const [h, n] of required(result).entries()) near(n, wanted[h] as number, 1e-10);
  };
  test('proportional, Neyman’s and cost-optimal', () => {
    expectSizes(proportionalAllocation(strata, 30), [15, 6, 9]);
    expectSizes(neymanAllocation(strata, 30), [8.82352941176471, 10.5882352941176, 10.5882352941176]);
    expectSizes(costOptimalAllocation(strata, 30), [10.7921592485096, 10.5741133526827, 8.63372739880767]);
  });
  test('variance of the mean, and the size that reaches it', () => {
    const neyman = required(neymanAllocation(strata, 30));
    near(required(stratifiedMeanVariance(strata, neyman)), 2.1260752688172, 1e-10);
    near(required(stratifiedMeanVariance(strata, [15, 6, 9])), 2.63440860215054, 1e-10);
    near(required(stratifiedSampleSize(strata, 2.1260752688172)), 30, 1e-9);
  });
});

// All 46,656 resamples of six values enumerated with R 4.2.2; Efron and Tibshirani (1993), chapter 13.
describe('percentile bootstrap of a mean', () => {
  const data = [12, 15, 9, 20, 31, 7];
  const exact = [9.83333333333333, 10.6666666666667, 15.5, 21.5, 22.5];
  const meanAt = (positions: Uint32Array): Defined<number> =>
    defined(positions.reduce((sum, i) => sum + (data[i] as number), 0) / positions.length);

  test('every resample enumerated', () => {
    const means: number[] = [];
    for (let code = 0; code < 6 ** 6; code++) {
      let sum = 0;
      for (let rest = code, k = 0; k < 6; k++, rest = Math.floor(rest / 6)) sum += data[rest % 6] as number;
      means.push(sum / 6);
    }
    for (const type of [1, 6, 7] as const) {
      const got = required(quantiles(means, [0.025, 0.05, 0.5, 0.95, 0.975], type));
      for (const [i, value] of got.entries()) near(value, exact[i] as number, 1e-9);
    }
  });

  test('20,000 seeded resamples come near: limits within 0.2, standard error within 0.05', () => {
    const result = required(percentileBootstrap(data.length, meanAt, { seed: 1, resamples: 20_000 }));
    near(result.interval.lower, exact[0] as number, 0.2);
    near(result.interval.upper, exact[4] as number, 0.2);
    near(result.standardError, 3.28013098202789, 0.05);
    near(result.estimate, 15.6666666666667, 1e-12);
  });
});
