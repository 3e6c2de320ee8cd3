export { CALENDAR_GROUPS, type CalendarEntry, type CalendarGroup, calendarOf } from './bloom/bloom-calendar.ts';
export {
  type BloomForecast,
  type DailyTemperature,
  forecastBloom,
  LEAST_SEASONS,
  type NoForecast,
  placeOpening,
} from './bloom/bloom-forecast.ts';
export { type BloomWindow, bloomWindowOf, type DayRange } from './bloom/bloom-window.ts';
export { calendarSpans, dayRangeText } from './bloom/calendar-spans.ts';
export { type CalendarSpan, icalendarOf } from './bloom/icalendar.ts';
export { bloomStateOf, stateOf } from './bloom-state.ts';
export {
  type BlockFacts,
  complaintCounts,
  complaintWeight,
  criterionAmounts,
  type StainedPart,
} from './criterion-amounts.ts';
export { addDays, daysBetween } from './days.ts';
export { levelValue } from './level-value.ts';
export { type ActionOffer, chargeOf, isOffered, PARTS } from './plan/action-offer.ts';
export { type Choice, type Clash, chooseWork } from './plan/choose-work.ts';
export { type Highs, highsSolver } from './plan/highs-solver.ts';
export type { SolveOptions, Solver } from './plan/programme.ts';
export { type BlockSituation, reasonsAgainst } from './plan/reasons-against.ts';
export { rotationNotes } from './plan/rotation.ts';
export { weeksOf } from './plan/weeks-of.ts';
export { frontier, nextUnits, type ProblemFor, type Solving } from './plan/what-more-buys.ts';
export type {
  DistrictShare,
  FrontierPoint,
  LeaveOutlook,
  NextUnit,
  NoPlan,
  Notice,
  PlannedBlock,
  RatingValue,
  RotationNote,
  TreatedTree,
  WorkPlan,
} from './plan/work-plan.ts';
export { limitsOf, type WorkLimits, type WorkProblem, workProblem } from './plan/work-problem.ts';
export {
  type BlockEvidence,
  BlockScorer,
  normalisedWeights,
  orderByScore,
  type RankedBlock,
  rankBlocks,
} from './rank.ts';
export type { BloomState, ScorePart } from './score.ts';
export {
  type Crossing,
  dominates,
  leastShift,
  type ScoredBlock,
  undominated,
  type WeightShift,
  weightShiftToChangeTop,
} from './sensitivity.ts';
export { type DrawnAmounts, TopPlaces } from './top-places.ts';
