import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cochranSampleSize, cochranSampleSizeForMean } from './cochran-sample-size.ts';
import { quantiles } from './quantile.ts';
import {
  neymanAllocation,
  proportionalAllocation,
  stratifiedMeanVariance,
  stratifiedSampleSize,
  wholeAllocation,
} from './stratified-sampling.ts';
import { wilsonInterval } from './wilson-interval.ts';

const strata = fc.array(
  fc.record({ size: fc.integer({ min: 1, max: 200 }), standardDeviation: fc.integer({ min: 0, max: 300 }) }),
  { minLength: 1, maxLength: 6 },
);

describe('allocation', () => {
  test('sums to the total, never more than a stratum holds, never worse than proportional', () => {
    fc.assert(
      fc.property(strata, fc.double({ min: 0.05, max: 1, noNaN: true }), (list, share) => {
        const total = share * list.reduce((sum, s) => sum + s.size, 0);
        const neyman = neymanAllocation(list, total);
        const proportional = proportionalAllocation(list, total);
        if (!neyman.defined || !proportional.defined) return;
        expect(neyman.value.reduce((sum, n) => sum + n, 0)).toBeCloseTo(total, 6);
        for (const [h, n] of neyman.value.entries()) expect(n).toBeLessThanOrEqual((list[h]?.size ?? 0) * (1 + 1e-12));
        const [best, other] = [
          stratifiedMeanVariance(list, neyman.value),
          stratifiedMeanVariance(list, proportional.value),
        ];
        if (best.defined && other.defined) expect(best.value).toBeLessThanOrEqual(other.value * (1 + 1e-9) + 1e-12);
      }),
    );
  });
  test('whole sizes keep the total, the limits and the least of one', () => {
    fc.assert(
      fc.property(strata, fc.double({ min: 0.2, max: 1, noNaN: true }), (list, share) => {
        const total = Math.max(list.length, Math.floor(share * list.reduce((sum, s) => sum + s.size, 0)));
        const allocation = proportionalAllocation(list, total);
        if (!allocation.defined) return;
        const sizes = wholeAllocation(allocation.value, list);
        expect(sizes.reduce((sum, n) => sum + n, 0)).toBe(total);
        for (const [h, n] of sizes.entries()) {
          expect(n).toBeGreaterThanOrEqual(1);
          expect(n).toBeLessThanOrEqual(list[h]?.size ?? 0);
        }
      }),
    );
  });
  test('a stratum taken whole leaves the rest to the others', () => {
    const list = [
      { size: 5, standardDeviation: 100 },
      { size: 100, standardDeviation: 1 },
      { size: 100, standardDeviation: 3 },
    ];
    expect(neymanAllocation(list, 45)).toEqual({ defined: true, value: [5, 10, 30] });
  });
  test('one stratum, none, none that varies, more than there are', () => {
    expect(neymanAllocation([{ size: 50, standardDeviation: 4 }], 10)).toEqual({ defined: true, value: [10] });
    expect(neymanAllocation([], 0)).toEqual({ defined: false, reason: 'no-observations' });
    expect(neymanAllocation([{ size: 50, standardDeviation: 0 }], 10)).toEqual({
      defined: false,
      reason: 'no-variation',
    });
    expect(() => neymanAllocation([{ size: 5, standardDeviation: 1 }], 6)).toThrow(/sample of 0 to 5, got 6/);
    expect(stratifiedMeanVariance([{ size: 5, standardDeviation: 1 }], [0])).toMatchObject({
      reason: 'too-few-observations',
    });
    expect(stratifiedMeanVariance([{ size: 5, standardDeviation: 1 }], [5])).toEqual({ defined: true, value: 0 });
  });
  test('the size for a wanted variance reaches it, and in one stratum is Cochran’s for a mean', () => {
    const list = [
      { size: 400, standardDeviation: 12 },
      { size: 250, standardDeviation: 30 },
    ];
    const size = stratifiedSampleSize(list, 2.5);
    if (!size.defined) throw new Error(size.reason);
    const allocation = neymanAllocation(list, size.value);
    if (!allocation.defined) throw new Error(allocation.reason);
    expect(stratifiedMeanVariance(list, allocation.value)).toMatchObject({ value: expect.closeTo(2.5, 10) });
  });
});

describe('sample sizes', () => {
  test('whole population at most, one at least, nothing to plan', () => {
    expect(cochranSampleSize(0.5, { halfWidth: 0.01, z: 1.96, population: 3 })).toMatchObject({ value: { whole: 3 } });
    expect(cochranSampleSize(0.001, { halfWidth: 0.9, z: 1.96 })).toMatchObject({ value: { whole: 1 } });
    expect(cochranSampleSize(0, { halfWidth: 0.1, z: 2 })).toEqual({ defined: false, reason: 'no-variation' });
    expect(cochranSampleSize(0.5, { halfWidth: 0.1, z: 2, population: 0 })).toMatchObject({
      reason: 'no-observations',
    });
    expect(() => cochranSampleSize(0.5, { halfWidth: 0, z: 2 })).toThrow(/halfWidth: expected a positive number/);
    expect(cochranSampleSizeForMean(20, { halfWidth: 5, z: 2 })).toMatchObject({ value: { endless: 64, whole: 64 } });
  });
});

describe('Wilson interval', () => {
  test('mirrors: the interval of the failures is that of the successes turned round', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.nat(500), (trials, k) => {
        const successes = Math.min(k, trials);
        for (const continuityCorrection of [false, true]) {
          const a = wilsonInterval(successes, trials, { continuityCorrection });
          const b = wilsonInterval(trials - successes, trials, { continuityCorrection });
          if (!a.defined || !b.defined) throw new Error('expected both');
          expect(a.value.lower).toBeCloseTo(1 - b.value.upper, 12);
          expect(a.value.lower).toBeLessThanOrEqual(successes / trials);
        }
      }),
    );
  });
  test('no trials', () => {
    expect(wilsonInterval(0, 0)).toEqual({ defined: false, reason: 'no-observations' });
    expect(() => wilsonInterval(3, 2)).toThrow(/successes: expected a number from 0 to 2, got 3/);
  });
});

describe('quantiles', () => {
  test('one value is every quantile; none has none; the ends are the extremes', () => {
    for (const type of [1, 2, 3, 4, 5, 6, 7, 8, 9] as const) {
      expect(quantiles([4], [0, 0.3, 1], type)).toEqual({ defined: true, value: [4, 4, 4] });
      expect(quantiles([9, 1, 5], [0, 1], type)).toEqual({ defined: true, value: [1, 9] });
      expect(quantiles([], [0.5], type)).toEqual({ defined: false, reason: 'no-observations' });
    }
    expect(() => quantiles([1], [1.2])).toThrow(/share: expected a number from 0 to 1/);
  });
});
