import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BinomialModel } from './binomial-model.ts';
import { fitBinomial } from './binomial-regression.ts';
import { leastSquares } from './least-squares.ts';
import { coefficientInterval, predictShare } from './regression-inference.ts';
import { findSeparation } from './separation.ts';

const fitted = (model: BinomialModel) => {
  const fit = fitBinomial(model);
  if (!fit.defined) throw new Error(fit.reason);
  return fit.value;
};
const x = [1, 2, 3, 4, 5, 6];
const mixed: BinomialModel = {
  shares: [0.1, 0.3, 0.2, 0.6, 0.5, 0.9],
  weights: [10, 10, 10, 10, 10, 10],
  terms: [{ name: 'x', values: x }],
  link: 'cloglog',
  family: 'binomial',
};

describe('laws', () => {
  test('intercept alone has the closed form of the pooled share, for both links', () => {
    const model = { ...mixed, terms: [] };
    const pooled = 2.6 / 6;
    expect(fitted({ ...model, link: 'logit' }).coefficients[0]).toBeCloseTo(Math.log(pooled / (1 - pooled)), 12);
    expect(fitted(model).coefficients[0]).toBeCloseTo(Math.log(-Math.log(1 - pooled)), 12);
  });
  test('logit: fitted counts sum to observed counts, also along each term (score equations)', () => {
    const fit = fitted({ ...mixed, link: 'logit' });
    const excess = fit.residuals.response;
    expect(excess.reduce((sum, r) => sum + 10 * r, 0)).toBeCloseTo(0, 9);
    expect(excess.reduce((sum, r, i) => sum + 10 * r * (x[i] as number), 0)).toBeCloseTo(0, 8);
  });
  test('an offset equal to a term takes one off its coefficient', () => {
    const plain = fitted(mixed);
    const offset = fitted({ ...mixed, offset: x });
    expect(offset.coefficients[1]).toBeCloseTo((plain.coefficients[1] as number) - 1, 9);
    expect(offset.deviance).toBeCloseTo(plain.deviance, 10);
  });
  test('doses twice as large: k is half as large (cloglog with offset ln u)', () => {
    const u = [0.1, 0.4, 0.3, 0.9, 0.8, 2];
    const calibration = { ...mixed, terms: [], family: 'quasi-binomial' as const };
    const once = fitted({ ...calibration, offset: u.map(Math.log) });
    const twice = fitted({ ...calibration, offset: u.map((dose) => Math.log(2 * dose)) });
    expect(Math.exp(twice.coefficients[0] as number)).toBeCloseTo(Math.exp(once.coefficients[0] as number) / 2, 10);
  });
  test('one observation of weight 2 is two of weight 1; weight 0 is none', () => {
    const twice = fitted({ ...mixed, weights: [2, 1, 1, 1, 1, 1] });
    const repeated = fitted({
      ...mixed,
      shares: [0.1, ...(mixed.shares as number[]), 0.7],
      weights: [1, 1, 1, 1, 1, 1, 1, 0],
      terms: [{ name: 'x', values: [1, ...x, 100] }],
    });
    for (const [j, b] of twice.coefficients.entries()) expect(repeated.coefficients[j]).toBeCloseTo(b, 9);
    expect(repeated.residualFreedom).toBe(5);
  });
  test('quasi-binomial scales standard errors by the root of the dispersion', () => {
    const [plain, quasi] = [fitted(mixed), fitted({ ...mixed, family: 'quasi-binomial' })];
    if (!plain.standardErrors.defined || !quasi.standardErrors.defined || !quasi.dispersion.defined)
      throw new Error('expected');
    const ratio = (quasi.standardErrors.value[1] as number) / (plain.standardErrors.value[1] as number);
    expect(ratio ** 2).toBeCloseTo(quasi.dispersion.value, 12);
    expect(quasi.likelihood).toEqual({ defined: false, reason: 'not-whole-counts' });
  });
  test('leverages sum to the number of coefficients', () => {
    expect(fitted(mixed).leverages.reduce((sum, h) => sum + h, 0)).toBeCloseTo(2, 10);
  });
  // Shares far from what the offsets say. R 4.2.2's glm diverges here (to 8e14); its optim (BFGS) finds 1.66138, 0.01003 with a
  // negative log-likelihood of 9.6182334296.
  test('cloglog: the maximum is found where expected weights vanish', () => {
    const shares = [1, 1, 1, 0.1192114681292541, 1, 1, 0.999858152727651, 0.9387555616095634, 0];
    const values = [3, 0, -1, 1, 1, 2, 3, 0, 0];
    const offset = [
      -0.09045246812702956, -2.8184525211049425, -5.835916400256147, -3.655083623390196, 3.946172612773484,
      -2.5484966981242976, 5.73106976202809, 0.7446094273542947, -1.0979014604170825,
    ];
    const terms = [{ name: 'x', values }];
    const fit = fitted({ shares, terms, offset, link: 'cloglog', family: 'quasi-binomial' });
    expect(fit.coefficients[0]).toBeCloseTo(1.66138, 4);
    expect(fit.coefficients[1]).toBeCloseTo(0.01003, 4);
    const loss = shares.reduce((sum, y, i) => {
      const hazard = Math.exp(fit.predictors[i] as number);
      return sum - (y === 0 ? 0 : y * Math.log(-Math.expm1(-hazard))) + (1 - y) * hazard;
    }, 0);
    expect(loss).toBeLessThanOrEqual(9.6182334295787 + 1e-9);
  });
  test('random shares: a fit that is settled or a reason, never NaN', () => {
    const share = fc.oneof(fc.constantFrom(0, 1), fc.double({ min: 0, max: 1, noNaN: true }));
    const row = fc.tuple(share, fc.integer({ min: -3, max: 3 }), fc.double({ min: -6, max: 6, noNaN: true }));
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1, maxLength: 12 }),
        fc.constantFrom('logit' as const, 'cloglog' as const),
        (rows, link) => {
          const fit = fitBinomial({
            shares: rows.map(([y]) => y),
            terms: [{ name: 'x', values: rows.map(([, v]) => v) }],
            offset: rows.map(([, , o]) => o),
            link,
            family: 'quasi-binomial',
          });
          if (fit.defined) expect(JSON.stringify(fit.value)).not.toMatch(/[:[,]null/);
          else expect(['separation', 'collinear-terms', 'not-converged']).toContain(fit.reason);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('degenerate input', () => {
  const separated: BinomialModel = { ...mixed, shares: [0, 0, 0, 1, 1, 1], link: 'logit' };
  test.each(['logit', 'cloglog'] as const)('%s: perfect and partial separation are named', (link) => {
    expect(fitBinomial({ ...separated, link })).toEqual({ defined: false, reason: 'separation' });
    // One value of x with both outcomes: still no finite estimate.
    const partial = {
      ...separated,
      link,
      shares: [0, 0, 0, 1, 1, 1],
      terms: [{ name: 'x', values: [1, 2, 3, 3, 4, 5] }],
    };
    expect(fitBinomial(partial)).toEqual({ defined: false, reason: 'separation' });
    // The outcomes overlap: estimates exist.
    expect(fitBinomial({ ...separated, link, shares: [0, 0, 1, 0, 1, 1] }).defined).toBe(true);
  });
  test('all quadrats clean, or all stained', () => {
    for (const share of [0, 1]) {
      const model = { ...mixed, shares: x.map(() => share), terms: [], offset: x.map(Math.log) };
      expect(fitBinomial(model)).toEqual({ defined: false, reason: 'separation' });
    }
  });
  test('separation is graded', () => {
    const columns = [x.map(() => 1), x];
    const ones = x.map(() => 1);
    expect(findSeparation(columns, [0, 0, 0, 1, 1, 1], ones)).toBe('complete');
    expect(findSeparation([ones, [1, 2, 3, 3, 4, 5]], [0, 0, 0, 1, 1, 1], ones)).toBe('quasi');
    expect(findSeparation(columns, [0, 0, 1, 0, 1, 1], ones)).toBe('none');
  });
  test('collinear terms, no observations, no freedom', () => {
    const double = { name: 'double', values: x.map((v) => 2 * v) };
    expect(fitBinomial({ ...mixed, terms: [...mixed.terms, double] })).toEqual({
      defined: false,
      reason: 'collinear-terms',
    });
    expect(fitBinomial({ ...mixed, weights: [0, 0, 0, 0, 0, 0] })).toEqual({
      defined: false,
      reason: 'no-observations',
    });
    const one = fitted({ shares: [0.4], terms: [], link: 'cloglog', family: 'quasi-binomial' });
    expect(one.standardErrors).toEqual({ defined: false, reason: 'no-residual-freedom' });
    expect(coefficientInterval(one, '(intercept)')).toEqual({ defined: false, reason: 'no-residual-freedom' });
    expect(predictShare(one, [1])).toEqual({ defined: false, reason: 'no-residual-freedom' });
  });
  test('misuse is told', () => {
    expect(() => fitBinomial({ ...mixed, shares: [0.1, 0.2, 1.4, 0, 0, 0] })).toThrow(
      /shares: expected a number from 0 to 1, got 1.4/,
    );
    expect(() => fitBinomial({ ...mixed, offset: [1] })).toThrow(/shares and offset: expected equal lengths/);
    expect(() => coefficientInterval(fitted(mixed), 'y')).toThrow(/one of \(intercept\), x, got y/);
  });
});

test('least squares solves a line exactly, and a Hilbert design to the digits its condition leaves', () => {
  const line = leastSquares(
    [
      [1, 1, 1],
      [0, 1, 2],
    ],
    [1, 3, 5],
    [1, 1, 1],
  );
  expect(line).toMatchObject({ value: { coefficients: [expect.closeTo(1, 12), expect.closeTo(2, 12)] } });
  const hilbert = [0, 1, 2, 3, 4].map((j) => [0, 1, 2, 3, 4, 5, 6].map((i) => 1 / (i + j + 1)));
  const z = [0, 1, 2, 3, 4, 5, 6].map((i) => hilbert.reduce((sum, column) => sum + (column[i] as number), 0));
  const fit = leastSquares(
    hilbert,
    z,
    z.map(() => 1),
  );
  if (!fit.defined) throw new Error(fit.reason);
  for (const b of fit.value.coefficients) expect(b).toBeCloseTo(1, 9);
});
