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
  return new BlockScorer(settings).rank(blocks);
}

/** Ranks again and again under the same settings; evidence that is the same object as before is not scored anew. */
export class BlockScorer {
  readonly #levels: PrioritySettings['levels'];
  readonly #weights: Readonly<Record<Criterion, number>>;
  readonly #known = new WeakMap<BlockEvidence, Scored>();

  constructor({ weights, levels }: Pick<PrioritySettings, 'weights' | 'levels'>) {
    this.#levels = levels;
    this.#weights = normalisedWeights(weights);
  }

  rank(blocks: readonly BlockEvidence[]): RankedBlock[] {
    const scored = blocks.map((block) => this.#scored(block));
    const order = scored.map((_, index) => index).sort((a, b) => compared(scored[a], scored[b]));
    return order.map((index, position) => {
      const { blockId, stainedM2, score, scoreParts } = scored[index];
      return { blockId, index, score, scoreParts, stainedM2, rank: position + 1 };
    });
  }

  #scored(block: BlockEvidence): Scored {
    let scored = this.#known.get(block);
    if (scored === undefined) {
      const scoreParts = CRITERIA.map((criterion) => this.#part(criterion, block.amounts[criterion]));
      const score = scoreParts.reduce((sum, part) => sum + part.points, 0);
      const { blockId, stainedM2 } = block;
      scored = { blockId, stainedM2, score, scoreParts, tie: { score: tieKey(score), stainedM2: tieKey(stainedM2) } };
      this.#known.set(block, scored);
    }
    return scored;
  }

  #part(criterion: Criterion, amount: number): ScorePart {
    const weight = this.#weights[criterion];
    const value = levelValue(amount, this.#levels[criterion]);
    return { criterion, amount, value, weight, points: weight * value };
  }
}

type Scored = Omit<RankedBlock, 'index' | 'rank'> & Keyed;

/** What orders a block: rounded score and area, then the id. */
interface Keyed {
  readonly blockId: string;
  readonly tie: { readonly score: number; readonly stainedM2: number };
}

/** Orders by score, ties by stained area, then id; a new list. The rule of `rankBlocks` for any scores. */
export function orderByScore<
  T extends { readonly score: number; readonly stainedM2: number; readonly blockId: string },
>(blocks: readonly T[]): T[] {
  return blocks
    .map((block) => ({
      block,
      blockId: block.blockId,
      tie: { score: tieKey(block.score), stainedM2: tieKey(block.stainedM2) },
    }))
    .sort(compared)
    .map(({ block }) => block);
}

function compared(a: Keyed, b: Keyed): number {
  return (
    b.tie.score - a.tie.score ||
    b.tie.stainedM2 - a.tie.stainedM2 ||
    (a.blockId < b.blockId ? -1 : a.blockId > b.blockId ? 1 : 0)
  );
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
