/** How many to sample so that a proportion or a mean is known to a wanted precision. */

import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectBetween, expectPositive } from './expectations.ts';

/** Precision wanted: half the interval's width in the units of the estimate, and the normal z of its confidence. */
export type WantedPrecision = {
  readonly halfWidth: number;
  /** 1.959963984540054 for 95 %: see `normalCritical`. */
  readonly z: number;
  /** How many there are in all; absent when there is no end of them. */
  readonly population?: number;
};

/** Sample sizes: from an endless population, corrected for the real one, and that rounded up to a whole number. */
export type SampleSize = { readonly endless: number; readonly corrected: number; readonly whole: number };

/** Rounding below which a size such as 278.0000000000001 still means 278. */
const ROUNDING = 1e-9;

/**
 * Sample size for a proportion: n₀ = z²p(1 − p)/d², corrected n = n₀/(1 + (n₀ − 1)/N).
 *
 * Accuracy tested: 1e-9. Undefined for an expected proportion of 0 or 1 (no variation to plan for) and for a population of 0.
 * RangeError unless halfWidth and z are positive.
 * Source: Cochran (1977), Sampling Techniques, 3rd ed., section 4.4 (from memory).
 *
 * Example: `cochranSampleSize(0.5, { halfWidth: 0.05, z: 2, population: 3200 })` gives 400, corrected 355.65, whole 356.
 */
export function cochranSampleSize(proportion: number, wanted: WantedPrecision): Defined<SampleSize> {
  expectBetween(proportion, 0, 1, 'proportion');
  return sampleSize(proportion * (1 - proportion), wanted);
}

/**
 * Sample size for a mean whose values have the given standard deviation: n₀ = z²S²/d², corrected as for a proportion.
 *
 * Undefined for a standard deviation of 0 and for a population of 0. Source: Cochran (1977), section 4.6 (from memory).
 *
 * Example: `cochranSampleSizeForMean(20, { halfWidth: 5, z: 2 })` gives 64.
 */
export function cochranSampleSizeForMean(standardDeviation: number, wanted: WantedPrecision): Defined<SampleSize> {
  expectBetween(standardDeviation, 0, Number.MAX_VALUE, 'standardDeviation');
  return sampleSize(standardDeviation * standardDeviation, wanted);
}

function sampleSize(variance: number, { halfWidth, z, population }: WantedPrecision): Defined<SampleSize> {
  expectPositive(halfWidth, 'halfWidth');
  expectPositive(z, 'z');
  if (population !== undefined) expectBetween(population, 0, Number.MAX_SAFE_INTEGER, 'population');
  if (population === 0) return undefinedBecause('no-observations');
  if (variance === 0) return undefinedBecause('no-variation');
  const endless = (z * z * variance) / (halfWidth * halfWidth);
  const corrected = population === undefined ? endless : endless / (1 + (endless - 1) / population);
  const whole = Math.max(1, Math.ceil(corrected - ROUNDING));
  return defined({ endless, corrected, whole: population === undefined ? whole : Math.min(whole, population) });
}
