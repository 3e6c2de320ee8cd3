/** Intervals by resampling the observations, or whole blocks of them. */

import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectOpenFraction, expectWhole } from './expectations.ts';
import type { Interval } from './interval.ts';
import { type QuantileType, quantileOfSorted } from './quantile.ts';
import { RandomStream } from './random-stream.ts';

/** A statistic of the observations at these positions (with repeats); undefined where it does not exist. */
export type ResampledStatistic = (positions: Uint32Array) => Defined<number>;

/** Seed and size of the resampling. */
export type BootstrapOptions = {
  /** Whole number from 0 up; equal seeds give equal intervals. */
  readonly seed: number;
  /** Default 2,000; 95 % limits then move by about 2–4 % of the interval's width between seeds. */
  readonly resamples?: number;
  /** Share covered, 0–1, default 0.95. */
  readonly confidence?: number;
  /** Group of each observation (block): groups are resampled separately and keep their sizes. */
  readonly strata?: ArrayLike<number>;
  /** How the limits are read off the resamples; default type 7. */
  readonly quantileType?: QuantileType;
};

/** The statistic of the data, and the spread of its resamples. */
export type BootstrapResult = {
  readonly estimate: number;
  readonly interval: Interval;
  readonly standardError: number;
  /** Resamples in which the statistic existed, and those in which it did not (they are left out). */
  readonly resamples: number;
  readonly undefinedResamples: number;
};

/** Above this share of undefined resamples the others no longer stand for all of them (our choice, no source). */
const MOST_UNDEFINED = 0.05;

const USUAL_RESAMPLES = 2000;

/**
 * Percentile bootstrap interval of any statistic of `observations` independent observations.
 *
 * Resample r draws from stream r of the seed, so the result does not depend on the order of work. Undefined when the statistic
 * of the data is, below two observations, or when more than 5 % of the resamples are undefined.
 * Accuracy tested: within Monte Carlo error of the full enumeration of a published kind of example.
 * Source: Efron and Tibshirani (1993), An Introduction to the Bootstrap, chapter 13.
 *
 * Example: the mean of 12, 15, 9, 20, 31, 7 with 20,000 resamples gives 15.67, 95 % interval near 9.83 to 22.5.
 */
export function percentileBootstrap(
  observations: number,
  statistic: ResampledStatistic,
  options: BootstrapOptions,
): Defined<BootstrapResult> {
  expectWhole(observations, 0, 'observations');
  const strata = positionsByGroup(observations, options.strata);
  if (observations === 0) return undefinedBecause('no-observations');
  if (observations < 2) return undefinedBecause('too-few-observations');
  const drawn = new Uint32Array(observations);
  return spreadOf(statistic, observations, options, (stream) => {
    let filled = 0;
    for (const group of strata) {
      for (let i = 0; i < group.length; i++) drawn[filled++] = group[stream.wholeBelow(group.length)] as number;
    }
    return drawn;
  });
}

/**
 * Block bootstrap interval: whole blocks are drawn with all their observations, so that likeness within blocks is kept.
 *
 * `blocks` holds each observation's block (any numbers). With `strata` (one value per observation, equal within a block) blocks
 * are drawn within their stratum. Undefined below two blocks; otherwise as `percentileBootstrap`.
 * Source: Davison and Hinkley (1997), Bootstrap Methods and their Application, sections 3.8 and 8.3 (from memory).
 *
 * Example: with every observation its own block, the result is that of `percentileBootstrap` for the same seed.
 */
export function blockBootstrap(
  blocks: ArrayLike<number>,
  statistic: ResampledStatistic,
  options: BootstrapOptions,
): Defined<BootstrapResult> {
  const members = positionsByGroup(blocks.length, blocks);
  if (members.length === 0) return undefinedBecause('no-observations');
  if (members.length < 2) return undefinedBecause('too-few-observations');
  const blockStrata = options.strata
    ? members.map((block) => stratumOf(block, options.strata as ArrayLike<number>))
    : undefined;
  const strata = positionsByGroup(members.length, blockStrata);
  return spreadOf(statistic, blocks.length, options, (stream) => {
    const drawn: number[] = [];
    for (const group of strata) {
      for (let i = 0; i < group.length; i++) {
        for (const position of members[group[stream.wholeBelow(group.length)] as number] as number[])
          drawn.push(position);
      }
    }
    return Uint32Array.from(drawn);
  });
}

/** Positions 0 … count − 1 by group, groups in order of first appearance; one group when none are given. */
function positionsByGroup(count: number, groups: ArrayLike<number> | undefined): number[][] {
  if (groups && groups.length !== count) {
    throw new RangeError(`groups: expected one per observation (${count}), got ${groups.length}`);
  }
  const byGroup = new Map<number, number[]>();
  for (let i = 0; i < count; i++) {
    const group = groups ? (groups[i] as number) : 0;
    const positions = byGroup.get(group);
    if (positions) positions.push(i);
    else byGroup.set(group, [i]);
  }
  return [...byGroup.values()];
}

function stratumOf(block: number[], strata: ArrayLike<number>): number {
  const stratum = strata[block[0] as number] as number;
  if (block.some((position) => strata[position] !== stratum)) {
    throw new RangeError('strata: expected equal values within a block, got a block that spans two strata');
  }
  return stratum;
}

function spreadOf(
  statistic: ResampledStatistic,
  observations: number,
  options: BootstrapOptions,
  resample: (stream: RandomStream) => Uint32Array,
): Defined<BootstrapResult> {
  const { seed, resamples = USUAL_RESAMPLES, confidence = 0.95, quantileType = 7 } = options;
  expectOpenFraction(confidence, 'confidence');
  expectWhole(resamples, 1, 'resamples');
  const estimate = statistic(Uint32Array.from({ length: observations }, (_, i) => i));
  if (!estimate.defined) return estimate;
  const values: number[] = [];
  for (let r = 0; r < resamples; r++) {
    const value = statistic(resample(new RandomStream(seed, r)));
    if (value.defined) values.push(value.value);
  }
  const undefinedResamples = resamples - values.length;
  if (undefinedResamples > MOST_UNDEFINED * resamples) return undefinedBecause('mostly-undefined');
  const sorted = Float64Array.from(values).sort();
  const tail = (1 - confidence) / 2;
  return defined({
    estimate: estimate.value,
    interval: {
      lower: quantileOfSorted(sorted, tail, quantileType),
      upper: quantileOfSorted(sorted, 1 - tail, quantileType),
      confidence,
    },
    standardError: standardDeviation(sorted),
    resamples: values.length,
    undefinedResamples,
  });
}

function standardDeviation(values: Float64Array): number {
  if (values.length < 2) return 0;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
