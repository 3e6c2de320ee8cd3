/** What a calibration says, or why there is none. */
import type { Defined, Interval } from '@crownfall/statistics';

/** k fitted to quadrats. */
export interface Calibration {
  /** k: the dose d = k · g · w · s. */
  readonly doseCoefficient: number;
  /** Standard error of ln k; of k it is k times this, to first order. */
  readonly logStandardError: number;
  /** Interval of k, from Student's t on ln k. */
  readonly interval: Interval;
  /** Pearson's χ² over the residual degrees of freedom, per m²: the scatter of a plot of 1 m², as a multiple of y(1 − y). */
  readonly dispersion: number;
  readonly residualFreedom: number;
  /** One for each quadrat used, in the order given. */
  readonly quadrats: readonly FittedQuadrat[];
  readonly blocks: readonly BlockResidual[];
  readonly leaveOneBlockOut: Defined<BlockwiseError>;
}

export interface FittedQuadrat {
  readonly quadratId: string;
  readonly block: string | null;
  readonly areaM2: number;
  /** The even dose, at k = 1, that would stain the plot alike. */
  readonly dose: number;
  readonly observed: number;
  readonly fitted: number;
  /** Observed minus fitted, in standard deviations by the fit. */
  readonly standardisedResidual: number;
}

/** Quadrats of one block together; shares weighted by area. */
export interface BlockResidual {
  readonly block: string | null;
  readonly quadrats: number;
  readonly observed: number;
  readonly fitted: number;
}

/** Error of predicting the quadrats of a block from those of all other blocks; shares, weighted by area. */
export interface BlockwiseError {
  readonly rootMeanSquare: number;
  /** Predicted minus observed. */
  readonly bias: number;
  /** The same for the stained share taken as the mean of the other blocks' quadrats, doses ignored: what the model must beat. */
  readonly rootMeanSquareOfMean: number;
  /** Least and greatest k found when a block is left out. */
  readonly doseCoefficients: readonly [least: number, greatest: number];
  readonly blocks: number;
}

/** Why k was not fitted, with what would make it possible. */
export type CalibrationShortfall =
  | { readonly missing: 'quadrats'; readonly have: number; readonly need: number }
  | { readonly missing: 'blocks'; readonly have: number; readonly need: number }
  /** Doses too much alike: the greatest is only `have` times the least. */
  | { readonly missing: 'spread-of-dose'; readonly have: number; readonly need: number }
  /** All quadrats clean, or all stained through and through: any k beyond some value fits alike. */
  | { readonly missing: 'shares-between'; readonly have: 'all-clean' | 'all-stained' }
  | { readonly missing: 'settled-fit' };

export interface CalibrationOutcome {
  readonly calibration: Calibration | null;
  /** Empty when k was fitted. */
  readonly shortfalls: readonly CalibrationShortfall[];
  /** Quadrats on which nothing falls by the model but which are stained: the cause is not above them, and no tree is blamed. */
  readonly withoutCause: readonly { readonly quadratId: string; readonly stainedShare: number }[];
  /** Quadrats on which nothing falls and which are clean: in keeping with the model, but silent on k. */
  readonly cleanWithoutDose: number;
}
