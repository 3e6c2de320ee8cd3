import { blandAltman, intraclassCorrelation, linConcordance, weightedKappa } from '@crownfall/statistics';
import { describe, expect, test } from 'vitest';
import { peakFlow } from './statistics/peak-flow.ts';
import { required } from './statistics/required.ts';
import { shroutFleiss } from './statistics/shrout-fleiss.ts';

const TOLERANCE = 1e-9;
const near = (value: number, wanted: number): void => expect(Math.abs(value - wanted)).toBeLessThanOrEqual(TOLERANCE);

// Agresti (1990), Categorical Data Analysis, p. 374: 91 couples; computed with vcd 1.4-11 and psych 2.2.9 under R 4.2.2.
const COUPLES = [
  [7, 7, 2, 3],
  [2, 8, 3, 7],
  [1, 5, 4, 9],
  [2, 8, 9, 14],
];

// Cohen (1968), Psychological Bulletin 70, 213–220: proportions of 200 (printed κ .492 and κ_w .348, from memory).
const COHEN = [
  [0.44, 0.07, 0.09],
  [0.05, 0.2, 0.05],
  [0.01, 0.03, 0.06],
].map((row) => row.map((share) => share * 200));

describe('weighted kappa', () => {
  test.each([
    ['unweighted', 0.12933025404157, 0.0685985324807086],
    ['linear', 0.237380627557981, 0.0783163347783729],
    ['quadratic', 0.332045586246861, 0.0972975219586046],
  ] as const)('Agresti, %s, with standard error', (weights, kappa, standardError) => {
    const result = required(weightedKappa(COUPLES, weights));
    near(result.kappa, kappa);
    near(result.standardError, standardError);
    expect(result.ratings).toBe(91);
  });

  test('Agresti: observed agreement', () => {
    near(required(weightedKappa(COUPLES, 'unweighted')).observedAgreement, 0.362637362637363);
  });

  test('Cohen, with his own disagreement weights', () => {
    const own = [
      [0, 1, 3],
      [1, 0, 6],
      [3, 6, 0],
    ];
    near(required(weightedKappa(COHEN, 'unweighted')).kappa, 0.491525423728814);
    near(required(weightedKappa(COHEN, own)).kappa, 0.347826086956522);
    near(required(weightedKappa(COHEN, 'linear')).kappa, 0.473684210526316);
    near(required(weightedKappa(COHEN, 'quadratic')).kappa, 0.454545454545455);
  });
});

describe('Bland and Altman’s peak flow readings', () => {
  test('Lin’s concordance', () => {
    const result = required(linConcordance(peakFlow.x, peakFlow.y));
    const interval = required(result.interval);
    near(result.concordance, peakFlow.expected.rho_c);
    near(interval.lower, peakFlow.expected.lower95_z);
    near(interval.upper, peakFlow.expected.upper95_z);
    near(result.pearson, peakFlow.expected.pearson_r);
    near(result.biasCorrection, peakFlow.expected.bias_correction_Cb);
    near(1 / result.scaleShift, peakFlow.expected.scale_shift_v);
    near(Math.abs(result.locationShift), peakFlow.expected.location_shift_u);
  });

  test('bias and limits of agreement', () => {
    const result = required(blandAltman(peakFlow.x, peakFlow.y));
    const wanted = peakFlow.expected.bland_altman;
    near(result.bias, wanted.mean_difference_x_minus_y);
    near(result.standardDeviation, wanted.sd_difference_n_minus_1);
    // The paper's 1.96 in place of the exact normal quantile.
    near(result.bias - 1.96 * result.standardDeviation, wanted['loa_lower_1.96']);
    near(result.bias + 1.96 * result.standardDeviation, wanted['loa_upper_1.96']);
    // epiR 2.0.57 with the exact quantile, printed to 5 decimals.
    expect(result.limits.lower).toBeCloseTo(-78.09591, 5);
    expect(result.limits.upper).toBeCloseTo(73.86061, 5);
  });
});

describe('Shrout and Fleiss’s six forms', () => {
  const result = required(intraclassCorrelation(shroutFleiss.ratings));
  const { icc, lower95, upper95 } = shroutFleiss.expected;

  test('mean squares', () => {
    near(result.meanSquares.subjects, shroutFleiss.expected.MS_between_targets);
    near(result.meanSquares.within, shroutFleiss.expected.MS_within_targets);
    near(result.meanSquares.raters, shroutFleiss.expected.MS_judges);
    near(result.meanSquares.rest, shroutFleiss.expected.MS_error);
  });

  test.each([
    ['1,1', 'ICC1', 0.17],
    ['2,1', 'ICC2', 0.29],
    ['3,1', 'ICC3', 0.71],
    ['1,k', 'ICC1k', 0.44],
    ['2,k', 'ICC2k', 0.62],
    ['3,k', 'ICC3k', 0.91],
  ] as const)('form %s with its interval', (form, name, published) => {
    const estimate = result.forms[form];
    near(required(estimate.coefficient), icc[name]);
    near(required(estimate.interval).lower, lower95[name]);
    near(required(estimate.interval).upper, upper95[name]);
    expect(required(estimate.coefficient).toFixed(2)).toBe(published.toFixed(2));
  });
});
