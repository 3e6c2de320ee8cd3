/** How firm the plan is: how often each block's action is chosen again when the figures are drawn anew. */
import { type ActionOffer, chooseWork, type Solving, type WorkProblem } from '@crownfall/priority';
import { ACTIONS } from '@crownfall/survey';
import { effectOf, type OfferBook } from './offers-of.ts';

/** Plans that are made anew; fewer where each takes long. */
const PLANS = 100;
const PLANS_OF_MANY = 20;
const MANY_COLUMNS = 1500;
/** A draw's plan within this gap of its own optimum says as much. */
const NEAR = 1e-3;

/**
 * By block, the share of the draws in which its action stays the best choice under the same limits; null without draws. The first
 * draws are taken. Districts' floors stay those of the figures themselves.
 */
export function sharesKept(
  { samples }: OfferBook,
  problem: WorkProblem,
  taken: ReadonlyMap<string, ActionOffer>,
  { solve, options }: Solving,
): ((blockId: string) => number) | null {
  if (samples === null) return null;
  const plans = Math.min(samples.draws, problem.columns.length > MANY_COLUMNS ? PLANS_OF_MANY : PLANS);
  const counts = new Map<string, Map<string, number>>();
  for (let draw = 0; draw < plans; draw++) {
    const gain = Float64Array.from(problem.columns, ({ action }, column) => {
      const effect = effectOf(action);
      const block = Math.floor(problem.source[column] / ACTIONS.length);
      return effect === null ? 0 : samples[effect].value[draw * samples[effect].rows + block];
    });
    const drawn = { ...problem, programme: { ...problem.programme, gain } };
    const choice = chooseWork(drawn, solve, { ...options, gap: Math.max(NEAR, options.gap ?? 0) });
    if (!choice.feasible) continue;
    for (const { blockId, action } of choice.offers) {
      const block = counts.get(blockId) ?? new Map<string, number>();
      counts.set(blockId, block.set(action, (block.get(action) ?? 0) + 1));
    }
  }
  const all = new Set([...counts.keys(), ...taken.keys()]);
  const shares = new Map<string, number>();
  for (const blockId of all) {
    const block = counts.get(blockId);
    const action = taken.get(blockId)?.action;
    const acted = [...(block?.values() ?? [])].reduce((sum, count) => sum + count, 0);
    shares.set(blockId, (action === undefined ? plans - acted : (block?.get(action) ?? 0)) / plans);
  }
  // A block that no draw acts in is left alone in all of them.
  return (blockId) => shares.get(blockId) ?? 1;
}
