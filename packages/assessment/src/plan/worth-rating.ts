/**
 * Which unrated trees matter most to the plan: what knowing one before deciding would be worth on average. Source: Strong M,
 * Oakley JE (2013) An efficient method for computing single-parameter partial expected value of perfect information, Med. Decis.
 * Making 33:755–766 (the draws are ordered by the tree's figure and decided in groups).
 */
import {
  type ActionOffer,
  isOffered,
  type ProblemFor,
  type RatingValue,
  type Solving,
  type WorkProblem,
} from '@crownfall/priority';
import { ACTIONS, type PlanSettings } from '@crownfall/survey';
import { effectOf, type OfferBook } from './offers-of.ts';

/** Groups the draws are put into; more would follow the noise of few draws. */
const GROUPS = 5;
/** Below this a value is rounding, m². */
const LEAST_M2 = 1e-6;

/**
 * Unrated trees by their worth, greatest first, m² of stained area avoided more; empty without draws. A block's actions are
 * valued at their effect less what money and hours would avoid elsewhere (shadow prices of the relaxed programme). Rating a tree
 * also makes it treatable where nothing else forbids treatment. Slightly too high with few draws.
 */
export function worthRating(book: OfferBook, problem: WorkProblem, problemFor: ProblemFor, by: Solving): RatingValue[] {
  const { samples, reckoned, scene } = book;
  if (samples === null) return [];
  const { ground } = reckoned.stages;
  const price = shadowPrices(problem, problemFor, by);
  const { zones, block, weighted, stainedM2 } = samples.unrated;
  const column = (values: Float32Array, rows: number, row: number) =>
    Float64Array.from({ length: samples.draws }, (_, draw) => values[draw * rows + row]);
  return zones
    .map((zone, row): RatingValue => {
      const figure = column(weighted.value, weighted.rows, row);
      const own = column(stainedM2.value, stainedM2.rows, row);
      const actions = netEffects(book, block[row], price);
      const extra = scene.keepsOff(zone) ? treatable(actions, own, reckoned.settings.plan, price) : [];
      const { treeId } = ground.crowns[zone].tree;
      return { treeId, blockId: ground.blocks[block[row]].blockId, valueM2: worth(figure, actions, extra) };
    })
    .filter(({ valueM2 }) => valueM2 > LEAST_M2)
    .sort((a, b) => b.valueM2 - a.valueM2 || (a.treeId < b.treeId ? -1 : 1));
}

/** m² that one more unit of money, and one more crew hour, would avoid. */
interface Prices {
  readonly perMoney: number;
  readonly perHour: number;
}

/** From the relaxed programme with and without 1 % more; its value is concave in the limits, so neither is negative. */
function shadowPrices({ limits, programme }: WorkProblem, problemFor: ProblemFor, { solve }: Solving): Prices {
  const relaxed = (other: Partial<typeof limits>) =>
    solve(problemFor({ ...limits, ...other }).programme, { relaxed: true }).value;
  const now = solve(programme, { relaxed: true }).value;
  const { budget, crewHoursPerWeek: hours, weeks } = limits;
  const slope = (more: number | null, value: (by: number) => number) => {
    const by = 0.01 * (more ?? 0);
    return by > 0 ? Math.max(0, (value(by) - now) / by) : 0;
  };
  return {
    perMoney: slope(budget, (by) => relaxed({ budget: (budget ?? 0) + by })),
    perHour: slope(hours, (by) => relaxed({ crewHoursPerWeek: (hours ?? 0) + by })) / weeks,
  };
}

/** One action of a block: its net effect in every draw. */
interface NetEffect {
  readonly offer: ActionOffer;
  /** Whether the block may choose it as things stand. */
  readonly able: boolean;
  readonly net: Float64Array;
}

function netEffects({ offers, samples }: OfferBook, block: number, price: Prices): NetEffect[] {
  if (samples === null) return [];
  return offers.slice(block * ACTIONS.length, (block + 1) * ACTIONS.length).flatMap((offer) => {
    const effect = effectOf(offer.action);
    if (effect === null || offer.cost === null || offer.crewHours === null) return [];
    const burden = price.perMoney * offer.cost + price.perHour * offer.crewHours;
    const { value, rows } = samples[effect];
    const net = Float64Array.from({ length: samples.draws }, (_, draw) => value[draw * rows + block] - burden);
    return [{ offer, able: isOffered(offer), net }];
  });
}

/** The treatments of a block with this tree added, where evidence is all that is missing. */
function treatable(
  actions: readonly NetEffect[],
  own: Float64Array,
  plan: PlanSettings,
  price: Prices,
): Float64Array[] {
  const list = plan.prices.find(({ action }) => action === 'treat');
  if (!list) return [];
  const more = price.perMoney * list.per_tree + price.perHour * list.hours_per_tree;
  return actions
    .filter(({ offer: { action } }) => action === 'treat' || action === 'treat_and_clean')
    .filter(({ offer: { forbidden } }) => forbidden.every(({ code }) => code === 'cause-without-evidence'))
    .map(({ net }) => net.map((value, draw) => value + plan.treat_lowers * own[draw] - more));
}

/** Mean of the best choice in each group less the best choice over all. */
function worth(figure: Float64Array, actions: readonly NetEffect[], extra: readonly Float64Array[]): number {
  const order = [...figure.keys()].sort((a, b) => figure[a] - figure[b] || a - b);
  const able = actions.filter((each) => each.able).map(({ net }) => net);
  const best = (choices: readonly Float64Array[], draws: readonly number[]) =>
    Math.max(0, ...choices.map((net) => draws.reduce((sum, draw) => sum + net[draw], 0) / draws.length));
  let known = 0;
  for (const draws of groupsOf(order, figure))
    known += (best([...able, ...extra], draws) * draws.length) / order.length;
  return known - best(able, order);
}

/** Draws in groups of about equal size; equal figures stay together, so that a certain tree has one group and no worth. */
function groupsOf(order: readonly number[], figure: Float64Array): number[][] {
  const groups: number[][] = [];
  const size = order.length / GROUPS;
  for (const draw of order) {
    const last = groups.at(-1);
    const alike = last !== undefined && figure[last[last.length - 1]] === figure[draw];
    if (last && (alike || last.length < size)) last.push(draw);
    else groups.push([draw]);
  }
  return groups;
}
