import * as statistics from '@crownfall/statistics';
import { describe, expect, test } from 'vitest';
import { rOutputs as r } from './statistics/r-outputs.ts';

/** Relative differences allowed. R prints 15 digits and loses some itself at large degrees of freedom. */
const RELATIVE = { normal: 1e-13, chiSquare: 1e-12, studentT: 1e-12, f: 1e-11 };

/**
 * R's own quantiles are good to about 1e-10 for F (at F(1, 1), p = 0.001, by the closed form tan²(πp/2)) and 1e-11 for t, so
 * they cannot show more; the closed forms and round trips below do.
 */
const QUANTILES_OF_R = { studentT: 1e-11, f: 1e-9 };

/** Where the value is 0 R prints rounding, such as 2.6e-16 for the median of Student's t. */
const ROUNDING_OF_R = 1e-15;

/** Rounding of a quantile's logarithm times the slope of the share there, steep at a million degrees of freedom. */
const ROUND_TRIP = 1e-11;

type Row = readonly number[];

function compare(rows: readonly Row[], fn: (...inputs: number[]) => number, relative: number): void {
  for (const row of rows) {
    const inputs = row.slice(0, -1);
    const wanted = row.at(-1) as number;
    const got = fn(...inputs);
    const allowed = relative * Math.abs(wanted) + (Math.abs(wanted) < ROUNDING_OF_R && got === 0 ? ROUNDING_OF_R : 0);
    expect(Math.abs(got - wanted), `(${inputs.join(', ')}): got ${got}, R gives ${wanted}`).toBeLessThanOrEqual(
      allowed,
    );
  }
}

describe('distributions against R 4.2.2', () => {
  test('normal', () => {
    compare(r.normalCdf, statistics.normalCdf, RELATIVE.normal);
    compare(r.normalQuantile, statistics.normalQuantile, RELATIVE.normal);
  });
  test('chi-square', () => {
    compare(r.chiSquareCdf, statistics.chiSquareCdf, RELATIVE.chiSquare);
    compare(r.chiSquareUpper, statistics.chiSquareUpper, RELATIVE.chiSquare);
    compare(r.chiSquareQuantile, statistics.chiSquareQuantile, RELATIVE.chiSquare);
  });
  test('Student’s t', () => {
    compare(r.studentTCdf, statistics.studentTCdf, RELATIVE.studentT);
    compare(r.studentTQuantile, statistics.studentTQuantile, QUANTILES_OF_R.studentT);
  });
  test('F', () => {
    compare(r.fCdf, statistics.fCdf, RELATIVE.f);
    compare(r.fUpper, statistics.fUpper, RELATIVE.f);
    compare(r.fQuantile, statistics.fQuantile, QUANTILES_OF_R.f);
  });
});

test('ln Γ against R 4.2.2: 1e-14, relative above 1 and absolute below', () => {
  for (const [z, wanted] of r.logGamma as [number, number][]) {
    expect(Math.abs(statistics.logGamma(z) - wanted)).toBeLessThanOrEqual(1e-14 * Math.max(1, Math.abs(wanted)));
  }
});

describe('closed forms', () => {
  test.each([0.001, 0.025, 0.3, 0.5, 0.9, 0.975])('quantiles at %f', (p) => {
    const closed = [
      [statistics.fQuantile(p, 1, 1), Math.tan((Math.PI / 2) * p) ** 2],
      [statistics.fQuantile(p, 2, 2), p / (1 - p)],
      [statistics.studentTQuantile(p, 1), -1 / Math.tan(Math.PI * p)],
      [statistics.studentTQuantile(p, 2), (2 * p - 1) / Math.sqrt(2 * p * (1 - p))],
      [statistics.chiSquareQuantile(p, 2), -2 * Math.log1p(-p)],
    ] as const;
    for (const [got, wanted] of closed)
      expect(Math.abs(got - wanted)).toBeLessThanOrEqual(1e-13 * Math.abs(wanted) + 1e-15);
  });
});

test('a quantile’s share is the share asked for', () => {
  for (const freedom of [0.5, 1, 3.7, 100, 12345, 1e6]) {
    for (const p of [1e-10, 0.001, 0.3, 0.5]) {
      const { chiSquareCdf, chiSquareQuantile, fCdf, fQuantile, studentTCdf, studentTQuantile } = statistics;
      const shares = [
        chiSquareCdf(chiSquareQuantile(p, freedom), freedom),
        studentTCdf(studentTQuantile(p, freedom), freedom),
        fCdf(fQuantile(p, freedom, 4.5), freedom, 4.5),
        fCdf(fQuantile(p, 3, freedom), 3, freedom),
      ];
      for (const share of shares) expect(Math.abs(share - p) / p).toBeLessThanOrEqual(ROUND_TRIP);
    }
  }
});

// Known-answer vectors of the authors' Random123 library, file kat_vectors, lines "philox4x32 7" and "philox4x32 10".
describe('Philox4x32 known answers', () => {
  const zeros = [0, 0, 0, 0, 0, 0];
  const ones = [0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff];
  const digitsOfPi = [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344, 0xa4093822, 0x299f31d0];
  test.each([
    [7, zeros, '5f6fb709 0d893f64 4f121f81 4f730a48'],
    [7, ones, '5207ddc2 45165e59 4d8ee751 8c52f662'],
    [7, digitsOfPi, '4dfccaba 190a87f0 c47362ba b6b5242a'],
    [10, zeros, '6627e8d5 e169c58d bc57ac4c 9b00dbd8'],
    [10, ones, '408f276d 41c83b0e a20bc7c6 6d5451fd'],
    [10, digitsOfPi, 'd16cfe09 94fdcceb 5001e420 24126ea1'],
  ])('%i rounds of %o', (rounds, input, wanted) => {
    const block = Uint32Array.from(input.slice(0, 4));
    statistics.philox4x32(block, input[4] as number, input[5] as number, rounds);
    expect(Array.from(block, (word) => word.toString(16).padStart(8, '0')).join(' ')).toBe(wanted);
  });
});

describe('false discovery rate', () => {
  // Benjamini and Hochberg (1995), JRSS B 57, section 4: 15 p-values of which 4 are rejected at 5 % (from memory).
  test('Benjamini and Hochberg’s example, adjusted values as R’s p.adjust', () => {
    const adjusted = statistics.benjaminiHochberg(r.benjaminiHochberg.p);
    for (const [i, value] of adjusted.entries()) {
      expect(value).toBeCloseTo(r.benjaminiHochberg.adjusted[i] as number, 12);
    }
    expect(adjusted.filter((p) => p <= 0.05)).toHaveLength(4);
  });
});
