export { type AreaColumns, figuresAt, unranged } from './area-columns.ts';
export { type BlameColumns, blockKey } from './attribution.ts';
export { BalancedSums, balancedSum } from './balanced-sum.ts';
export {
  calibrate,
  LEAST_BLOCKS,
  LEAST_QUADRATS,
  LEAST_SPREAD_OF_DOSE,
} from './calibration/calibrate.ts';
export type {
  BlockResidual,
  BlockwiseError,
  Calibration,
  CalibrationOutcome,
  CalibrationShortfall,
  FittedQuadrat,
} from './calibration/calibration.ts';
export { equivalentDose, meanDose, type QuadratDose } from './calibration/quadrat-dose.ts';
export { type CrownColumns, crownFiguresAt } from './crown-columns.ts';
export { layerShares, treeDoses } from './dose.ts';
export type { CrownFigures, PavementFigures, Ranged } from './figures.ts';
export { type LedgerKeys, ledgersOf, reckonLedgers, type StainLedgers } from './ledgers.ts';
export { renumbered, withRunsOf } from './splice-runs.ts';
export { RunReckoner, type StainRuns, stainRuns } from './stain-runs.ts';
export { cellDose, type DoseField, stainedShares } from './stained-share.ts';
export {
  type CrownTally,
  countCrowns,
  crownRanges,
  crownTally,
  joinedTallies,
} from './uncertainty/crown-tally.ts';
export { type FigureSamples, figureSamples, joinedSamples, ranges, rangesOf } from './uncertainty/figure-samples.ts';
export { type Drawn, type DrawPlan, makeDraws, sharedSpread } from './uncertainty/make-draws.ts';
export { type SeverityPlan, severityPlan } from './uncertainty/severity-plan.ts';
export { type PlannedCrown, type StainPlan, stainPlan } from './uncertainty/stain-plan.ts';
export { savedByTreating, type WhatIf, whatIf, type ZoneCells, zoneCells } from './what-if.ts';
