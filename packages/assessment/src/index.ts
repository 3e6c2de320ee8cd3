export {
  type AssessOptions,
  assess,
  assessReckoned,
  drawWorkOf,
  finishedAssessment,
  isStopped,
  type Placed,
  placeProject,
  type Reckoned,
  reckonPlaced,
  reckonProject,
  type Stopped,
  sceneOf,
} from './assess.ts';
export {
  calibrateProject,
  type ProjectCalibration,
  type QuadratLeftOut,
} from './calibrate/calibrate-project.ts';
export { type DrawPart, drawPart } from './draws/draw-part.ts';
export { type DrawWork, drawWork } from './draws/draw-work.ts';
export { type DrawnRanges, expectDraws, gatherDraws, LEAST_DRAWS, MOST_DRAWS } from './draws/drawn-ranges.ts';
export type { BlockSource, Ground, GroundBlock, GroundCrown, GroundPavement } from './ground/ground.ts';
export { reckonGeometry } from './ground/reckon-geometry.ts';
export type { BlockPreview, CrownPreview } from './live/crown-preview.ts';
export { type Begun, LiveAssessment } from './live/live-assessment.ts';
export { type BlockWater, blockWater, type TreeWater, type WaterLine } from './plan/block-water.ts';
export { type BloomCalendar, bloomCalendar, calendarFrom, type TreeBloom } from './plan/bloom-calendar-of.ts';
export type { Address } from './plan/notice-list.ts';
export { type OfferBook, type OfferOptions, offersOf } from './plan/offers-of.ts';
export { type PlanOptions, planWork } from './plan/plan-work.ts';
export { treatmentReasons } from './plan/treatment-reasons.ts';
export { type Progress, STAGES, type Stage } from './progress.ts';
export { type BlockNotes, type Ranking, rank } from './rank-stage.ts';
export { checkRaters, type RaterCheck } from './raters/check-raters.ts';
export {
  biasesAgainstKnown,
  biasesAgainstMean,
  type RaterBias,
  type TrainingReading,
} from './raters/rater-bias.ts';
export type { RaterPair } from './raters/rater-pair.ts';
export type {
  Assessment,
  BlameRow,
  BlockResult,
  LedgerRow,
  PavementResult,
  RunRecord,
  TreeResult,
} from './result.ts';
export { compose } from './results/compose.ts';
export type { Stages } from './results/stages.ts';
export type { RatingGoal } from './sample/allocate.ts';
export {
  type PlannedStratum,
  planRatings,
  type RatingPlan,
  type SampleOptions,
  type TotalRanges,
} from './sample/plan-ratings.ts';
export {
  EFFICACY_METHODS,
  type Efficacy,
  type EfficacyMethod,
  type EfficacyRow,
  efficacyOf,
  type FollowedTree,
  type GroupMeans,
  type NoEfficacy,
} from './season/efficacy.ts';
export { FALSE_DISCOVERY_RATE, type SpotTree } from './season/hot-spots.ts';
export {
  type BlockChange,
  DEFAULT_REACH_M,
  reviewSeason,
  type SeasonOptions,
  type SeasonReview,
} from './season/review-season.ts';
export { reckonStain, type Stain } from './stain-stage.ts';
export { reviewVisits, type VisitedBlock, type VisitedPlace, type VisitReview } from './visits/review-visits.ts';
