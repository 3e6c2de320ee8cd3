import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compensatedSum } from './compensated-sum.ts';
import { reasonInWords } from './defined.ts';
import { isotonicRegression } from './isotonic-regression.ts';
import { covariance, mean, variance, weightedMean } from './moments.ts';

test('a compensated sum of whole multiples of a power of two is exact', () => {
  // Terms k·2⁻³⁰·2^e lie on a grid on which BigInt adds exactly.
  const term = fc.tuple(fc.integer({ min: -1_000_000, max: 1_000_000 }), fc.integer({ min: 0, max: 20 }));
  fc.assert(
    fc.property(fc.array(term, { maxLength: 200 }), (terms) => {
      const exact = terms.reduce((sum, [k, e]) => sum + BigInt(k) * 2n ** BigInt(e), 0n);
      expect(compensatedSum(terms.map(([k, e]) => k * 2 ** (e - 30)))).toBe(Number(exact) * 2 ** -30 + 0);
    }),
  );
});

test('compensated sums where plain ones fail', () => {
  expect(compensatedSum([1, 1e100, 1, -1e100])).toBe(2);
  expect(compensatedSum([])).toBe(0);
  expect(compensatedSum([1, Number.POSITIVE_INFINITY])).toBe(Number.POSITIVE_INFINITY);
});

test('moments far from zero keep their digits', () => {
  expect(variance([1e9 + 4, 1e9 + 7, 1e9 + 13, 1e9 + 16], 'n-1')).toEqual({ defined: true, value: 30 });
  expect(covariance([1, 2, 3], [2, 4, 6], 'n')).toMatchObject({ value: expect.closeTo(4 / 3, 15) });
});

test('moments of nothing and of one', () => {
  expect(mean([])).toEqual({ defined: false, reason: 'no-observations' });
  expect(variance([3], 'n-1')).toEqual({ defined: false, reason: 'too-few-observations' });
  expect(variance([3], 'n')).toEqual({ defined: true, value: 0 });
  expect(weightedMean([1, 2], [0, 0])).toEqual({ defined: false, reason: 'no-weight' });
  expect(reasonInWords('no-weight')).toBe('all weights are zero');
});

test('isotonic regression is the nearest monotone sequence: no monotone one lies nearer', () => {
  const sorted = (list: number[]): number[] => [...list].sort((a, b) => a - b);
  const distance = (a: number[], b: number[]): number => a.reduce((sum, v, i) => sum + (v - (b[i] as number)) ** 2, 0);
  const list = fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 6, maxLength: 6 });
  fc.assert(
    fc.property(list, list, (y, other) => {
      const fit = isotonicRegression(y);
      expect(fit).toEqual(sorted(fit));
      expect(distance(y, fit)).toBeLessThanOrEqual(distance(y, sorted(other)) + 1e-9);
      expect(fit.reduce((sum, v) => sum + v, 0)).toBeCloseTo(
        y.reduce((sum, v) => sum + v, 0),
        9,
      );
    }),
  );
});

test('isotonic regression of nothing, and of weights that are not positive', () => {
  expect(isotonicRegression([])).toEqual([]);
  expect(() => isotonicRegression([1, 2], { weights: [1, 0] })).toThrow(/weights: expected a positive number, got 0/);
});
