export type { BloomState, ScorePart } from './score.ts';
