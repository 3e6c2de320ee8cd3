/**
 * Otsu's threshold. Source: Otsu 1979, IEEE Trans. SMC 9:62–66 (from memory). The histogram 8 7 2 6 9 4 of a 6 × 6 image is
 * a common teaching example (within-class variance 0.4909); all values with scikit-image 0.19.3 `threshold_otsu` and by
 * the definition in numpy 1.24.2.
 */
import { middleOfCut, otsu } from '@crownfall/imagery';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const TOLERANCE = 1e-9;

const CASES = [
  // histogram, level, last tied level, between, total, η
  [[8, 7, 2, 6, 9, 4], 2, 2, 2.628714692504682, 3.119598765432099, 0.8426451252748127],
  [
    [1, 4, 9, 14, 9, 5, 2, 1, 0, 2, 6, 11, 13, 8, 3, 1],
    7,
    8,
    18.176300053941763,
    20.130539073349325,
    0.9029216747605748,
  ],
  [[5, 5, 5, 5], 1, 1, 1, 1.25, 0.8],
  [[10, 0, 0, 0, 10], 0, 3, 4, 4, 1],
] as const;

describe('otsu', () => {
  test.each(CASES)('%j is cut after level %i (ties to %i)', (histogram, level, last, between, total, eta) => {
    const cut = otsu(histogram);
    expect(cut).toMatchObject({ level, lastLevel: last });
    expect(Math.abs((cut?.betweenVariance ?? 0) - between)).toBeLessThan(TOLERANCE);
    expect(Math.abs((cut?.totalVariance ?? 0) - total)).toBeLessThan(TOLERANCE);
    expect(Math.abs((cut?.separability ?? 0) - eta)).toBeLessThan(TOLERANCE);
  });

  test('the classes of the teaching example: within-class variance 0.4909', () => {
    const cut = otsu(CASES[0][0]);
    if (cut === null) throw new Error('no cut');
    const within = cut.lowerShare * cut.lowerSd ** 2 + (1 - cut.lowerShare) * cut.upperSd ** 2;
    expect(Math.abs(within - 0.49088407292741687)).toBeLessThan(TOLERANCE);
  });

  test('ties: the first level is the cut, the threshold lies in the middle of them', () => {
    const cut = otsu([10, 0, 0, 0, 10]);
    expect(cut && middleOfCut(cut)).toBe(2);
  });

  test('no cut in empty histograms and those of one level', () => {
    for (const histogram of [[], [0, 0], [0, 9, 0]]) expect(otsu(histogram)).toBeNull();
    expect(() => otsu([1, -1])).toThrow(RangeError);
  });

  test('law: the cut does not change with the size of the sample, and mirrors with the histogram', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 2, maxLength: 40 }), (histogram) => {
        const cut = otsu(histogram);
        if (cut === null) return;
        expect(otsu(histogram.map((n) => n * 8))?.level).toBe(cut.level);
        expect(otsu(histogram.toReversed())?.lastLevel).toBe(histogram.length - 2 - cut.level);
        const within = cut.lowerShare * cut.lowerSd ** 2 + (1 - cut.lowerShare) * cut.upperSd ** 2;
        expect(within + cut.betweenVariance).toBeCloseTo(cut.totalVariance, 8);
      }),
    );
  });
});
