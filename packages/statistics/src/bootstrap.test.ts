import { describe, expect, test } from 'vitest';
import { blockBootstrap, percentileBootstrap } from './bootstrap.ts';
import { type Defined, defined, undefinedBecause } from './defined.ts';
import { RandomStream } from './random-stream.ts';

const data = [3, 8, 1, 9, 4, 7, 7, 2];
const meanAt = (positions: Uint32Array): Defined<number> =>
  defined(positions.reduce((sum, i) => sum + (data[i] as number), 0) / positions.length);

describe('percentile bootstrap', () => {
  test('the same seed gives the same interval, another seed another', () => {
    const once = percentileBootstrap(8, meanAt, { seed: 5, resamples: 200 });
    expect(percentileBootstrap(8, meanAt, { seed: 5, resamples: 200 })).toEqual(once);
    expect(percentileBootstrap(8, meanAt, { seed: 6, resamples: 200 })).not.toEqual(once);
  });
  test('strata keep their sizes', () => {
    const strata = [1, 1, 1, 2, 2, 2, 2, 2];
    const firsts = (positions: Uint32Array): Defined<number> => defined(positions.filter((i) => i < 3).length);
    const result = percentileBootstrap(8, firsts, { seed: 1, resamples: 50, strata });
    expect(result).toMatchObject({ value: { interval: { lower: 3, upper: 3 }, standardError: 0 } });
  });
  test('an undefined statistic, and one that is undefined in a few or in many resamples', () => {
    const never = (): Defined<number> => undefinedBecause('zero-control-after');
    expect(percentileBootstrap(8, never, { seed: 1 })).toEqual({ defined: false, reason: 'zero-control-after' });
    const needs =
      (wanted: number) =>
      (positions: Uint32Array): Defined<number> =>
        new Set(positions).size >= wanted ? meanAt(positions) : undefinedBecause('no-variation');
    expect(percentileBootstrap(8, needs(6), { seed: 1 })).toEqual({ defined: false, reason: 'mostly-undefined' });
    const few = percentileBootstrap(8, needs(4), { seed: 1 });
    if (!few.defined) throw new Error(few.reason);
    expect(few.value.undefinedResamples).toBeGreaterThan(0);
    expect(few.value.resamples + few.value.undefinedResamples).toBe(2000);
  });
  test('nothing and one observation', () => {
    expect(percentileBootstrap(0, meanAt, { seed: 1 })).toEqual({ defined: false, reason: 'no-observations' });
    expect(percentileBootstrap(1, meanAt, { seed: 1 })).toEqual({ defined: false, reason: 'too-few-observations' });
  });
  // A normal mean's interval: its half-width is 1.96·s/√n up to bootstrap and sampling error.
  test('for many normal values the interval is near that of the normal theory', () => {
    const stream = new RandomStream(7);
    const values = Array.from({ length: 400 }, () => stream.normal(10, 2));
    const result = percentileBootstrap(
      400,
      (at) => defined(at.reduce((sum, i) => sum + (values[i] as number), 0) / 400),
      { seed: 1 },
    );
    if (!result.defined) throw new Error(result.reason);
    const spread = Math.sqrt(values.reduce((sum, v) => sum + (v - result.value.estimate) ** 2, 0) / 399);
    expect(result.value.standardError / (spread / 20)).toBeCloseTo(1, 1);
    const width = result.value.interval.upper - result.value.interval.lower;
    expect(width / ((2 * 1.96 * spread) / 20)).toBeCloseTo(1, 1);
  });
});

describe('block bootstrap', () => {
  test('blocks of one are the plain bootstrap', () => {
    const plain = percentileBootstrap(8, meanAt, { seed: 3, resamples: 300 });
    expect(blockBootstrap([0, 1, 2, 3, 4, 5, 6, 7], meanAt, { seed: 3, resamples: 300 })).toEqual(plain);
  });
  test('alike within blocks: the error is that of the blocks, not of the observations', () => {
    const values = data.flatMap((value) => [value, value, value, value]);
    const blocks = values.map((_, i) => Math.floor(i / 4));
    const statistic = (at: Uint32Array): Defined<number> =>
      defined(at.reduce((sum, i) => sum + (values[i] as number), 0) / at.length);
    const byBlock = blockBootstrap(blocks, statistic, { seed: 3, resamples: 300 });
    const ofBlocks = percentileBootstrap(8, meanAt, { seed: 3, resamples: 300 });
    if (!byBlock.defined || !ofBlocks.defined) throw new Error('expected both');
    expect(byBlock.value.standardError).toBeCloseTo(ofBlocks.value.standardError, 12);
  });
  test('blocks are drawn within their stratum, and may not span two', () => {
    const lows = (at: Uint32Array): Defined<number> => defined(at.filter((i) => i < 4).length);
    const options = { seed: 1, resamples: 50, strata: [0, 0, 0, 0, 1, 1, 1, 1] };
    expect(blockBootstrap([0, 0, 1, 1, 2, 2, 3, 3], lows, options)).toMatchObject({ value: { standardError: 0 } });
    expect(() => blockBootstrap([0, 0, 1, 1, 1, 2, 3, 3], lows, options)).toThrow(/spans two strata/);
  });
  test('one block', () => {
    expect(blockBootstrap([4, 4, 4], meanAt, { seed: 1 })).toEqual({ defined: false, reason: 'too-few-observations' });
  });
});
