import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { benjaminiHochberg } from './benjamini-hochberg.ts';
import type { Defined } from './defined.ts';
import { gearysC } from './gearys-c.ts';
import { getisOrd, getisOrdStar, hotSpots } from './getis-ord.ts';
import { localMoransI, moransI } from './morans-i.ts';
import { binaryWeights, distanceNeighbours, includingSelf, rowStandardised, weightSums } from './spatial-weights.ts';

/** A row of n units, each next to the one before and after. */
const inRow = (n: number): number[][] =>
  Array.from({ length: n }, (_, i) => [i - 1, i + 1].filter((j) => j >= 0 && j < n));
const values = fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 5, maxLength: 20 });

describe('laws', () => {
  test('Moran’s I: unit of measurement, and the mean of the local ones', () => {
    fc.assert(
      fc.property(values, (x) => {
        const weights = rowStandardised(binaryWeights(inRow(x.length)));
        const [a, b] = [
          moransI(x, weights),
          moransI(
            x.map((v) => 100 - 3 * v),
            weights,
          ),
        ];
        if (!a.defined || !b.defined) return;
        expect(b.value.moransI).toBeCloseTo(a.value.moransI, 10);
        const local = localMoransI(x, weights);
        if (!local.defined) throw new Error(local.reason);
        expect(local.value.reduce((sum, i) => sum + i, 0) / x.length).toBeCloseTo(a.value.moransI, 10);
      }),
    );
  });
  test('the randomisation moments are those of all permutations', () => {
    const x = [3, 1, 4, 1, 5, 9];
    const weights = rowStandardised(binaryWeights([[1, 2], [0], [0, 3, 4], [2], [2, 5], [4, 1]]));
    const all: number[][] = permutations(x);
    const moran = all.map((p) => sure(moransI(p, weights)).moransI);
    const geary = all.map((p) => sure(gearysC(p, weights)).gearysC);
    const moranTest = sure(sure(moransI(x, weights)).randomisation);
    const gearyTest = sure(sure(gearysC(x, weights)).randomisation);
    expect(average(moran)).toBeCloseTo(moranTest.expectation, 12);
    expect(average(moran.map((i) => (i - moranTest.expectation) ** 2))).toBeCloseTo(moranTest.variance, 12);
    expect(average(geary)).toBeCloseTo(1, 12);
    expect(average(geary.map((c) => (c - 1) ** 2))).toBeCloseTo(gearyTest.variance, 12);
  });
  test('Gi and Gi* have mean 0 and variance 1 over all permutations, at every unit', () => {
    const x = [3, 1, 4, 1, 5, 9];
    const weights = binaryWeights([[1, 2], [0], [0, 3, 4], [2], [2, 5], [4, 1]]);
    const star = permutations(x).map((p) => sure(sure(getisOrdStar(p, weights))[2] as Defined<number>));
    expect(average(star)).toBeCloseTo(0, 12);
    expect(average(star.map((z) => z * z))).toBeCloseTo(1, 12);
  });
  test('Gi* is the same for binary and for row-standardised weights that include the unit', () => {
    fc.assert(
      fc.property(values, (x) => {
        const binary = binaryWeights(inRow(x.length));
        const [a, b] = [getisOrdStar(x, binary), getisOrdStar(x, rowStandardised(includingSelf(binary)))];
        expect(b.defined).toBe(a.defined);
        if (a.defined && b.defined) {
          for (const [i, z] of a.value.entries()) expect(sure(b.value[i] as Defined<number>)).toBeCloseTo(sure(z), 10);
        }
      }),
    );
  });
  test('adjusted p-values keep the order and are never below the plain ones', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 30 }), (p) => {
        const adjusted = benjaminiHochberg(p);
        for (const [i, q] of adjusted.entries()) {
          expect(q).toBeGreaterThanOrEqual(p[i] as number);
          expect(q).toBeLessThanOrEqual(1);
          for (const [j, r] of adjusted.entries())
            if ((p[i] as number) < (p[j] as number)) expect(q).toBeLessThanOrEqual(r);
        }
      }),
    );
  });
  test('distance neighbours against every pair', () => {
    const point = fc.tuple(fc.integer({ min: -20, max: 20 }), fc.integer({ min: -20, max: 20 }));
    fc.assert(
      fc.property(fc.array(point, { maxLength: 40 }), fc.integer({ min: 1, max: 15 }), (points, distance) => {
        const x = points.map(([a]) => a);
        const y = points.map(([, b]) => b);
        const brute = points.map(([a, b], i) =>
          points.flatMap(([c, d], j) => (i !== j && Math.hypot(a - c, b - d) <= distance ? [j] : [])),
        );
        expect(distanceNeighbours(x, y, distance)).toEqual(brute);
      }),
    );
  });
  test('S₁ of one-sided links is that of the full double sum', () => {
    expect(
      weightSums([
        [{ to: 1, weight: 2 }],
        [
          { to: 0, weight: 3 },
          { to: 2, weight: 5 },
        ],
        [],
      ]),
    ).toEqual({
      s0: 10,
      s1: (2 * 25 + 2 * 25) / 2,
      s2: 5 ** 2 + 10 ** 2 + 5 ** 2,
    });
  });
});

describe('degenerate input', () => {
  const row = binaryWeights(inRow(5));
  test('all equal, no links, too few, nothing', () => {
    for (const statistic of [moransI, gearysC]) {
      expect(statistic([2, 2, 2, 2, 2], row)).toEqual({ defined: false, reason: 'no-variation' });
      expect(statistic([1, 2], [[], []])).toEqual({ defined: false, reason: 'no-links' });
      expect(statistic([1, 2, 3], binaryWeights(inRow(3)))).toEqual({ defined: false, reason: 'too-few-observations' });
      expect(statistic([], [])).toEqual({ defined: false, reason: 'no-observations' });
    }
    expect(getisOrdStar([2, 2, 2, 2, 2], row)).toEqual({ defined: false, reason: 'no-variation' });
    expect(hotSpots([1], [[]])).toEqual({ defined: false, reason: 'too-few-observations' });
  });
  test('everyone neighbours everyone: the test is undefined, not infinite', () => {
    const everyone = binaryWeights([0, 1, 2, 3, 4].map((i) => [0, 1, 2, 3, 4].filter((j) => j !== i)));
    expect(moransI([1, 5, 2, 8, 4], everyone)).toMatchObject({ value: { randomisation: { reason: 'all-linked' } } });
    expect(getisOrdStar([1, 5, 2, 8, 4], everyone)).toMatchObject({
      value: [{ reason: 'all-linked' }, {}, {}, {}, {}],
    });
    expect(sure(hotSpots([1, 5, 2, 8, 4], everyone)).every(({ spot }) => spot === 'none')).toBe(true);
  });
  test('a unit without neighbours is left out of the global measures and counted', () => {
    const [alone, without] = [
      moransI([1, 2, 4, 8, 99], [...binaryWeights(inRow(4)), []]),
      moransI([1, 2, 4, 8], binaryWeights(inRow(4))),
    ];
    expect(sure(alone)).toEqual({ ...sure(without), islands: 1 });
    expect(getisOrd([1, 2, 4, 8, 99], [...binaryWeights(inRow(4)), []])).toMatchObject({
      value: { 4: { reason: 'no-links' } },
    });
  });
  test('misuse is told', () => {
    expect(() => binaryWeights([[0]])).toThrow(/got 0 for unit 0/);
    expect(() => binaryWeights([[5], []])).toThrow(/other units 0 to 1 once each, got 5/);
    expect(() => moransI([1, Number.POSITIVE_INFINITY], [[], []])).toThrow(/finite/);
  });
});

function sure<T>(result: Defined<T>): T {
  if (!result.defined) throw new Error(result.reason);
  return result.value;
}

function average(list: number[]): number {
  return list.reduce((sum, v) => sum + v, 0) / list.length;
}

function permutations(list: number[]): number[][] {
  if (list.length < 2) return [list];
  return list.flatMap((head, i) =>
    permutations([...list.slice(0, i), ...list.slice(i + 1)]).map((rest) => [head, ...rest]),
  );
}
