import { readFileSync } from 'node:fs';
import {
  abbottEfficacy,
  areaUnderProgressCurve,
  areaUnderProgressStairs,
  circularDays,
  degreeDays,
  diseaseSeverityIndex,
  hendersonTiltonEfficacy,
  schneiderOrelliEfficacy,
  sunShepardEfficacy,
  weightedMean,
} from '@crownfall/statistics';
import { describe, expect, test } from 'vitest';
import { degreeDayCases as warmth } from './statistics/degree-days.ts';
import { required } from './statistics/required.ts';
import { sharedData } from './statistics/shared-data.ts';

const near = (value: number, wanted: number, tolerance = 1e-9): void =>
  expect(Math.abs(value - wanted), `got ${value}, wanted ${wanted}`).toBeLessThanOrEqual(tolerance);

describe('efficacy, in per cent as published', () => {
  const ht = (treatedBefore: number, treatedAfter: number, controlBefore: number, controlAfter: number): number =>
    100 * required(hendersonTiltonEfficacy({ treatedBefore, treatedAfter, controlBefore, controlAfter }));

  // Abbott (1925), J. Econ. Entomol. 18, 265–267: 50 % alive untreated, 2 % treated.
  test('Abbott', () => {
    near(100 * required(abbottEfficacy(50, 2)), 96);
    near(100 * required(abbottEfficacy(26, 6)), 76.92307692307692);
    near(100 * required(abbottEfficacy(20, 25)), -25);
  });
  // Formulas and examples from memory: Henderson and Tilton (1955), Schneider-Orelli (1947), Sun and Shepard (1947).
  test('Henderson–Tilton, Schneider-Orelli, Sun–Shepard', () => {
    near(ht(300, 30, 500, 1000), 95);
    near(ht(30, 6, 28, 26), 78.46153846153847);
    near(ht(10, 10, 10, 10), 0);
    near(100 * required(schneiderOrelliEfficacy(0.98, 0.5)), 96);
    near(100 * required(sunShepardEfficacy(0.9, 1)), 95);
  });
});

// Cochran and Cox's eelworm trial with soil fumigants, table agridat cochran.eelworms (MIT), counts pooled by fumigant.
const eelworms = sharedData('stats/agridat_cochran.eelworms.txt');
describe('a real trial: eelworms', () => {
  test.skipIf(!eelworms).each([
    ['See', 49.63],
    ['Chl', 0.65],
    ['Cym', 16.66],
    ['Car', 37.33],
  ])('Henderson–Tilton of %s against the untreated plots: %f %%', (fumigant, percent) => {
    const treated = pooled(fumigant);
    const control = pooled('Con');
    const efficacy = required(
      hendersonTiltonEfficacy({
        treatedBefore: treated.initial,
        treatedAfter: treated.final,
        controlBefore: control.initial,
        controlAfter: control.final,
      }),
    );
    near(100 * efficacy, percent, 0.005);
    const mortality = 1 - treated.final / treated.initial;
    near(required(sunShepardEfficacy(mortality, control.final / control.initial - 1)), efficacy, 1e-12);
  });
});

function pooled(fumigant: string): { initial: number; final: number } {
  const [header, ...rows] = readFileSync(eelworms as string, 'utf8')
    .trim()
    .split('\n')
    .map((line) => line.replaceAll('"', '').split('\t'));
  const column = (name: string): number => (header as string[]).indexOf(name);
  const mine = rows.filter((row) => row[column('fumigant')] === fumigant);
  const total = (name: string): number => mine.reduce((sum, row) => sum + Number(row[column(name)]), 0);
  return { initial: total('initial'), final: total('final') };
}

describe('degree-days, closed forms checked by numerical integration', () => {
  test.each(warmth.cases)('$unit $tmin to $tmax, thresholds $lower and $upper', (day) => {
    const temperatures = { lowest: day.tmin, highest: day.tmax };
    const { lower, upper } = day;
    const near8 = (value: number, wanted: number): void => near(value, wanted, warmth.tolerance);
    near8(degreeDays(temperatures, { lower }, 'average'), day.simple_average);
    near8(degreeDays(temperatures, { lower, upper }, 'clamped-average'), day.average_clamped_to_thresholds);
    near8(degreeDays(temperatures, { lower }, 'sine'), day.single_sine_no_upper);
    near8(degreeDays(temperatures, { lower, upper }, 'sine'), day.single_sine_horizontal_cutoff);
    near8(degreeDays(temperatures, { lower }, 'triangle'), day.single_triangle_no_upper);
    near8(degreeDays(temperatures, { lower, upper }, 'triangle'), day.single_triangle_horizontal_cutoff);
  });
  // University of California's worked example: a mean of 64 °F over a threshold of 53 °F.
  test('simple average in °F', () => near(degreeDays({ lowest: 50, highest: 78 }, { lower: 53 }, 'average'), 11));
});

describe('mean day of the year (Mardia and Jupp 2000, from memory), values of R’s circular 0.4-95', () => {
  test('days about the turn of the year', () => {
    const result = required(circularDays([355, 362, 3, 10, 18], 365));
    near(result.meanDay, 3.595564612188);
    near(result.resultant, 0.985918190660423);
    near(result.standardDeviationDays, 9.78352106041557);
    near(result.rayleighP, 0.0016075639294081);
  });
});

describe('severity over a season', () => {
  // Campbell and Madden (1990), Simko and Piepho (2012): examples of the agricolae package's help pages.
  test('areas under the progress curve and stairs', () => {
    const curve = required(areaUnderProgressCurve([14, 21, 28], [40, 80, 90], 100));
    near(curve.area, 1015);
    near(curve.relative, 0.725);
    const stairs = required(areaUnderProgressStairs([14, 21, 28], [40, 80, 90], 100));
    near(stairs.area, 1470);
    near(stairs.relative, 0.7);
    const longer = areaUnderProgressCurve([14, 21, 28, 32, 39, 41, 50], [1, 2, 4, 15, 40, 80, 90], 100);
    near(required(longer).area, 1147);
  });

  // McKinney (1923), J. Agric. Res. 26, 195–218 (from memory).
  test('disease severity index', () => {
    const scores = [12, 9, 7, 6, 4, 2].map((count, score) => ({ score, count }));
    const result = required(diseaseSeverityIndex(scores, 5));
    near(100 * result.index, 33.5);
    near(100 * result.incidence, 70);
    expect(result.subjects).toBe(40);
  });

  // Midpoints of Horsfall and Barratt's classes 0–6 (1945, Phytopathology 35, 655, from memory).
  test('mean of class midpoints', () => {
    near(required(weightedMean([0, 1.5, 4.5, 9, 18.5, 37.5, 62.5], [1, 4, 6, 8, 10, 5, 2])), 16.73611111111111);
  });
});
