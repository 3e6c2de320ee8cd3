/** Deviance and likelihood of observed shares under fitted ones. */

import type { LinkedMean } from './binomial-link.ts';
import { type Defined, defined, undefinedBecause } from './defined.ts';
import { logGamma } from './gamma-function.ts';

/** Log-likelihood of whole counts, and Akaike's criterion −2·logLikelihood + 2·coefficients. */
export type Likelihood = { readonly logLikelihood: number; readonly aic: number };

/** Distance from a whole number that a share times its trials may have by rounding. */
const WHOLE = 1e-6;

/**
 * Deviance of one observation of weight 1: 2[y ln(y/μ) + (1 − y) ln((1 − y)/(1 − μ))], 0 when they agree.
 *
 * Example: a share of 1 where 0.5 was expected gives 2 ln 2 = 1.3862943611.
 */
export function unitDeviance(share: number, { logMean, logComplement }: LinkedMean): number {
  const up = share === 0 ? 0 : share * (Math.log(share) - logMean);
  const down = share === 1 ? 0 : (1 - share) * (Math.log1p(-share) - logComplement);
  return Math.max(0, 2 * (up + down));
}

/** Binomial log-likelihood; undefined unless shares times weights, and the weights, are whole counts. */
export function binomialLikelihood(
  shares: ArrayLike<number>,
  trials: ArrayLike<number>,
  means: readonly LinkedMean[],
  coefficients: number,
): Defined<Likelihood> {
  let logLikelihood = 0;
  for (const [i, m] of means.entries()) {
    const all = trials[i] as number;
    const hits = Math.round(all * (shares[i] as number));
    if (!Number.isInteger(all) || Math.abs(all * (shares[i] as number) - hits) > WHOLE) {
      return undefinedBecause('not-whole-counts');
    }
    const ways = logGamma(all + 1) - logGamma(hits + 1) - logGamma(all - hits + 1);
    logLikelihood += ways + hits * m.logMean + (all - hits) * m.logComplement;
  }
  return defined({ logLikelihood, aic: 2 * coefficients - 2 * logLikelihood });
}
