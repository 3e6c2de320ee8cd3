/** The season's quadrats against the coefficient fitted to them. */
import { calibrateProject, isStopped } from '@crownfall/assessment';
import type { ProjectInput } from '@crownfall/survey';

/** The fit of the dose coefficient k, or how many quadrats were too few for one. Shares 0–1. */
export type CalibrationShown =
  | { readonly k: null; readonly quadratsRead: number }
  | {
      readonly k: number;
      readonly interval: readonly [lower: number, upper: number];
      readonly quadrats: readonly { readonly quadratId: string; readonly observed: number; readonly fitted: number }[];
    };

export function calibrationShown(input: ProjectInput): CalibrationShown {
  const fitted = calibrateProject(input);
  if (isStopped(fitted) || !fitted.calibration) {
    return { k: null, quadratsRead: isStopped(fitted) ? 0 : fitted.quadratsRead };
  }
  const { doseCoefficient: k, interval, quadrats } = fitted.calibration;
  return { k, interval: [interval.lower, interval.upper], quadrats };
}
