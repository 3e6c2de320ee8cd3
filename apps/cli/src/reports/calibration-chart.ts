/** Observed against fitted stained shares of the quadrats. */
import type { ProjectCalibration } from '@crownfall/assessment';
import { scatterChart } from '@crownfall/sheets';
import { grouped } from './quantities.ts';

/** The chart as SVG text; a RangeError when no coefficient was fitted. */
export function calibrationChart({ title, asOf, calibration }: ProjectCalibration): string {
  if (calibration === null) throw new RangeError('chart: expected a fitted coefficient, got none');
  const { doseCoefficient: k, interval, quadrats } = calibration;
  return scatterChart({
    title: `Quadrats: observed and fitted stain, k = ${grouped(k, 2)} (${grouped(interval.lower, 2)} to ${grouped(interval.upper, 2)})`,
    description: `${quadrats.length} quadrats of ${title}; points on the line are predicted exactly.`,
    note: `${title}, as of ${asOf}. Each point is one quadrat.`,
    across: 'fitted stained share, %',
    up: 'observed stained share, %',
    points: quadrats.map(({ quadratId, observed, fitted }) => ({
      x: 100 * fitted,
      y: 100 * observed,
      label: quadratId,
    })),
    lines: [
      {
        points: [
          [0, 0],
          [
            100 * Math.max(...quadrats.map((one) => Math.max(one.fitted, one.observed))),
            100 * Math.max(...quadrats.map((one) => Math.max(one.fitted, one.observed))),
          ],
        ],
        label: 'as fitted',
        dashed: true,
      },
    ],
    within: { from: 0, to: 100 },
  });
}
