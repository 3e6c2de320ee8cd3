/** The kept ranking as a table that can say what rank a changed score would have. */
import type { RankedBlock } from '@crownfall/priority';
import { CRITERIA, type Criterion } from '@crownfall/survey';
import type { Ranking } from '../rank-stage.ts';

/** As in `orderByScore`: what agrees to so many digits is a tie. */
const TIE_DIGITS = 12;

interface Key {
  readonly score: number;
  readonly stainedM2: number;
  readonly blockId: string;
}

export class RankTable {
  /** By block index. */
  readonly #ranked: RankedBlock[] = [];
  readonly #keys: Key[] = [];

  constructor({ ranked }: Ranking) {
    for (const block of ranked) {
      this.#ranked[block.index] = block;
      this.#keys[block.index] = keyOf(block);
    }
  }

  rank(block: number): number {
    return this.#ranked[block].rank;
  }

  amounts(block: number): Record<Criterion, number> {
    const parts = this.#ranked[block].scoreParts;
    const entries = CRITERIA.map((criterion, i) => [criterion, parts[i].amount]);
    return Object.fromEntries(entries) as Record<Criterion, number>;
  }

  /** Ranks, by block index, of blocks with other scores among all others as they are. Linear in the blocks for each. */
  ranksWith(changed: readonly (Key & { readonly block: number })[]): ReadonlyMap<number, number> {
    const fresh = new Map(changed.map((each) => [each.block, keyOf(each)]));
    const ranks = new Map<number, number>();
    for (const [block, key] of fresh) {
      let before = 0;
      for (let other = 0; other < this.#keys.length; other++) {
        if (other !== block && comesBefore(fresh.get(other) ?? this.#keys[other], key)) before++;
      }
      ranks.set(block, before + 1);
    }
    return ranks;
  }
}

function keyOf({ score, stainedM2, blockId }: Key): Key {
  const digits = (value: number): number => Number(value.toPrecision(TIE_DIGITS));
  return { score: digits(score), stainedM2: digits(stainedM2), blockId };
}

function comesBefore(a: Key, b: Key): boolean {
  if (a.score !== b.score) return a.score > b.score;
  if (a.stainedM2 !== b.stainedM2) return a.stainedM2 > b.stainedM2;
  return a.blockId < b.blockId;
}
