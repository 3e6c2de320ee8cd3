/** Regression of shares: generalised linear models of the binomial kind, fitted by iteratively reweighted least squares. */

import { binomialLikelihood, unitDeviance } from './binomial-deviance.ts';
import { type LinkedMean, linkedMean } from './binomial-link.ts';
import { type BinomialFit, type BinomialModel, type Prepared, prepare } from './binomial-model.ts';
import { type Defined, defined, undefinedBecause } from './defined.ts';
import { leastSquares } from './least-squares.ts';
import { devianceOf, iterate, responseResidual, type Settled, workingWeight } from './reweighted-fit.ts';
import { findSeparation } from './separation.ts';

/**
 * Fits shares y with mean μ, link(μ) = offset + Xb, variance φμ(1 − μ)/w, by iteratively reweighted least squares
 * (Newton's method) with step halving.
 *
 * Accuracy tested: 1e-6 against published fits, 1e-8 against R's glm for both links with offset and weights. Undefined without
 * observations; with collinear terms; when a combination of terms separates the outcomes (all shares 0 or all 1 included); when
 * the fit does not settle. RangeError for shares outside 0–1, negative weights, unequal lengths.
 * Sources: McCullagh and Nelder (1989), Generalized Linear Models, section 2.5; Papke and Wooldridge (1996), Journal of Applied
 * Econometrics 11, 619–632 (shares); White (1980), Econometrica 48, 817–838 (robust errors) (all from memory).
 *
 * Example: shares [0.2, 0.4, 0.6] of 10 trials each, no terms, logit: intercept ln(0.4/0.6) = −0.4054651081, SE 0.3726779962.
 */
export function fitBinomial(model: BinomialModel): Defined<BinomialFit> {
  const data = prepare(model);
  const used = data.weights.reduce((count, weight) => count + (weight > 0 ? 1 : 0), 0);
  if (used === 0) return undefinedBecause('no-observations');
  const rank = leastSquares(data.columns, data.offset, data.weights);
  if (!rank.defined) return rank;
  const separation = findSeparation(data.columns, data.shares, data.weights);
  if (separation === 'complete' || separation === 'quasi') return undefinedBecause('separation');
  const settled = iterate(data, model.link);
  if (!settled.defined) return settled;
  return defined(describe(model, data, settled.value, used));
}

function describe(model: BinomialModel, data: Prepared, settled: Settled, used: number): BinomialFit {
  const { coefficients, eta, means, deviance, iterations } = settled;
  const last = leastSquares(
    data.columns,
    eta,
    means.map((m, i) => workingWeight(data, m, i)),
  );
  if (!last.defined) throw new RangeError('fitBinomial: the terms of a settled fit became collinear');
  const { inverse, leverages } = last.value;
  const response = means.map((m, i) => responseResidual(data, m, i));
  const pearson = means.map(
    (m, i) => ((response[i] as number) * Math.sqrt(data.weights[i] as number)) / Math.sqrt(m.mean * m.complement),
  );
  const residualFreedom = used - coefficients.length;
  const dispersion: Defined<number> =
    residualFreedom > 0
      ? defined(pearson.reduce((sum, value) => sum + value * value, 0) / residualFreedom)
      : undefinedBecause('no-residual-freedom');
  const scale: Defined<number> = model.family === 'binomial' ? defined(1) : dispersion;
  return {
    names: data.names,
    coefficients,
    covariance: scale.defined ? defined(inverse.map((row) => row.map((value) => value * scale.value))) : scale,
    standardErrors: scale.defined
      ? defined(inverse.map((row, j) => Math.sqrt((row[j] as number) * scale.value)))
      : scale,
    robustStandardErrors: robustErrors(data, means, response, inverse),
    fitted: means.map((m) => m.mean),
    predictors: Array.from(eta),
    deviance,
    nullDeviance: nullDevianceOf(model, data, coefficients.length, deviance),
    residualFreedom,
    dispersion,
    residuals: {
      deviance: means.map((m, i) => {
        const root = Math.sqrt((data.weights[i] as number) * unitDeviance(data.shares[i] as number, m));
        return (response[i] as number) < 0 ? -root : root;
      }),
      pearson,
      response,
    },
    leverages,
    likelihood:
      model.family === 'binomial'
        ? binomialLikelihood(data.shares, data.weights, means, coefficients.length)
        : undefinedBecause('not-whole-counts'),
    iterations,
    family: model.family,
    link: model.link,
  };
}

/** Sandwich (XᵀWX)⁻¹ Σ u u ᵀ (XᵀWX)⁻¹ with the score u = x·w(y − μ)(dμ/dη)/(μ(1 − μ)) of each observation. */
function robustErrors(
  data: Prepared,
  means: readonly LinkedMean[],
  response: readonly number[],
  inverse: readonly (readonly number[])[],
): number[] {
  const scores = means.map(
    (m, i) => (data.weights[i] as number) * (response[i] as number) * (m.slope / m.mean / m.complement),
  );
  return inverse.map((row) => {
    let sum = 0;
    for (const [i, score] of scores.entries()) {
      const influence = row.reduce((total, value, j) => total + value * (data.columns[j]?.[i] as number), 0);
      sum += (influence * score) ** 2;
    }
    return Math.sqrt(sum);
  });
}

function nullDevianceOf(model: BinomialModel, data: Prepared, terms: number, deviance: number): Defined<number> {
  if (!(model.intercept ?? true)) {
    return defined(
      devianceOf(
        data,
        Array.from(data.offset, (value) => linkedMean(model.link, value)),
      ),
    );
  }
  if (terms === 1) return defined(deviance);
  const alone = iterate({ ...data, columns: data.columns.slice(0, 1) }, model.link);
  return alone.defined ? defined(alone.value.deviance) : alone;
}
