import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { agreementTable } from './agreement-table.ts';
import { weightedKappa } from './weighted-kappa.ts';

const counts = fc.array(fc.array(fc.nat(20), { minLength: 4, maxLength: 4 }), { minLength: 4, maxLength: 4 });

describe('laws', () => {
  test('swapping the raters changes nothing', () => {
    fc.assert(
      fc.property(counts, (table) => {
        const swapped = table.map((_, i) => table.map((row) => row[i] as number));
        const [a, b] = [weightedKappa(table, 'quadratic'), weightedKappa(swapped, 'quadratic')];
        expect(a.defined).toBe(b.defined);
        if (a.defined && b.defined) {
          expect(a.value.kappa).toBeCloseTo(b.value.kappa, 12);
          expect(a.value.standardError).toBeCloseTo(b.value.standardError, 10);
        }
      }),
    );
  });

  test('own weights equal to the linear ones give the linear kappa, whatever their scale', () => {
    const steps = [0, 1, 2, 3];
    const own = steps.map((i) => steps.map((j) => 7 * Math.abs(i - j)));
    fc.assert(
      fc.property(counts, (table) => {
        const [a, b] = [weightedKappa(table, own), weightedKappa(table, 'linear')];
        if (a.defined && b.defined) expect(a.value.kappa).toBeCloseTo(b.value.kappa, 12);
      }),
    );
  });

  test('twice the ratings: the same kappa, the standard error over √2', () => {
    const table = [
      [7, 2],
      [3, 9],
    ];
    const once = weightedKappa(table, 'unweighted');
    const twice = weightedKappa(
      table.map((row) => row.map((n) => 2 * n)),
      'unweighted',
    );
    if (!once.defined || !twice.defined) throw new Error('expected both');
    expect(twice.value.kappa).toBeCloseTo(once.value.kappa, 14);
    expect(twice.value.standardError).toBeCloseTo(once.value.standardError / Math.SQRT2, 14);
  });

  test('full agreement is 1 with no error; independent margins are 0', () => {
    expect(
      weightedKappa(
        [
          [5, 0],
          [0, 5],
        ],
        'linear',
      ),
    ).toMatchObject({ value: { kappa: 1, standardError: 0 } });
    expect(
      weightedKappa(
        [
          [4, 8],
          [6, 12],
        ],
        'linear',
      ),
    ).toMatchObject({ value: { kappa: expect.closeTo(0, 14) } });
  });
});

describe('degenerate input', () => {
  test('no ratings', () => {
    expect(
      weightedKappa(
        [
          [0, 0],
          [0, 0],
        ],
        'linear',
      ),
    ).toEqual({ defined: false, reason: 'no-observations' });
    expect(weightedKappa([], 'linear')).toEqual({ defined: false, reason: 'no-observations' });
  });
  test('both raters always gave the same one class', () => {
    expect(
      weightedKappa(
        [
          [9, 0],
          [0, 0],
        ],
        'linear',
      ),
    ).toEqual({ defined: false, reason: 'no-variation' });
  });
  test('misuse is told', () => {
    expect(() => weightedKappa([[1, 2]], 'linear')).toThrow(/equal lengths/);
    expect(() =>
      weightedKappa(
        [
          [1, -2],
          [0, 1],
        ],
        'linear',
      ),
    ).toThrow(/from 0 up, got -2/);
    expect(() =>
      weightedKappa(
        [
          [1, 2],
          [0, 1],
        ],
        [
          [1, 1],
          [1, 0],
        ],
      ),
    ).toThrow(/diagonal/);
    expect(() => agreementTable([0, 2], [0, 1], 2)).toThrow(/classes 0 to 1, got 2/);
  });
});

test('a table is counted from two lists', () => {
  expect(agreementTable([0, 1, 1, 2], [0, 1, 0, 2], 3)).toEqual([
    [1, 0, 0],
    [1, 1, 0],
    [0, 0, 1],
  ]);
});
