export { bloomStateOf, stateOf } from './bloom-state.ts';
export {
  type BlockFacts,
  complaintCounts,
  complaintWeight,
  criterionAmounts,
  type StainedPart,
} from './criterion-amounts.ts';
export { levelValue } from './level-value.ts';
export { type BlockEvidence, normalisedWeights, orderByScore, type RankedBlock, rankBlocks } from './rank.ts';
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
