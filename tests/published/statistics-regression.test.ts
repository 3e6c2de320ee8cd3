import { type BinomialFit, fitBinomial, isotonicRegression, predictShare } from '@crownfall/statistics';
import { describe, expect, test } from 'vitest';
import { binomialFits as published } from './statistics/binomial-fits.ts';
import { isotonic } from './statistics/isotonic.ts';
import { rOutputs as r } from './statistics/r-outputs.ts';
import { required } from './statistics/required.ts';

const near = (value: number, wanted: number, tolerance: number): void =>
  expect(Math.abs(value - wanted), `got ${value}, wanted ${wanted}`).toBeLessThanOrEqual(
    tolerance * Math.max(1, Math.abs(wanted)),
  );
const nearAll = (values: readonly number[], wanted: readonly number[], tolerance: number): void => {
  expect(values).toHaveLength(wanted.length);
  for (const [i, value] of values.entries()) near(value, wanted[i] as number, tolerance);
};
const caseNamed = (start: string) => {
  const found = published.cases.find(({ name }) => name.startsWith(start));
  if (!found) throw new Error(`no case ${start}`);
  return found;
};
const shares = (hits: readonly number[] = [], trials: readonly number[] = []): number[] =>
  hits.map((k, i) => k / (trials[i] as number));

describe('published logit fits, to 1e-6', () => {
  const checked = (start: string, fit: BinomialFit): void => {
    const { coef, se, deviance, null_deviance, df_residual } = caseNamed(start).expected;
    nearAll(fit.coefficients, Object.values(coef), published.tolerance);
    nearAll(required(fit.standardErrors), Object.values(se), published.tolerance);
    near(fit.deviance, deviance, published.tolerance);
    near(required(fit.nullDeviance), null_deviance, published.tolerance);
    expect(fit.residualFreedom).toBe(df_residual);
  };

  test('beetle mortality (Bliss 1935)', () => {
    const { inputs, expected } = caseNamed('beetle');
    const trials = inputs.n as number[];
    const terms = [{ name: 'dose', values: inputs.logdose as number[] }];
    const fit = required(
      fitBinomial({ shares: shares(inputs.killed, trials), weights: trials, terms, link: 'logit', family: 'binomial' }),
    );
    checked('beetle', fit);
    nearAll(fit.fitted, expected.fitted as number[], published.tolerance);
    nearAll(required(fit.covariance).flat(), (expected.vcov as number[][]).flat(), published.tolerance);
    near(required(fit.likelihood).aic, expected.aic as number, published.tolerance);
    near(-(fit.coefficients[0] as number) / (fit.coefficients[1] as number), expected.ld50_logdose as number, 1e-9);
    // Dobson, An Introduction to Generalized Linear Models, as printed (from memory).
    expect(fit.coefficients.map((b) => b.toFixed(3))).toEqual(['-60.717', '34.270']);
    expect(required(fit.standardErrors).map((se) => se.toFixed(2))).toEqual(['5.18', '2.91']);
    expect(fit.deviance.toFixed(2)).toBe('11.23');
    const prediction = required(predictShare(fit, [1, 1.8]));
    near(prediction.predictor, 0.9691318, 1e-6);
    near(prediction.standardError, 0.1450564, 1e-6);
    near(prediction.share, 0.7249464, 1e-6);
  });

  test('menarche (Milicer and Szczotka 1966)', () => {
    const { inputs, expected } = caseNamed('menarche');
    const trials = inputs.Total as number[];
    const terms = [{ name: 'age', values: inputs.Age as number[] }];
    const fit = required(
      fitBinomial({
        shares: shares(inputs.Menarche, trials),
        weights: trials,
        terms,
        link: 'logit',
        family: 'binomial',
      }),
    );
    checked('menarche', fit);
    near(required(fit.likelihood).aic, expected.aic as number, published.tolerance);
  });

  test('transmissions (Henderson and Velleman 1981)', () => {
    const { inputs, expected } = caseNamed('mtcars');
    const terms = [
      { name: 'weight', values: inputs.wt as number[] },
      { name: 'power', values: inputs.hp as number[] },
    ];
    const fit = required(fitBinomial({ shares: inputs.am as number[], terms, link: 'logit', family: 'binomial' }));
    checked('mtcars', fit);
    nearAll(required(fit.covariance).flat(), (expected.vcov as number[][]).flat(), published.tolerance);
    near(required(fit.likelihood).logLikelihood, expected.logLik as number, published.tolerance);
    near(required(fit.likelihood).aic, expected.aic as number, published.tolerance);
  });

  test('fractional logit (Chatterjee and Price 1977; Papke and Wooldridge 1996)', () => {
    const { inputs, expected } = caseNamed('fractional');
    const terms = [
      { name: 'complaints', values: inputs.x1 as number[] },
      { name: 'learning', values: inputs.x2 as number[] },
    ];
    const fit = required(fitBinomial({ shares: inputs.y as number[], terms, link: 'logit', family: 'quasi-binomial' }));
    checked('fractional', fit);
    near(required(fit.dispersion), expected.dispersion_pearson as number, published.tolerance);
    nearAll(fit.robustStandardErrors, Object.values(expected.robust_se_HC0 ?? {}), published.tolerance);
    nearAll(fit.fitted, expected.fitted as number[], published.tolerance);
  });
});

describe('both links with offset and weights against R 4.2.2', () => {
  // Coefficients agree to 1e-8 of their size; what squares or divides residuals keeps a little less.
  const TOLERANCE = 1e-8;
  test.each(r.fits)('$name, $link, $family', (wanted) => {
    const fit = required(
      fitBinomial({
        shares: wanted.shares,
        weights: wanted.weights,
        offset: wanted.offset,
        terms: wanted.x ? [{ name: 'x', values: wanted.x }] : [],
        link: wanted.link as 'logit' | 'cloglog',
        family: wanted.family as 'binomial' | 'quasi-binomial',
      }),
    );
    nearAll(fit.coefficients, wanted.coefficients, TOLERANCE);
    nearAll(required(fit.standardErrors), wanted.standardErrors, TOLERANCE);
    near(fit.deviance, wanted.deviance[0] as number, TOLERANCE);
    near(required(fit.nullDeviance), wanted.nullDeviance[0] as number, TOLERANCE);
    near(required(fit.dispersion), wanted.dispersion[0] as number, TOLERANCE);
    nearAll(fit.residuals.deviance, wanted.devianceResiduals, TOLERANCE);
    nearAll(fit.residuals.pearson, wanted.pearsonResiduals, TOLERANCE);
    nearAll(fit.leverages, wanted.leverages, TOLERANCE);
    nearAll(fit.fitted, wanted.fitted, TOLERANCE);
  });

  test('Dobson’s printed complementary log-log fit of the beetles (from memory)', () => {
    const beetles = r.fits[0] as (typeof r.fits)[number];
    const terms = [{ name: 'dose', values: beetles.x as number[] }];
    const fit = required(fitBinomial({ ...beetles, terms, link: 'cloglog', family: 'binomial' }));
    expect(fit.coefficients.map((b) => b.toFixed(2))).toEqual(['-39.57', '22.04']);
    expect(fit.deviance.toFixed(2)).toBe('3.45');
  });
});

describe('isotonic regression against scikit-learn and R’s isoreg', () => {
  test.each(isotonic.cases)('$inputs.y', ({ inputs, expected }) => {
    const weights = inputs.w ? { weights: inputs.w } : {};
    nearAll(isotonicRegression(inputs.y, weights), expected.increasing, isotonic.tolerance);
    nearAll(
      isotonicRegression(inputs.y, { ...weights, direction: 'decreasing' }),
      expected.decreasing,
      isotonic.tolerance,
    );
  });
});
