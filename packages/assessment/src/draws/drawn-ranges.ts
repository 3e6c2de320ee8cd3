/** What the draws say together: ranges of every figure, and how firm the first places are. */
import { crownRanges, joinedSamples, joinedTallies, type Ranged, rangesOf } from '@crownfall/stain';
import { PAVEMENT_KINDS } from '@crownfall/survey';
import type { DrawPart } from './draw-part.ts';
import type { DrawWork } from './draw-work.ts';

export type Ranges = Omit<Ranged, 'value'>;

/** Ranges by the indices of the ground; none is ever invented. */
export interface DrawnRanges {
  readonly draws: number;
  readonly seed: number;
  readonly total: Ranges;
  /** `block` may be the number of blocks: what lies in no block. */
  readonly ofBlock: (block: number) => Ranges;
  readonly ofBlockAndKind: (block: number, kind: number) => Ranges;
  /** 0 to 0 for a crown that stains nothing in any draw. */
  readonly ofCrown: (zone: number) => Ranges;
  /** Share of the draws in which the block is among the first `top_n`. */
  readonly topShare: (block: number) => number;
}

/** Fewer draws leave the ends of a 95 % range to a handful of them. */
export const LEAST_DRAWS = 100;
/** Counts of draws are kept in 16 bits. */
export const MOST_DRAWS = 60_000;

const NOTHING: Ranges = { range80: [0, 0], range95: [0, 0] };

/** RangeError unless the number of draws is 0 or from 100 to 60,000. */
export function expectDraws(draws: number): void {
  if (draws === 0 || (Number.isSafeInteger(draws) && draws >= LEAST_DRAWS && draws <= MOST_DRAWS)) return;
  throw new RangeError(`draws: expected 0, or a whole number from ${LEAST_DRAWS} to ${MOST_DRAWS}, got ${draws}`);
}

/** Joins parts in the order of their draws. The tallies of the first part are used up. */
export function gatherDraws(work: DrawWork, parts: readonly DrawPart[]): DrawnRanges {
  const total = joinedSamples(parts.map((part) => part.total));
  const blocks = joinedSamples(parts.map((part) => part.blocks));
  const kinds = joinedSamples(parts.map((part) => part.kinds));
  const crowns = joinedTallies(parts.map((part) => part.crowns));
  const draws = parts.reduce((sum, part) => sum + part.draws, 0);
  const top = work.blocks.map((_, block) => parts.reduce((sum, part) => sum + part.top[block], 0));
  const kindRow = new Map([...work.kindKeys].map((key, row) => [key, row]));
  const planned = new Map([...work.plan.stain.zones].map((zone, i) => [zone, i]));
  return {
    draws,
    seed: work.plan.seed,
    total: rangesOf(total, 0),
    ofBlock: (block) => rangesOf(blocks, block),
    ofBlockAndKind: (block, kind) => {
      const row = kindRow.get(block * PAVEMENT_KINDS.length + kind);
      return row === undefined ? NOTHING : rangesOf(kinds, row);
    },
    ofCrown: (zone) => {
      const crown = planned.get(zone);
      return crown === undefined ? NOTHING : crownRanges(crowns, crown, work.plan.stain.falloutM2[crown]);
    },
    topShare: (block) => top[block] / draws,
  };
}
