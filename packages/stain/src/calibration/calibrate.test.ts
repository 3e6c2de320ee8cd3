import { describe, expect, test } from 'vitest';
import { calibrate } from './calibrate.ts';
import { fitDoseCoefficient } from './fit-dose-coefficient.ts';
import { equivalentDose, meanDose, type QuadratDose } from './quadrat-dose.ts';

const K = 0.9;
/** Shares are made to 1e-16; the fit stops within 1e-10 of the predictors. */
const FIT = 1e-9;

function plot(id: number, dose: number, stainedShare = -Math.expm1(-K * dose), block = `B${id % 4}`): QuadratDose {
  return { quadratId: `Q${id}`, block, areaM2: 1, stainedShare, parts: [{ share: 1, dose }] };
}

const doses = [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.7, 0.9, 1.2, 1.6, 2, 0.15];
const exact = doses.map((dose, i) => plot(i, dose));
const missing = (quadrats: readonly QuadratDose[]) => calibrate(quadrats).shortfalls.map((one) => one.missing);

describe('the equivalent dose', () => {
  test('stains the plot as much as its uneven doses do (closed form)', () => {
    const uneven = {
      parts: [
        { share: 0.5, dose: 1 },
        { share: 0.5, dose: 0 },
      ],
    };
    expect(equivalentDose(uneven, 1)).toBeCloseTo(-Math.log(0.5 * Math.exp(-1) + 0.5), 15);
    expect(meanDose(uneven)).toBe(0.5);
  });

  test('is the mean dose where k is small, the least dose where k is great, and always finite', () => {
    const uneven = {
      parts: [
        { share: 0.3, dose: 2 },
        { share: 0.7, dose: 0.5 },
      ],
    };
    expect(equivalentDose(uneven, 1e-9)).toBeCloseTo(meanDose(uneven), 8);
    expect(equivalentDose(uneven, 1e4)).toBeCloseTo(0.5, 3);
    expect(equivalentDose(uneven, 0)).toBe(meanDose(uneven));
  });
});

describe('the fit', () => {
  test('finds the k that shares without error were made with', () => {
    const { calibration } = calibrate(exact);
    expect(Math.abs((calibration?.doseCoefficient ?? 0) / K - 1)).toBeLessThan(FIT);
    expect(calibration?.interval.upper).toBeCloseTo(K, 6);
    const error = calibration?.leaveOneBlockOut;
    expect(error?.defined && error.value.rootMeanSquare).toBeLessThan(FIT);
    expect(error?.defined && error.value.blocks).toBe(4);
  });

  test('finds it from plots across a drip line too, which their mean dose would miss', () => {
    const across = doses.map((dose, i): QuadratDose => {
      const parts = [
        { share: 0.5, dose: 2 * dose },
        { share: 0.5, dose: 0 },
      ];
      return { ...plot(i, dose), stainedShare: 0.5 * -Math.expm1(-K * 2 * dose), parts };
    });
    expect(Math.abs((calibrate(across).calibration?.doseCoefficient ?? 0) / K - 1)).toBeLessThan(FIT);
    const byMean = fitDoseCoefficient(across.map((one) => ({ ...one, parts: [{ share: 1, dose: meanDose(one) }] })));
    expect(byMean.defined && byMean.value.doseCoefficient).toBeLessThan(0.8 * K);
  });

  test('doses scaled by a factor scale k by its inverse', () => {
    const doubled = exact.map((one) => ({
      ...one,
      parts: one.parts.map((part) => ({ ...part, dose: 2 * part.dose })),
    }));
    expect(calibrate(doubled).calibration?.doseCoefficient).toBeCloseTo(K / 2, 8);
  });

  test('the order of the quadrats changes nothing but rounding', () => {
    const noisy = exact.map((one, i) => ({
      ...one,
      stainedShare: Math.min(1, one.stainedShare * (1 + 0.1 * Math.sin(7 * i))),
    }));
    const there = calibrate(noisy).calibration;
    const back = calibrate([...noisy].reverse()).calibration;
    expect(back?.doseCoefficient).toBeCloseTo(there?.doseCoefficient ?? Number.NaN, 10);
    expect(back?.logStandardError).toBeCloseTo(there?.logStandardError ?? Number.NaN, 10);
  });
});

describe('what is not enough is named', () => {
  test('no quadrats, few, of one block, of one dose', () => {
    expect(missing([])).toEqual(['quadrats', 'blocks']);
    expect(missing(exact.slice(0, 9))).toEqual(['quadrats']);
    expect(missing(exact.map((one) => ({ ...one, block: null })))).toEqual(['blocks']);
    expect(missing(exact.map((_, i) => plot(i, 0.3)))).toEqual(['spread-of-dose']);
  });

  test('perfect separation: all clean, all stained through and through', () => {
    expect(missing(exact.map((one) => ({ ...one, stainedShare: 0 })))).toEqual(['shares-between']);
    expect(missing(exact.map((one) => ({ ...one, stainedShare: 1 })))).toEqual(['shares-between']);
  });

  test('some clean and some stained through is a fit, and a heavy dose with a clean plot no fault', () => {
    const contrary = exact.map((one, i) => ({ ...one, stainedShare: i % 2 }));
    const { calibration, shortfalls } = calibrate(contrary);
    expect(shortfalls).toEqual([]);
    expect(Number.isFinite(calibration?.doseCoefficient)).toBe(true);
  });

  test('stain where nothing falls is blamed on no tree and moves no figure', () => {
    const rust = [plot(90, 0, 0.4), plot(91, 0, 0)];
    const outcome = calibrate([...exact, ...rust]);
    expect(outcome.withoutCause).toEqual([{ quadratId: 'Q90', stainedShare: 0.4 }]);
    expect(outcome.cleanWithoutDose).toBe(1);
    expect(outcome.calibration).toEqual(calibrate(exact).calibration);
  });

  test('a share beyond 0–1 is misuse', () => {
    expect(() => calibrate([...exact, plot(99, 1, 1.2)])).toThrow(RangeError);
  });
});
