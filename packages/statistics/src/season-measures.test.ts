import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { abbottEfficacy } from './abbott-efficacy.ts';
import { circularDays } from './circular-day-of-year.ts';
import { type DegreeDayCutoff, degreeDays } from './degree-days.ts';
import { diseaseSeverityIndex } from './disease-severity-index.ts';
import { hendersonTiltonEfficacy } from './henderson-tilton-efficacy.ts';
import { areaUnderProgressCurve, areaUnderProgressStairs } from './progress-curve.ts';
import { schneiderOrelliEfficacy } from './schneider-orelli-efficacy.ts';
import { sunShepardEfficacy } from './sun-shepard-efficacy.ts';

describe('efficacy', () => {
  const count = fc.integer({ min: 1, max: 1000 });
  test('Sun–Shepard is Henderson–Tilton on the same counts; with equal groups before, so are Abbott’s and Schneider-Orelli’s', () => {
    fc.assert(
      fc.property(count, fc.nat(1000), count, count, (treatedBefore, treatedAfter, controlBefore, controlAfter) => {
        const ht = hendersonTiltonEfficacy({ treatedBefore, treatedAfter, controlBefore, controlAfter });
        const wanted = ht.defined ? ht.value : Number.NaN;
        const mortality = 1 - treatedAfter / treatedBefore;
        expect(sunShepardEfficacy(mortality, controlAfter / controlBefore - 1)).toMatchObject({
          value: expect.closeTo(wanted, 6),
        });
        const scaled = (treatedAfter / treatedBefore) * controlBefore;
        expect(abbottEfficacy(controlAfter, scaled)).toMatchObject({ value: expect.closeTo(wanted, 6) });
        if (controlAfter <= controlBefore && treatedAfter <= treatedBefore) {
          const natural = 1 - controlAfter / controlBefore;
          expect(schneiderOrelliEfficacy(mortality, natural)).toMatchObject({ value: expect.closeTo(wanted, 6) });
        }
      }),
    );
  });
  test('zero counts are named, never 0 or 100 %', () => {
    const counts = { treatedBefore: 5, treatedAfter: 1, controlBefore: 5, controlAfter: 5 };
    expect(hendersonTiltonEfficacy({ ...counts, treatedBefore: 0 })).toEqual({
      defined: false,
      reason: 'zero-treated-before',
    });
    expect(hendersonTiltonEfficacy({ ...counts, controlBefore: 0 })).toEqual({
      defined: false,
      reason: 'zero-control-before',
    });
    expect(hendersonTiltonEfficacy({ ...counts, controlAfter: 0 })).toEqual({
      defined: false,
      reason: 'zero-control-after',
    });
    expect(hendersonTiltonEfficacy({ ...counts, treatedAfter: 0 })).toEqual({ defined: true, value: 1 });
    expect(abbottEfficacy(0, 3)).toEqual({ defined: false, reason: 'zero-control-after' });
    expect(sunShepardEfficacy(0.5, -1)).toEqual({ defined: false, reason: 'zero-control-after' });
    expect(schneiderOrelliEfficacy(1, 1)).toEqual({ defined: false, reason: 'control-all-dead' });
    expect(() => hendersonTiltonEfficacy({ ...counts, treatedAfter: -1 })).toThrow(/from 0 up, got -1/);
  });
});

describe('degree-days', () => {
  /** The day's course at a share of the day, cut as the cutoff says, averaged over the day by the midpoint rule. */
  const integral = (
    course: (share: number) => number,
    lower: number,
    upper: number,
    cutoff: DegreeDayCutoff,
  ): number => {
    const steps = 200_000;
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const t = course((i + 0.5) / steps);
      const counted = {
        horizontal: Math.min(t, upper),
        intermediate: t > upper ? 2 * upper - t : t,
        vertical: t > upper ? lower : t,
      };
      const above = counted[cutoff] - lower;
      sum += cutoff === 'intermediate' ? (t > lower ? above : 0) : Math.max(0, above);
    }
    return sum / steps;
  };
  test.each(['horizontal', 'intermediate', 'vertical'] as const)(
    '%s cutoff against numerical integration',
    (cutoff) => {
      for (const [lowest, highest] of [
        [4, 16],
        [15, 35],
        [9, 33],
        [22, 36],
        [31, 38],
        [12, 28],
      ] as const) {
        const [m, a] = [(lowest + highest) / 2, (highest - lowest) / 2];
        const day = { lowest, highest };
        const thresholds = { lower: 10, upper: 30, cutoff };
        const sine = integral((s) => m + a * Math.sin(2 * Math.PI * s), 10, 30, cutoff);
        const triangle = integral((s) => lowest + 2 * a * (1 - Math.abs(2 * s - 1)), 10, 30, cutoff);
        // The midpoint rule's own error at a jump is one step of the day: 20 degrees / 200,000.
        expect(Math.abs(degreeDays(day, thresholds, 'sine') - sine)).toBeLessThan(3e-4);
        expect(Math.abs(degreeDays(day, thresholds, 'triangle') - triangle)).toBeLessThan(3e-4);
      }
    },
  );
  test('in °F, 1.8 times as many', () => {
    const f = (c: number): number => 32 + 1.8 * c;
    const celsius = degreeDays({ lowest: 7, highest: 31 }, { lower: 10, upper: 30 });
    expect(degreeDays({ lowest: f(7), highest: f(31) }, { lower: f(10), upper: f(30) })).toBeCloseTo(1.8 * celsius, 10);
  });
  test('a day without range, and misuse', () => {
    expect(degreeDays({ lowest: 12, highest: 12 }, { lower: 10 })).toBe(2);
    expect(degreeDays({ lowest: 9, highest: 9 }, { lower: 10 })).toBe(0);
    expect(() => degreeDays({ lowest: 5, highest: 4 }, { lower: 0 })).toThrow(/lowest ≤ highest, got 5 and 4/);
    expect(() => degreeDays({ lowest: 5, highest: 6 }, { lower: 3, upper: 3 })).toThrow(/lower < upper/);
    expect(() => degreeDays({ lowest: 5, highest: 6 }, { lower: 3 }, 'clamped-average')).toThrow(
      /upper threshold, got none/,
    );
  });
});

describe('mean day of the year', () => {
  test('moving all days moves the mean, round the turn of the year', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 60, max: 120 }), { minLength: 1, maxLength: 12 }),
        fc.integer({ min: 0, max: 364 }),
        (days, move) => {
          const [a, b] = [
            circularDays(days, 365),
            circularDays(
              days.map((d) => (d + move) % 365),
              365,
            ),
          ];
          if (!a.defined || !b.defined) throw new Error('expected both');
          const difference = (b.value.meanDay - a.value.meanDay - move + 3 * 365 + 182.5) % 365;
          expect(difference).toBeCloseTo(182.5, 6);
          expect(b.value.resultant).toBeCloseTo(a.value.resultant, 10);
        },
      ),
    );
  });
  test('one day, none, opposite ones', () => {
    expect(circularDays([40], 365)).toMatchObject({
      value: { meanDay: expect.closeTo(40, 9), standardDeviationDays: 0 },
    });
    expect(circularDays([], 365)).toEqual({ defined: false, reason: 'no-observations' });
    expect(circularDays([100, 283], 366)).toEqual({ defined: false, reason: 'opposed-directions' });
  });
});

describe('severity over a season', () => {
  test('a constant severity has its own share as relative area; splitting a straight stretch changes no curve area', () => {
    expect(areaUnderProgressCurve([0, 7, 20], [30, 30, 30], 100)).toMatchObject({
      value: { area: 600, relative: 0.3 },
    });
    expect(areaUnderProgressStairs([0, 10, 20], [30, 30, 30], 100)).toMatchObject({
      value: { area: 900, relative: 0.3 },
    });
    expect(areaUnderProgressCurve([0, 4, 10], [0, 40, 100], 100)).toEqual(
      areaUnderProgressCurve([0, 10], [0, 100], 100),
    );
  });
  test('too little, and misuse', () => {
    expect(areaUnderProgressCurve([3], [4], 100)).toEqual({ defined: false, reason: 'too-few-observations' });
    expect(areaUnderProgressStairs([], [], 100)).toEqual({ defined: false, reason: 'no-observations' });
    expect(() => areaUnderProgressCurve([3, 3], [1, 2], 100)).toThrow(/rising times, got 3 after 3/);
    expect(diseaseSeverityIndex([{ score: 2, count: 0 }], 5)).toEqual({ defined: false, reason: 'no-observations' });
    expect(diseaseSeverityIndex([{ score: 5, count: 4 }], 5)).toMatchObject({ value: { index: 1, incidence: 1 } });
    expect(() => diseaseSeverityIndex([{ score: 6, count: 1 }], 5)).toThrow(
      /score: expected a number from 0 to 5, got 6/,
    );
  });
});
