import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blandAltman } from './bland-altman.ts';
import type { Defined } from './defined.ts';
import { type IntraclassForm, type IntraclassResult, intraclassCorrelation } from './intraclass-correlation.ts';
import { linConcordance } from './lin-concordance.ts';

const pairs = fc.array(fc.tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 100 })), {
  minLength: 3,
  maxLength: 40,
});

describe('Lin’s concordance', () => {
  test('never beyond Pearson’s correlation, unchanged by swapping or by a common change of unit', () => {
    fc.assert(
      fc.property(pairs, (list) => {
        const x = list.map(([a]) => a);
        const y = list.map(([, b]) => b);
        const result = linConcordance(x, y);
        if (!result.defined) return;
        const { concordance, pearson, biasCorrection, interval } = result.value;
        expect(Math.abs(concordance)).toBeLessThanOrEqual(Math.abs(pearson) + 1e-12);
        expect(concordance).toBeCloseTo(pearson * biasCorrection, 12);
        expect(linConcordance(y, x)).toMatchObject({ value: { concordance: expect.closeTo(concordance, 12) } });
        const scaled = linConcordance(
          x.map((v) => 3 - 2 * v),
          y.map((v) => 3 - 2 * v),
        );
        expect(scaled).toMatchObject({ value: { concordance: expect.closeTo(concordance, 10) } });
        if (interval.defined) {
          expect(interval.value.lower).toBeLessThanOrEqual(concordance);
          expect(interval.value.upper).toBeGreaterThanOrEqual(concordance);
        }
      }),
    );
  });
  test('degenerate input', () => {
    expect(linConcordance([], [])).toEqual({ defined: false, reason: 'no-observations' });
    expect(linConcordance([40], [40])).toEqual({ defined: false, reason: 'no-variation' });
    expect(linConcordance([5, 5, 5], [1, 2, 3])).toEqual({ defined: false, reason: 'no-variation' });
    const perfect = linConcordance([1, 2, 3], [1, 2, 3]);
    expect(perfect).toMatchObject({ value: { concordance: 1, interval: { defined: false } } });
    expect(() => linConcordance([1], [1, 2])).toThrow(/equal lengths/);
    expect(() => linConcordance([1, Number.NaN], [1, 2])).toThrow(/finite numbers, got NaN at position 1/);
  });
});

describe('Bland and Altman', () => {
  test('a constant bias is found exactly', () => {
    const x = [10, 20, 50, 80];
    const result = blandAltman(
      x.map((v) => v + 8),
      x,
    );
    expect(result).toMatchObject({ value: { bias: 8, standardDeviation: 0, limits: { lower: 8, upper: 8 } } });
  });
  test('one tree has no limits', () => {
    expect(blandAltman([1], [2])).toEqual({ defined: false, reason: 'too-few-observations' });
    expect(blandAltman([], [])).toEqual({ defined: false, reason: 'no-observations' });
  });
});

describe('intraclass correlation', () => {
  test('adding a constant to one rater changes forms 1 and 2 but not form 3', () => {
    const ratings = [
      [9, 7],
      [6, 5],
      [8, 8],
      [2, 1],
    ];
    const shifted = ratings.map(([a, b]) => [a as number, (b as number) + 4]);
    const [before, after] = [intraclassCorrelation(ratings), intraclassCorrelation(shifted)];
    expect(sure(after, '3,1')).toBeCloseTo(sure(before, '3,1'), 12);
    expect(sure(after, '2,1')).toBeLessThan(sure(before, '2,1'));
    expect(sure(after, '1,1')).toBeLessThan(sure(before, '1,1'));
  });
  test('raters who agree entirely: 1, without an interval', () => {
    const result = intraclassCorrelation([
      [1, 1],
      [5, 5],
      [9, 9],
    ]);
    expect(result).toMatchObject({
      value: {
        forms: {
          '1,1': { coefficient: { value: 1 }, interval: { reason: 'no-variation' } },
          '2,k': { coefficient: { value: 1 } },
        },
      },
    });
  });
  test('one rater, one tree, nothing, all equal', () => {
    expect(intraclassCorrelation([[1], [2]])).toEqual({ defined: false, reason: 'one-rater' });
    expect(intraclassCorrelation([[1, 2]])).toEqual({ defined: false, reason: 'one-subject' });
    expect(intraclassCorrelation([])).toEqual({ defined: false, reason: 'no-observations' });
    expect(
      intraclassCorrelation([
        [3, 3],
        [3, 3],
      ]),
    ).toEqual({ defined: false, reason: 'no-variation' });
    expect(() => intraclassCorrelation([[1, 2], [3]])).toThrow(/equal lengths/);
  });
  test('no estimate or limit is ever NaN', () => {
    const row = fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 3, maxLength: 3 });
    fc.assert(
      fc.property(fc.array(row, { minLength: 2, maxLength: 6 }), (ratings) => {
        const result = intraclassCorrelation(ratings);
        if (!result.defined) return;
        for (const { coefficient, interval } of Object.values(result.value.forms)) {
          if (coefficient.defined) expect(coefficient.value).toBeLessThanOrEqual(1 + 1e-9);
          if (interval.defined)
            expect(Number.isFinite(interval.value.lower) && Number.isFinite(interval.value.upper)).toBe(true);
        }
      }),
    );
  });
});

function sure(result: Defined<IntraclassResult>, form: IntraclassForm): number {
  const coefficient = result.defined ? result.value.forms[form].coefficient : result;
  if (!coefficient.defined) throw new Error(coefficient.reason);
  return coefficient.value;
}
