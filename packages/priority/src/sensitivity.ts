/**
 * How firm the first place is: dominance between blocks, and how far one weight must move before another block leads.
 * Source for the one-weight analysis: Triantaphyllou E, Sánchez A (1997) Decision Sciences 28:151–194 (here with the other
 * weights kept in proportion, so that they still sum to 1).
 */
import type { Criterion } from '@crownfall/survey';
import type { ScorePart } from './score.ts';

/** A ranked block, or any result that carries its score's parts. */
export interface ScoredBlock {
  readonly blockId: string;
  readonly scoreParts: readonly ScorePart[];
}

/** The nearest weight on one side at which another block ties with the first place; beyond it that block leads. */
export interface Crossing {
  readonly weight: number;
  /** Positive: the weight must grow by this much. */
  readonly shift: number;
  readonly rival: string;
}

export interface WeightShift {
  readonly criterion: Criterion;
  /** The present weight, weights summing to 1. */
  readonly weight: number;
  /** null: no weight down to 0 changes the first place. */
  readonly down: Crossing | null;
  /** null: no weight up to 1 changes the first place. */
  readonly up: Crossing | null;
}

/** A gap of scores or slopes below this is rounding, not a lead. */
const ROUNDING = 1e-12;

/**
 * For each criterion, how far its weight must move before the first place changes, the other weights shrinking or growing
 * in proportion. With `places` above 1: before the set of so many first blocks changes, `rival` being the block that comes in. Closed
 * form: a block's score is linear in the weight, `x·v + (1 − x)·r` with r its mean value over the other criteria, so the leads cross
 * at `(r_rival − r_first) / ((v_first − v_rival) − (r_first − r_rival))`. When a criterion has all the weight, the others are
 * taken in equal parts. No more blocks than places: nothing crosses. `ranked` in rank order.
 *
 * Example: two blocks, weights ½ and ½, values (1, 0) and (0, 0.8): the first leads 0.5 to 0.4 until the second weight
 * grows from 0.5 to 0.5556.
 */
export function weightShiftToChangeTop(ranked: readonly ScoredBlock[], places = 1): WeightShift[] {
  const inside = ranked.slice(0, places);
  const rivals = ranked.slice(places);
  return (inside[0]?.scoreParts ?? []).map(({ criterion, weight }, position) => {
    let down: Crossing | null = null;
    let up: Crossing | null = null;
    for (const first of inside)
      for (const rival of rivals) {
        const crossing = crossingWith(first, rival, position);
        if (!crossing) continue;
        if (crossing.side === 'down' && (!down || crossing.at > down.weight)) {
          down = { weight: crossing.at, shift: crossing.at - weight, rival: rival.blockId };
        }
        if (crossing.side === 'up' && (!up || crossing.at < up.weight)) {
          up = { weight: crossing.at, shift: crossing.at - weight, rival: rival.blockId };
        }
      }
    return { criterion, weight, down, up };
  });
}

/** The criterion and side with the least shift of all; null when no single weight changes the first place. */
export function leastShift(shifts: readonly WeightShift[]): (Crossing & { readonly criterion: Criterion }) | null {
  const all = shifts.flatMap(({ criterion, down, up }) =>
    [down, up].flatMap((at) => (at ? [{ criterion, ...at }] : [])),
  );
  return all.reduce<(typeof all)[number] | null>(
    (least, at) => (least && Math.abs(least.shift) <= Math.abs(at.shift) ? least : at),
    null,
  );
}

/** True when `a` is at least as valuable as `b` by every criterion and more by one: no positive weights can put `b` first. */
export function dominates(a: ScoredBlock, b: ScoredBlock): boolean {
  let better = false;
  for (let i = 0; i < a.scoreParts.length; i++) {
    if (a.scoreParts[i].value < b.scoreParts[i].value) return false;
    if (a.scoreParts[i].value > b.scoreParts[i].value) better = true;
  }
  return better;
}

/** The ids of the blocks that no other dominates, in rank order: with positive weights the first place is always among them. */
export function undominated(ranked: readonly ScoredBlock[]): string[] {
  // By unweighted sum, then value by value, a dominating block comes before all it dominates (rounded addition keeps order),
  // so it is enough to look at the front found so far.
  const bySum = ranked.map((block) => ({ block, sum: block.scoreParts.reduce((sum, part) => sum + part.value, 0) }));
  bySum.sort((a, b) => b.sum - a.sum || byValues(b.block, a.block));
  const front: ScoredBlock[] = [];
  for (const { block } of bySum) if (!front.some((other) => dominates(other, block))) front.push(block);
  const ids = new Set(front.map((block) => block.blockId));
  return ranked.filter((block) => ids.has(block.blockId)).map((block) => block.blockId);
}

function byValues(a: ScoredBlock, b: ScoredBlock): number {
  const at = a.scoreParts.findIndex((part, i) => part.value !== b.scoreParts[i].value);
  return at < 0 ? 0 : a.scoreParts[at].value - b.scoreParts[at].value;
}

function crossingWith(first: ScoredBlock, rival: ScoredBlock, position: number) {
  const weight = first.scoreParts[position].weight;
  const byThis = first.scoreParts[position].value - rival.scoreParts[position].value;
  const byOthers = meanOfOthers(first, position) - meanOfOthers(rival, position);
  // The lead of the first is x·byThis + (1 − x)·byOthers.
  const slope = byThis - byOthers;
  if (Math.abs(slope) < ROUNDING) return null;
  const lead = weight * byThis + (1 - weight) * byOthers;
  const at = lead < ROUNDING ? weight : Math.min(1, Math.max(0, -byOthers / slope));
  const side: 'down' | 'up' = slope > 0 ? 'down' : 'up';
  const leadAtEnd = side === 'down' ? byOthers : byThis;
  return leadAtEnd < -ROUNDING ? { at, side } : null;
}

function meanOfOthers(block: ScoredBlock, position: number): number {
  const weight = block.scoreParts[position].weight;
  let sum = 0;
  block.scoreParts.forEach((part, i) => {
    if (i !== position) sum += weight < 1 ? part.points : part.value;
  });
  return weight < 1 ? sum / (1 - weight) : sum / (block.scoreParts.length - 1);
}
