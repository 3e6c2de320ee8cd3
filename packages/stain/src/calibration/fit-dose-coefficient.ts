/** The fit itself: one coefficient to quadrats whose doses are known. */
import { type BinomialFit, type Defined, defined, fitBinomial, undefinedBecause } from '@crownfall/statistics';
import { equivalentDose, meanDose, type QuadratDose } from './quadrat-dose.ts';

export interface DoseCoefficientFit {
  readonly doseCoefficient: number;
  /** By quadrat, at k = 1. */
  readonly doses: readonly number[];
  /** Intercept ln k. */
  readonly fit: BinomialFit;
}

/** k is settled when it moves by less than this part of itself: far below its standard error. */
const SETTLED = 1e-12;
/** Each round shrinks the error of k manyfold; plots across a drip line needed at most 12. */
const ROUNDS = 100;

/**
 * Fits −ln(1 − E[y]) = k·u by a quasi-binomial regression with complementary log-log link, offset ln u and the quadrats'
 * areas as weights; ln k is its intercept. Where the dose is uneven within a plot, u is the equivalent even dose at the k
 * found, and fit and doses are repeated until k stands still: the fitted shares are then the plots' exact expectations.
 *
 * All quadrats must have a dose > 0 somewhere. Undefined when all shares are 0 or all are 1, without quadrats, or when it
 * does not settle. Source: docs/methods/calibration.md; McCullagh and Nelder (1989), section 4.3 (link; from memory).
 *
 * Example: three even plots of dose 1, 2 and 0.5, 1 m² each, with the shares 1 − e^(−0.9·u): k = 0.9.
 */
export function fitDoseCoefficient(quadrats: readonly QuadratDose[]): Defined<DoseCoefficientFit> {
  let doses = quadrats.map(meanDose);
  let before = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const fit = fitBinomial({
      shares: quadrats.map((quadrat) => quadrat.stainedShare),
      weights: quadrats.map((quadrat) => quadrat.areaM2),
      offset: doses.map((dose) => Math.log(dose)),
      terms: [],
      link: 'cloglog',
      family: 'quasi-binomial',
    });
    if (!fit.defined) return fit;
    const k = Math.exp(fit.value.coefficients[0]);
    if (Math.abs(k - before) <= SETTLED * k) return defined({ doseCoefficient: k, doses, fit: fit.value });
    before = k;
    doses = quadrats.map((quadrat) => equivalentDose(quadrat, k));
  }
  return undefinedBecause('not-converged');
}
