/** What a fitted regression says: intervals of its coefficients, and predictions with theirs. */

import { linkedMean } from './binomial-link.ts';
import type { BinomialFit } from './binomial-model.ts';
import { type Defined, defined } from './defined.ts';
import { expectOpenFraction, expectSameLength } from './expectations.ts';
import type { Interval } from './interval.ts';
import { normalCritical } from './normal-distribution.ts';
import { studentTCritical } from './student-t-distribution.ts';

/** A prediction on the scale of the linear predictor and as a share. */
export type Prediction = {
  readonly predictor: number;
  readonly standardError: number;
  readonly share: number;
  readonly shareInterval: Interval;
};

/**
 * Wald interval of one coefficient, estimate ± critical value · SE: normal for binomial, Student's t with the residual degrees of
 * freedom for quasi-binomial.
 *
 * Undefined when the standard error is. RangeError for a name that is not in the fit.
 *
 * Example: an estimate of 2 with SE 0.5 in a binomial fit gives 1.0200 to 2.9800.
 */
export function coefficientInterval(fit: BinomialFit, name: string, confidence = 0.95): Defined<Interval> {
  const j = fit.names.indexOf(name);
  if (j < 0) throw new RangeError(`coefficient: expected one of ${fit.names.join(', ')}, got ${name}`);
  if (!fit.standardErrors.defined) return fit.standardErrors;
  const reach = criticalValue(fit, confidence) * (fit.standardErrors.value[j] as number);
  const estimate = fit.coefficients[j] as number;
  return defined({ lower: estimate - reach, upper: estimate + reach, confidence });
}

/**
 * Predicts at a row of values in the order of the fit's names (1 for the intercept), with a known offset (default 0).
 *
 * The share's interval is that of the linear predictor, turned back, so it stays within 0–1. Undefined when the standard errors are.
 *
 * Example: the beetle fit (Bliss 1935) at a log dose of 1.8 gives 0.9691318 ± 0.1450564, a share of 0.7249464.
 */
export function predictShare(
  fit: BinomialFit,
  row: readonly number[],
  { offset = 0, confidence = 0.95 }: { offset?: number; confidence?: number } = {},
): Defined<Prediction> {
  expectSameLength(row, fit.names, 'row and coefficients');
  if (!fit.covariance.defined) return fit.covariance;
  const predictor = row.reduce((sum, value, j) => sum + value * (fit.coefficients[j] as number), offset);
  const variance = fit.covariance.value.reduce(
    (sum, covariances, i) =>
      sum + covariances.reduce((inner, value, j) => inner + (row[i] as number) * (row[j] as number) * value, 0),
    0,
  );
  const standardError = Math.sqrt(Math.max(0, variance));
  const reach = criticalValue(fit, confidence) * standardError;
  return defined({
    predictor,
    standardError,
    share: linkedMean(fit.link, predictor).mean,
    shareInterval: {
      lower: linkedMean(fit.link, predictor - reach).mean,
      upper: linkedMean(fit.link, predictor + reach).mean,
      confidence,
    },
  });
}

function criticalValue(fit: BinomialFit, confidence: number): number {
  expectOpenFraction(confidence, 'confidence');
  return fit.family === 'binomial' ? normalCritical(confidence) : studentTCritical(confidence, fit.residualFreedom);
}
