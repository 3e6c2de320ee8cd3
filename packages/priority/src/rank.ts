/**
 * Ranking by weighted sum of values, shown as its parts.
 * Source: Fishburn PC (1967) Operations Research 15:537–542 (weighted sum model).
 */
import { CRITERIA, type Criterion, type PrioritySettings } from '@crownfall/survey';
import { levelValue } from './level-value.ts';
import type { ScorePart } from './score.ts';

/** What a block brings to the ranking. */
export interface BlockEvidence {
  readonly blockId: string;
  /** Breaks ties, m². */
  readonly stainedM2: number;
  /** Each criterion's amount in its own unit; see `criterion-amounts.ts`. */
  readonly amounts: Readonly<Record<Criterion, number>>;
}

export interface RankedBlock {
  readonly blockId: string;
  /** Position in the list that was given. */
  readonly index: number;
  readonly rank: number;
  readonly score: number;
  readonly scoreParts: readonly ScorePart[];
  readonly stainedM2: number;
}

/** Scores and areas that agree to so many significant digits are a tie: rounding in the last place must not rank. */
const TIE_DIGITS = 12;

/**
 * Blocks in rank order, first to act on first. Score = Σ weight · value, weights divided by their sum, so 0–1. A tie goes to
 * the greater stained area, then to the id in code-unit order (no locale). When all weights are 0 every score is 0 and the
 * stained area ranks. No blocks give an empty list. RangeError for a weight that is negative or not finite.
 */
export function rankBlocks(blocks: readonly BlockEvidence[], settings: PrioritySettings): RankedBlock[] {
  const weights = normalisedWeights(settings.weights);
  const scored = blocks.map((block, index) => {
    const scoreParts = CRITERIA.map((criterion): ScorePart => {
      const amount = block.amounts[criterion];
      const value = levelValue(amount, settings.levels[criterion]);
      return { criterion, amount, value, weight: weights[criterion], points: weights[criterion] * value };
    });
    const score = scoreParts.reduce((sum, part) => sum + part.points, 0);
    return { blockId: block.blockId, index, score, scoreParts, stainedM2: block.stainedM2 };
  });
  return orderByScore(scored).map((block, position) => ({ ...block, rank: position + 1 }));
}

/** Orders by score, ties by stained area, then id; a new list. The rule of `rankBlocks` for any scores. */
export function orderByScore<
  T extends { readonly score: number; readonly stainedM2: number; readonly blockId: string },
>(blocks: readonly T[]): T[] {
  return blocks
    .map((block) => ({ block, score: tieKey(block.score), stainedM2: tieKey(block.stainedM2) }))
    .sort(
      (a, b) =>
        b.score - a.score ||
        b.stainedM2 - a.stainedM2 ||
        (a.block.blockId < b.block.blockId ? -1 : a.block.blockId > b.block.blockId ? 1 : 0),
    )
    .map(({ block }) => block);
}

/** Weights divided by their sum; all 0 when their sum is 0. RangeError for a negative or not finite weight. */
export function normalisedWeights(weights: Readonly<Record<Criterion, number>>): Record<Criterion, number> {
  for (const criterion of CRITERIA) {
    const weight = weights[criterion];
    if (!(weight >= 0 && weight < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`weight of ${criterion}: expected a finite number ≥ 0, got ${weight}`);
    }
  }
  const sum = CRITERIA.reduce((total, criterion) => total + weights[criterion], 0);
  const entries = CRITERIA.map((criterion) => [criterion, sum > 0 ? weights[criterion] / sum : 0] as const);
  return Object.fromEntries(entries) as Record<Criterion, number>;
}

function tieKey(value: number): number {
  return Number(value.toPrecision(TIE_DIGITS));
}
