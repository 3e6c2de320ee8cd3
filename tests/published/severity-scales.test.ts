/**
 * Rating scales against what was published. Horsfall and Barratt (1945), Phytopathology 35:655: class limits from memory,
 * cross-read in the source of an open R package on ecotoxicology (which prints 87 where most papers print 88). US Forest
 * Service: FIA Database Handbook v9.3, TREE table 3.1.52 (density), 3.1.53 (dieback), 3.1.54 (transparency), same list.
 */
import { FOREST_SERVICE_CROWN, HORSFALL_BARRATT_0_11, HORSFALL_BARRATT_1_12, severityOfClass } from '@crownfall/survey';
import { describe, expect, test } from 'vitest';

/** Shares are per cent divided by a hundred: a few units in the last place. */
const ROUNDING = 1e-9;

describe('Horsfall–Barratt', () => {
  const PUBLISHED = [
    [0, 0, 0, 0],
    [1, 0, 3, 1.5],
    [2, 3, 6, 4.5],
    [3, 6, 12, 9],
    [4, 12, 25, 18.5],
    [5, 25, 50, 37.5],
    [6, 50, 75, 62.5],
    [7, 75, 88, 81.5],
    [8, 88, 94, 91],
    [9, 94, 97, 95.5],
    [10, 97, 100, 98.5],
    [11, 100, 100, 100],
  ];

  test.each(PUBLISHED)('class %d: %d–%d %%, midpoint %d %%', (code, lo, hi, midpoint) => {
    for (const [scale, shown] of [
      [HORSFALL_BARRATT_0_11, code],
      [HORSFALL_BARRATT_1_12, code + 1],
    ] as const) {
      const severity = severityOfClass(scale, String(shown));
      expect(severity?.lo).toBeCloseTo(lo / 100, 9);
      expect(severity?.hi).toBeCloseTo(hi / 100, 9);
      expect(severity?.share).toBeCloseTo(midpoint / 100, 9);
    }
  });

  test('classes k and 11 − k make 100 %, which holds with the limit 88 and not with 87', () => {
    for (let k = 0; k <= 11; k++) {
      const low = severityOfClass(HORSFALL_BARRATT_0_11, String(k))?.share ?? Number.NaN;
      const high = severityOfClass(HORSFALL_BARRATT_0_11, String(11 - k))?.share ?? Number.NaN;
      expect(Math.abs(low + high - 1)).toBeLessThan(ROUNDING);
    }
  });

  test('36 plants in classes 0–6: mean severity 16.736 %', () => {
    const counts = { 0: 1, 1: 4, 2: 6, 3: 8, 4: 10, 5: 5, 6: 2 };
    const total = Object.entries(counts).reduce(
      (sum, [code, count]) => sum + count * (severityOfClass(HORSFALL_BARRATT_0_11, code)?.share ?? Number.NaN),
      0,
    );
    expect((100 * total) / 36).toBeCloseTo(16.73611111111111, 9);
  });

  test('there is no class below the first or above the last', () => {
    expect(severityOfClass(HORSFALL_BARRATT_0_11, '12')).toBeUndefined();
    expect(severityOfClass(HORSFALL_BARRATT_1_12, '0')).toBeUndefined();
  });
});

describe('US Forest Service crown classes', () => {
  const CODES = Array.from({ length: 19 }, (_, i) => 5 * (i + 1));

  test('a code is the upper limit of its class, not a percentage', () => {
    expect(FOREST_SERVICE_CROWN.classes).toHaveLength(21);
    for (const code of CODES) {
      const severity = severityOfClass(FOREST_SERVICE_CROWN, String(code));
      expect(severity?.lo).toBeCloseTo((code - 4) / 100, 9);
      expect(severity?.hi).toBeCloseTo(code / 100, 9);
      // Midpoints 3, 8, … 93 %: mean of the printed limits, a convention.
      expect(severity?.share).toBeCloseTo((code - 2) / 100, 9);
    }
  });

  test('both ends: 00 is nothing, 99 is 96–100 %', () => {
    expect(severityOfClass(FOREST_SERVICE_CROWN, '00')).toMatchObject({ share: 0, lo: 0, hi: 0 });
    expect(severityOfClass(FOREST_SERVICE_CROWN, '99')).toMatchObject({ share: 0.98, lo: 0.96, hi: 1 });
    expect(severityOfClass(FOREST_SERVICE_CROWN, '100')).toBeUndefined();
  });

  test('5 and 05 are one class, 7 is none', () => {
    expect(severityOfClass(FOREST_SERVICE_CROWN, '5')).toEqual(severityOfClass(FOREST_SERVICE_CROWN, '05'));
    expect(severityOfClass(FOREST_SERVICE_CROWN, '7')).toBeUndefined();
  });
});
