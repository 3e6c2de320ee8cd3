/** Calibration of the dose coefficient: enough quadrats, the fit, and how well it holds from block to block. */
import { coefficientInterval } from '@crownfall/statistics';
import type {
  BlockResidual,
  Calibration,
  CalibrationOutcome,
  CalibrationShortfall,
  FittedQuadrat,
} from './calibration.ts';
import { type DoseCoefficientFit, fitDoseCoefficient } from './fit-dose-coefficient.ts';
import { leaveOneBlockOut } from './leave-one-block-out.ts';
import { meanDose, type QuadratDose } from './quadrat-dose.ts';

/** (A) Fewer quadrats, or fewer blocks, tell less than the assumed k does. */
export const LEAST_QUADRATS = 10;
export const LEAST_BLOCKS = 3;
/** (A) The greatest dose must be this many times the least, or only one point of the curve is measured. */
export const LEAST_SPREAD_OF_DOSE = 2;

/**
 * Fits k to quadrats, or says what is missing: at least 10 quadrats under a dose, in 3 blocks, the greatest dose twice the
 * least, some stain somewhere and not everywhere through and through. Quadrats on which nothing falls do not enter the fit;
 * the stained ones among them are listed as stains without a cause above. RangeError for shares outside 0–1 or areas that are
 * not positive. `confidence` is that of the interval. docs/methods/calibration.md has a worked example.
 */
export function calibrate(quadrats: readonly QuadratDose[], confidence = 0.95): CalibrationOutcome {
  const under = quadrats.filter((quadrat) => meanDose(quadrat) > 0);
  const bare = quadrats.filter((quadrat) => meanDose(quadrat) === 0);
  const stained = bare.filter(({ stainedShare }) => stainedShare > 0);
  const rest = {
    withoutCause: stained.map(({ quadratId, stainedShare }) => ({ quadratId, stainedShare })),
    cleanWithoutDose: bare.length - stained.length,
  };
  const shortfalls = shortfallsOf(under);
  if (shortfalls.length > 0) return { calibration: null, shortfalls, ...rest };
  const fitted = fitDoseCoefficient(under);
  if (!fitted.defined) return { calibration: null, shortfalls: [{ missing: 'settled-fit' }], ...rest };
  return { calibration: describe(under, fitted.value, confidence), shortfalls: [], ...rest };
}

function shortfallsOf(under: readonly QuadratDose[]): CalibrationShortfall[] {
  const shortfalls: CalibrationShortfall[] = [];
  if (under.length < LEAST_QUADRATS) {
    shortfalls.push({ missing: 'quadrats', have: under.length, need: LEAST_QUADRATS });
  }
  const blocks = new Set(under.map(({ block }) => block)).size;
  if (blocks < LEAST_BLOCKS) shortfalls.push({ missing: 'blocks', have: blocks, need: LEAST_BLOCKS });
  if (under.length === 0) return shortfalls;
  const doses = under.map(meanDose);
  const spread = Math.max(...doses) / Math.min(...doses);
  if (spread < LEAST_SPREAD_OF_DOSE) {
    shortfalls.push({ missing: 'spread-of-dose', have: spread, need: LEAST_SPREAD_OF_DOSE });
  }
  if (under.every(({ stainedShare }) => stainedShare === 0)) {
    shortfalls.push({ missing: 'shares-between', have: 'all-clean' });
  }
  if (under.every(({ stainedShare }) => stainedShare === 1)) {
    shortfalls.push({ missing: 'shares-between', have: 'all-stained' });
  }
  return shortfalls;
}

function describe(
  quadrats: readonly QuadratDose[],
  { doseCoefficient, doses, fit }: DoseCoefficientFit,
  confidence: number,
): Calibration {
  const errors = fit.standardErrors;
  const interval = coefficientInterval(fit, '(intercept)', confidence);
  if (!errors.defined || !interval.defined || !fit.dispersion.defined) {
    throw new RangeError(`expected ${LEAST_QUADRATS} quadrats to leave residual freedom, got ${quadrats.length}`);
  }
  const scale = Math.sqrt(fit.dispersion.value);
  const each = quadrats.map(({ quadratId, block, areaM2, stainedShare }, i): FittedQuadrat => {
    const spread = scale * Math.sqrt(1 - fit.leverages[i]);
    return {
      quadratId,
      block,
      areaM2,
      dose: doses[i],
      observed: stainedShare,
      fitted: fit.fitted[i],
      standardisedResidual: spread > 0 ? fit.residuals.pearson[i] / spread : 0,
    };
  });
  return {
    doseCoefficient,
    logStandardError: errors.value[0],
    interval: {
      lower: Math.exp(interval.value.lower),
      upper: Math.exp(interval.value.upper),
      confidence,
    },
    dispersion: fit.dispersion.value,
    residualFreedom: fit.residualFreedom,
    quadrats: each,
    blocks: byBlock(each),
    leaveOneBlockOut: leaveOneBlockOut(quadrats),
  };
}

/** Area-weighted shares by block, in the order in which blocks are first met. */
function byBlock(quadrats: readonly FittedQuadrat[]): BlockResidual[] {
  const groups = new Map<string | null, FittedQuadrat[]>();
  for (const quadrat of quadrats) groups.set(quadrat.block, [...(groups.get(quadrat.block) ?? []), quadrat]);
  return [...groups].map(([block, members]) => {
    const areaM2 = members.reduce((sum, one) => sum + one.areaM2, 0);
    const mean = (of: (one: FittedQuadrat) => number) =>
      members.reduce((sum, one) => sum + one.areaM2 * of(one), 0) / areaM2;
    const shares = { observed: mean((one) => one.observed), fitted: mean((one) => one.fitted) };
    return { block, quadrats: members.length, ...shares };
  });
}
