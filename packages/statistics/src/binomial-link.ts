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

/**
 * Means, complements and slopes are taken no farther out than this, so that none of them is 0 or infinite; logarithms are exact
 * beyond, so that a deviance never goes flat.
 */
const LOWEST = -700;
const HIGHEST: Record<BinomialLink, number> = { logit: 700, cloglog: 6.5 };

/** Hazards −ln(1 − μ) are kept where their squares neither vanish nor overflow. */
const LEAST_HAZARD = 1e-150;
const GREATEST_HAZARD = 1e150;

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
    const [logMean, logComplement] = [-softplus(-predictor), -softplus(predictor)];
    return { mean, complement, logMean, logComplement, slope: mean * complement };
  }
  const hazard = Math.exp(eta);
  const complement = Math.exp(-hazard);
  const mean = -Math.expm1(-hazard);
  // Far down the mean is the hazard itself.
  const logMean = predictor < LOWEST ? predictor : Math.log(mean);
  return { mean, complement, logMean, logComplement: -Math.exp(predictor), slope: hazard * complement };
}

/** First derivative of an observation's log-likelihood by its linear predictor, and minus the second; weight 1. */
export type LikelihoodSlope = { readonly score: number; readonly information: number };

/**
 * Slope and curvature of the log-likelihood of one share, at the mean that `linkedMean` gave.
 *
 * The curvature is the observed one. It is never negative under either link, and unlike the expected one it does not vanish where a
 * complementary log-log fit is far too high, so Newton's steps stay of moderate length there.
 *
 * Example: a share of 1 at a logit predictor of 0 has a score of 0.5 and an information of 0.25.
 */
export function likelihoodSlope(link: BinomialLink, share: number, m: LinkedMean): LikelihoodSlope {
  if (link === 'logit') return { score: share * m.complement - (1 - share) * m.mean, information: m.slope };
  const hazard = Math.min(Math.max(-m.logComplement, LEAST_HAZARD), GREATEST_HAZARD);
  const mean = -Math.expm1(-hazard);
  // h/(eʰ − 1), and h/(1 − e⁻ʰ) − 1 by its series where the difference would cancel.
  const odds = (hazard * Math.exp(-hazard)) / mean;
  const excess = hazard < 1e-5 ? hazard / 2 : hazard / mean - 1;
  return {
    score: share * odds - (1 - share) * hazard,
    information: (1 - share) * hazard + share * odds * excess,
  };
}

function softplus(x: number): number {
  return x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x));
}
