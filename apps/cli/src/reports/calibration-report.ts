/** A calibration as a planner would defend it: k, its interval, how well it holds, what did not enter and why. */
import type { ProjectCalibration, QuadratLeftOut } from '@crownfall/assessment';
import type { Calibration, CalibrationShortfall } from '@crownfall/stain';
import { reasonInWords } from '@crownfall/statistics';
import { type Column, layOut } from '../terminal/table.ts';
import { grouped, percentText } from './quantities.ts';

const WIDTH = 120;
/** Blocks printed, those farthest off first. */
const BLOCKS_SHOWN = 8;

const COLUMNS: readonly Column[] = [
  { title: 'block', align: 'left' },
  { title: 'quadrats', align: 'right' },
  { title: 'observed', align: 'right' },
  { title: 'fitted', align: 'right' },
  { title: 'off by, points', align: 'right' },
];

export function calibrationReport(
  outcome: ProjectCalibration,
  { kept, overridden }: { readonly kept: string | null; readonly overridden: boolean },
): string {
  const { title, season, asOf, calibration, quadratsRead } = outcome;
  const used = calibration?.quadrats.length ?? 0;
  const lines = [`${title} – dose coefficient from quadrats – season ${season}, as of ${asOf}`, ''];
  if (calibration) lines.push(...fitted(calibration));
  else lines.push('No coefficient was fitted. Missing:', ...outcome.shortfalls.map((one) => `  ${shortfallText(one)}`));
  lines.push('', `${quadratsRead} quadrats: ${used} entered the fit.`, ...notEntered(outcome));
  if (kept !== null) lines.push('', `Kept in ${kept} beside the project; every command now uses it.`);
  else if (calibration) lines.push('', 'Nothing was kept (--dry-run).');
  if (overridden)
    lines.push('project.json sets dose_coefficient itself, and that counts more: take it out to use this one.');
  return lines.join('\n');
}

function fitted(calibration: Calibration): string[] {
  const { doseCoefficient: k, logStandardError, interval, dispersion, residualFreedom } = calibration;
  const confidence = `${grouped(100 * interval.confidence, 0)} %`;
  return [
    `k = ${grouped(k, 3)}, ${confidence} interval ${grouped(interval.lower, 3)} to ${grouped(interval.upper, 3)} ` +
      `(standard error ${grouped(k * logStandardError, 3)}).`,
    `A crown affected by half, with a cause of weight 1, so stains ${percentText(-Math.expm1(-k / 2))} of the pavement below it.`,
    `Dispersion ${dispersion.toPrecision(3)} on ${residualFreedom} degrees of freedom: a plot of 1 m² scatters as if it held ` +
      `${grouped(1 / dispersion, 0)} independent patches.`,
    ...carriedOver(calibration),
    '',
    ...layOut(COLUMNS, blockRows(calibration), WIDTH),
  ];
}

function carriedOver({ leaveOneBlockOut }: Calibration): string[] {
  if (!leaveOneBlockOut.defined) {
    return [`Error in blocks it was not fitted to: not known, as ${reasonInWords(leaveOneBlockOut.reason)}.`];
  }
  const { rootMeanSquare, bias, rootMeanSquareOfMean, doseCoefficients, blocks } = leaveOneBlockOut.value;
  return [
    `In a block it was not fitted to, a quadrat's stained share is missed by ${points(rootMeanSquare)} points (root mean square over ` +
      `${blocks} blocks left out in turn, mean ${signedPoints(bias)}); with no crowns considered it would be ${points(rootMeanSquareOfMean)}.`,
    `Leaving out a block moves k within ${grouped(doseCoefficients[0], 3)} to ${grouped(doseCoefficients[1], 3)}.`,
  ];
}

function blockRows({ blocks }: Calibration): string[][] {
  return [...blocks]
    .sort((a, b) => Math.abs(b.observed - b.fitted) - Math.abs(a.observed - a.fitted))
    .slice(0, BLOCKS_SHOWN)
    .map(({ block, quadrats, observed, fitted: expected }) => [
      block ?? 'in no block',
      String(quadrats),
      percentText(observed),
      percentText(expected),
      signedPoints(observed - expected),
    ]);
}

function notEntered({ leftOut, withoutCause, cleanWithoutDose }: ProjectCalibration): string[] {
  const lines: string[] = [];
  if (cleanWithoutDose > 0)
    lines.push(`  ${cleanWithoutDose} clean, with nothing falling on them: as it should be, but silent on k.`);
  const reasons: Readonly<Record<QuadratLeftOut['because'], string>> = {
    'unrated-above': 'under a crown that may stain but was not rated',
    'other-season': 'of another season',
    'after-as-of': 'measured after the day of the figures',
    'no-area': 'without a usable outline',
  };
  for (const because of Object.keys(reasons) as QuadratLeftOut['because'][]) {
    const ids = leftOut.filter((one) => one.because === because).map(({ quadratId }) => quadratId);
    if (ids.length > 0) lines.push(`  ${ids.length} ${reasons[because]}: ${ids.join(', ')}.`);
  }
  if (withoutCause.length > 0) {
    const each = withoutCause.map(({ quadratId, stainedShare }) => `${quadratId} (${percentText(stainedShare)})`);
    lines.push(`  ${withoutCause.length} stained without a cause above, so no tree is blamed: ${each.join(', ')}.`);
  }
  return lines;
}

function shortfallText(shortfall: CalibrationShortfall): string {
  switch (shortfall.missing) {
    case 'quadrats':
      return `quadrats under rated crowns that stain: ${shortfall.have} of at least ${shortfall.need}. Measure ${shortfall.need - shortfall.have} more.`;
    case 'blocks':
      return `blocks they lie in: ${shortfall.have} of at least ${shortfall.need}. Measure in other blocks too.`;
    case 'spread-of-dose':
      return `spread of dose: the heaviest is ${grouped(shortfall.have, 2)} times the lightest, at least ${shortfall.need} is needed. Measure below light crowns and heavy ones.`;
    case 'shares-between':
      return shortfall.have === 'all-clean'
        ? 'any stain: all quadrats are clean, so every small k fits alike.'
        : 'any clean ground: all quadrats are stained through and through, so every large k fits alike.';
    case 'settled-fit':
      return 'a fit that settles: the quadrats contradict each other too much.';
  }
}

const points = (share: number): string => grouped(100 * share, 1);
const signedPoints = (share: number): string => `${share > 0 ? '+' : ''}${points(share)}`;

/** The same for machines; shares 0–1. */
export function calibrationJson(outcome: ProjectCalibration, kept: boolean): unknown {
  const { title, season, asOf, calibration, shortfalls, withoutCause, cleanWithoutDose, leftOut, quadratsRead } =
    outcome;
  return {
    title,
    season,
    as_of: asOf,
    calibrated: calibration !== null,
    kept,
    missing: shortfalls,
    ...(calibration === null ? {} : coefficientJson(calibration)),
    quadrats_read: quadratsRead,
    quadrats_left_out: leftOut.map(({ quadratId, because, ...rest }) => ({
      quadrat_id: quadratId,
      because,
      ...('treeId' in rest ? { tree_id: rest.treeId } : {}),
    })),
    stain_without_cause: withoutCause.map(({ quadratId, stainedShare }) => ({
      quadrat_id: quadratId,
      stained_share: stainedShare,
    })),
    clean_without_dose: cleanWithoutDose,
  };
}

function coefficientJson(calibration: Calibration): object {
  const { doseCoefficient, logStandardError, interval, leaveOneBlockOut } = calibration;
  return {
    dose_coefficient: doseCoefficient,
    standard_error: doseCoefficient * logStandardError,
    log_standard_error: logStandardError,
    interval: [interval.lower, interval.upper],
    confidence: interval.confidence,
    dispersion: calibration.dispersion,
    residual_freedom: calibration.residualFreedom,
    leave_one_block_out: leaveOneBlockOut.defined
      ? {
          blocks: leaveOneBlockOut.value.blocks,
          root_mean_square: leaveOneBlockOut.value.rootMeanSquare,
          bias: leaveOneBlockOut.value.bias,
          root_mean_square_of_mean: leaveOneBlockOut.value.rootMeanSquareOfMean,
          dose_coefficients: leaveOneBlockOut.value.doseCoefficients,
        }
      : { undefined_because: leaveOneBlockOut.reason },
    blocks: calibration.blocks.map(({ block, quadrats, observed, fitted: expected }) => ({
      block_id: block,
      quadrats,
      observed,
      fitted: expected,
    })),
    quadrats: calibration.quadrats.map((quadrat) => ({
      quadrat_id: quadrat.quadratId,
      block_id: quadrat.block,
      area_m2: quadrat.areaM2,
      dose_at_k_1: quadrat.dose,
      observed: quadrat.observed,
      fitted: quadrat.fitted,
      standardised_residual: quadrat.standardisedResidual,
    })),
  };
}
