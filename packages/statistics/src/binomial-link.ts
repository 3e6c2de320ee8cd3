/** Links between a share and a linear predictor: logit and complementary log-log. */

/** Logit: ln(μ/(1 − μ)). Complementary log-log: ln(−ln(1 − μ)). */
export type BinomialLink = 'logit' | 'cloglog';

/** What a link says at one linear predictor; the complement 1 − μ and both logarithms keep their digits near 0 and 1. */
export type LinkedMean = {
  readonly mean: number;
  readonly complement: number;
  readonly logMean: number;
  readonly logComplement: number;
  /** dμ/dη. */
  readonly slope: number;
};

/** Predictors are kept where no exponential overflows and no weight vanishes. */
const LOWEST = -700;
const HIGHEST: Record<BinomialLink, number> = { logit: 700, cloglog: 6.5 };

/** The linear predictor of a share: `linkOf('logit', 0.5)` gives 0. */
export function linkOf(link: BinomialLink, mean: number): number {
  return link === 'logit' ? Math.log(mean / (1 - mean)) : Math.log(-Math.log1p(-mean));
}

/**
 * The share at a linear predictor, with its complement, logarithms and slope.
 *
 * Example: `linkedMean('cloglog', 0).mean` gives 1 − 1/e = 0.6321205588.
 */
export function linkedMean(link: BinomialLink, predictor: number): LinkedMean {
  const eta = Math.min(Math.max(predictor, LOWEST), HIGHEST[link]);
  if (link === 'logit') {
    const mean = 1 / (1 + Math.exp(-eta));
    const complement = 1 / (1 + Math.exp(eta));
    return {
      mean,
      complement,
      logMean: -softplus(-eta),
      logComplement: -softplus(eta),
      slope: mean * complement,
    };
  }
  const hazard = Math.exp(eta);
  const complement = Math.exp(-hazard);
  const mean = -Math.expm1(-hazard);
  return { mean, complement, logMean: Math.log(mean), logComplement: -hazard, slope: hazard * complement };
}

function softplus(x: number): number {
  return x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x));
}
