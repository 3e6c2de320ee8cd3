/** What the plan says an action avoids is what a full reckoning says with that action's inputs changed. */
import { resolve } from 'node:path';
import {
  assess,
  isStopped,
  LiveAssessment,
  type OfferBook,
  offersOf,
  planWork,
  type Reckoned,
  reckonProject,
} from '@crownfall/assessment';
import { readProject } from '@crownfall/exchange/node';
import { type ActionOffer, highsSolver, type Solver } from '@crownfall/priority';
import { balancedSum, makeDraws, reckonLedgers } from '@crownfall/stain';
import { PAVEMENT_KINDS, type ProjectInput, type RawFeature } from '@crownfall/survey';
import loadHighs from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';

const SAMPLE = resolve(import.meta.dirname, '../../sample-geo');
/** m²; sums of the town's pieces in another order. */
const SAME_M2 = 1e-9;
/** Draws are kept to 24 bits: 1e-7 of some thousand m². */
const SAME_DRAWN_M2 = 1e-3;

let input: ProjectInput;
let solve: Solver;
let reckoned: Reckoned;
let book: OfferBook;

beforeAll(async () => {
  solve = highsSolver(await loadHighs());
  // Every tree rated once and in figures, so that no tree borrows from another: an edit then changes that tree alone.
  input = allRated(await readProject(SAMPLE));
  reckoned = ready(reckonProject(input));
  book = offersOf(reckoned, { draws: 100 });
});

const offer = (blockId: string, action: ActionOffer['action']): ActionOffer => {
  const found = book.offers.find((each) => each.blockId === blockId && each.action === action);
  if (!found) throw new Error(`no offer ${action} in ${blockId}`);
  return found;
};
const stainedM2 = (of: Reckoned) => of.stages.stain.ledgers.total.stainedM2[0];

describe('effects of actions', () => {
  test('treating in bloom: the whole project assessed anew with the trees’ severities lowered', () => {
    const { treat_lowers } = reckoned.settings.plan;
    const blocks = book.offers.filter(({ action, treeIds }) => action === 'treat' && treeIds.length > 0).slice(0, 3);
    expect(blocks.length).toBe(3);
    for (const { treeIds, avoidedM2 } of blocks) {
      const trees = new Set(treeIds);
      const lowered = withRatings(input, (row) =>
        trees.has(String(row.tree_id)) ? { ...row, browned_pct: Number(row.browned_pct) * (1 - treat_lowers) } : row,
      );
      const anew = assess(lowered);
      if (isStopped(anew)) throw new Error('stopped');
      expect(Math.abs(stainedM2(reckoned) - anew.total.stainedM2.value - avoidedM2.value)).toBeLessThan(SAME_M2);
    }
  });

  test('replacing a tree: the whole project assessed anew without its crown', () => {
    const { treeIds, avoidedM2 } = offer('B30', 'replace');
    const layer = input.layers.crowns;
    if (!layer) throw new Error('no crowns');
    const crowns = { ...layer, features: layer.features.filter(({ properties }) => properties.tree_id !== treeIds[0]) };
    const anew = assess({ ...input, layers: { ...input.layers, crowns } });
    if (isStopped(anew)) throw new Error('stopped');
    // The overlay is laid anew without that crown, about a slightly different middle of the town.
    expect(Math.abs(stainedM2(reckoned) - anew.total.stainedM2.value - avoidedM2.value)).toBeLessThan(1e-6);
  });

  test('every block’s treatment and replacement: all ledgers reckoned anew with the doses changed', () => {
    const { field, keys, total } = reckoned.stages.stain.ledgers;
    const { treat_lowers } = reckoned.settings.plan;
    book.scene.treated.forEach((zones, block) => {
      const dose = field.dose.map((each, zone) => (zones.includes(zone) ? (1 - treat_lowers) * each : each));
      const { blockId } = reckoned.stages.ground.blocks[block];
      const after = reckonLedgers({ ...field, dose }, keys);
      const change = total.stainedM2[0] - after.total.stainedM2[0];
      expect(Math.abs(change - offer(blockId, 'treat').avoidedM2.value)).toBeLessThan(SAME_M2);
      // Cleaning takes its share off what is left on this block's cleaned kinds.
      const left = cleanable(after.byBlockAndKind.stainedM2, block);
      const cleaned = change + reckoned.settings.plan.clean_removes * left;
      expect(Math.abs(cleaned - offer(blockId, 'treat_and_clean').avoidedM2.value)).toBeLessThan(SAME_M2);
    });
  });

  test('cleaning takes its share off the stain of the block’s cleaned pavement, and no more', () => {
    const { byBlockAndKind } = reckoned.stages.stain.ledgers;
    reckoned.stages.ground.blocks.forEach(({ blockId }, block) => {
      const cleaned = reckoned.settings.plan.clean_removes * cleanable(byBlockAndKind.stainedM2, block);
      expect(Math.abs(cleaned - offer(blockId, 'clean').avoidedM2.value)).toBeLessThan(SAME_M2);
    });
  });

  test('in every draw a treatment’s effect is the draw made again with the doses lowered', () => {
    if (!book.work || !book.samples) throw new Error('no draws');
    const { work, samples, scene } = book;
    const block = scene.treated.findIndex((zones) => zones.length > 2);
    const { treat_lowers } = reckoned.settings.plan;
    const { severity, stain } = work.plan;
    const trees = new Set(scene.treated[block].map((zone) => reckoned.stages.ground.treeIndex[zone]));
    const factor = severity.factor.map((each, tree) => (trees.has(tree) ? (1 - treat_lowers) * each : each));
    const before: number[] = [];
    const after: number[] = [];
    makeDraws(work.plan, 0, 40, ({ runM2 }) => before.push(balancedSum(runM2)));
    makeDraws({ ...work.plan, severity: { ...severity, factor } }, 0, 40, ({ runM2 }) =>
      after.push(balancedSum(runM2)),
    );
    const rows = samples.treat.rows;
    for (let draw = 0; draw < 40; draw++) {
      const effect = samples.treat.value[draw * rows + block];
      expect(Math.abs(before[draw] - after[draw] - effect)).toBeLessThan(SAME_DRAWN_M2);
    }
    expect(stain.blockCount).toBe(rows);
  });
});

describe('a plan', () => {
  test('its whole effect is the ledgers reckoned anew with all its actions at once', () => {
    const plan = planWork(reckoned, { solve, book });
    if (!plan.feasible) throw new Error('no plan');
    const { field, keys, total } = reckoned.stages.stain.ledgers;
    const { treat_lowers, clean_removes } = plan.settings;
    const acted = plan.blocks.filter(({ action }) => action !== 'leave');
    expect(new Set(acted.map(({ action }) => action)).size).toBeGreaterThan(1);
    const lowered = new Map<string, number>();
    for (const { action, taken } of acted)
      for (const tree of taken.treeIds)
        if (action !== 'inspect') lowered.set(tree, action === 'replace' ? 0 : 1 - treat_lowers);
    const { crowns, blocks } = reckoned.stages.ground;
    const dose = field.dose.map((each, zone) => each * (lowered.get(crowns[zone].tree.treeId) ?? 1));
    const after = reckonLedgers({ ...field, dose }, keys);
    const cleaned = acted
      .filter(({ action }) => action === 'clean' || action === 'treat_and_clean')
      .map(({ blockId }) => blocks.findIndex((each) => each.blockId === blockId))
      .map((block) => clean_removes * cleanable(after.byBlockAndKind.stainedM2, block));
    const avoided = total.stainedM2[0] - after.total.stainedM2[0] + balancedSum(cleaned);
    expect(Math.abs(avoided - plan.avoidedM2.value)).toBeLessThan(SAME_M2);
    expect(plan.avoidedM2.range95?.[0]).toBeLessThan(plan.avoidedM2.value);
    // The programme adds effects one by one; together they are at least as great, as treated crowns share pavement.
    expect(plan.avoidedM2.value).toBeGreaterThanOrEqual(plan.proof.avoidedM2 - SAME_M2);
    expect(plan.proof.gap).toBeLessThan(1e-6);
    expect(plan.cost).toBeLessThanOrEqual(plan.limits.budget ?? Number.POSITIVE_INFINITY);
  });

  test('is the same again, from a live assessment too, and costs follow the price list', () => {
    const live = new LiveAssessment(input);
    const again = planWork(live.reckoned(), { solve, draws: 100 });
    const first = planWork(reckoned, { solve, book });
    expect(again).toEqual(first);
    if (!first.feasible) throw new Error('no plan');
    for (const { taken, action } of first.blocks.filter((each) => each.action === 'clean')) {
      const price = first.settings.prices.find((each) => each.action === action);
      expect(taken.cost).toBeCloseTo((price?.set_up ?? 0) + (price?.per_m2 ?? 0) * taken.areaM2, 9);
    }
  });
});

function cleanable(stained: Float64Array, block: number): number {
  return balancedSum(
    reckoned.settings.plan.clean_kinds.map(
      (kind) => stained[block * PAVEMENT_KINDS.length + PAVEMENT_KINDS.indexOf(kind)],
    ),
  );
}

/** One rating for each tree, by one rater, in per cent; those nobody rated are found clean. */
function allRated(of: ProjectInput): ProjectInput {
  const layer = of.layers.ratings;
  const crowns = of.layers.crowns;
  if (!layer || !crowns) throw new Error('no ratings');
  const newest = new Map<string, Readonly<Record<string, unknown>>>();
  for (const { properties } of layer.features)
    if (String(properties.rated_on) > '2026' && Number(properties.browned_pct) > 0)
      newest.set(String(properties.tree_id), properties);
  const features = crowns.features.map(({ properties: { tree_id } }, i): RawFeature => {
    const rated = newest.get(String(tree_id));
    const clean = { tree_id, rated_on: '2026-05-04', rater: 'R1', browned_pct: 0, gall_load: 'none', cause: 'none' };
    return { row: i + 2, geometry: { kind: 'none' }, properties: rated ?? clean };
  });
  return { ...of, layers: { ...of.layers, ratings: { ...layer, features } } };
}

function withRatings(
  of: ProjectInput,
  change: (row: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>,
): ProjectInput {
  const layer = of.layers.ratings;
  if (!layer) throw new Error('no ratings');
  const features = layer.features.map((each) => ({ ...each, properties: change(each.properties) }));
  return { ...of, layers: { ...of.layers, ratings: { ...layer, features } } };
}

function ready(outcome: ReturnType<typeof reckonProject>): Reckoned {
  if (isStopped(outcome)) throw new Error('stopped');
  return outcome;
}
