/** The season's plan from a reckoned project: offers, the best choice among them, and what speaks for it. */
import {
  type ActionOffer,
  addDays,
  type Choice,
  chooseWork,
  type DistrictShare,
  frontier,
  type LeaveOutlook,
  limitsOf,
  type NoPlan,
  nextUnits,
  type PlannedBlock,
  rotationNotes,
  type Solver,
  type Solving,
  type TreatedTree,
  type WorkLimits,
  type WorkPlan,
  type WorkProblem,
  weeksOf,
  workProblem,
} from '@crownfall/priority';
import { figureSamples } from '@crownfall/stain';
import { ACTIONS } from '@crownfall/survey';
import type { Reckoned } from '../assess.ts';
import { jointEffect } from './joint-effect.ts';
import { type Address, noticeList } from './notice-list.ts';
import { effectOf, type OfferBook, type OfferOptions, offersOf, ranged } from './offers-of.ts';
import { sharesKept } from './shares-kept.ts';
import { worthRating } from './worth-rating.ts';

export interface PlanOptions extends OfferOptions {
  readonly solve: Solver;
  /** Asked for instead of what the settings say. */
  readonly limits?: Partial<Omit<WorkLimits, 'asOf'>>;
  /** Offers made before; then draws and seed are theirs. */
  readonly book?: OfferBook;
  /** Addresses or parcels of the user's, for the notice list. */
  readonly addresses?: readonly Address[];
  /** Seconds after which a single search stops with the best found and its gap; default 20. */
  readonly seconds?: number;
}

/** Beyond so many columns the plan is searched to within 0.05 % of the best, the frontier and the next units to within 0.5 %. */
const MANY_COLUMNS = 1500;
const CLOSE = 5e-4;
const NEAR = 5e-3;
const SECONDS = 20;

/**
 * Plans the season: one action for each block, the best within money, crew and windows, or the constraints that clash. Effects of
 * the whole plan are reckoned together. Same input, same digits, as long as no search runs out of seconds.
 */
export function planWork(reckoned: Reckoned, options: PlanOptions): WorkPlan | NoPlan {
  const book = options.book ?? offersOf(reckoned, options);
  const { plan } = reckoned.settings;
  const limits = limitsOf(reckoned.asOf, plan, options.limits);
  const stained = stainedByBlock(reckoned);
  const problemFor = (other: WorkLimits) => workProblem(book.offers, other, stained);
  const problem = problemFor(limits);
  const seconds = options.seconds ?? SECONDS;
  const many = problem.columns.length > MANY_COLUMNS;
  const choice = chooseWork(problem, options.solve, many ? { gap: CLOSE, seconds } : { seconds });
  const frame = frameOf(book, limits);
  if (!choice.feasible) return { ...frame, feasible: false, clash: choice.clash, offers: book.offers };
  const near = many ? { gap: NEAR, seconds } : { seconds };
  const by: Solving = {
    solve: options.solve,
    options: near,
    hoursPerDay: plan.crew_hours_per_day,
    points: many ? 5 : 10,
  };
  const treated = choice.offers.filter(({ action }) => action === 'treat' || action === 'treat_and_clean');
  const treatedIds = treated.map(({ blockId }) => blockId);
  return {
    ...frame,
    feasible: true,
    blocks: plannedBlocks({ book, problem, choice, by }),
    stainedM2: ranged(reckoned.stages.stain.ledgers.total.stainedM2[0], book.samples?.stained, stained.size),
    avoidedM2: jointEffect(book, choice.offers),
    cost: choice.cost,
    crewHours: choice.crewHours,
    proof: { avoidedM2: choice.avoidedM2, boundM2: choice.boundM2, gap: choice.gap, greedyM2: choice.greedyM2 },
    next: nextUnits(problemFor, limits, choice, by),
    frontier: frontier(problemFor, limits, by),
    districts: districtShares(book, limits, choice, stained),
    worthRating: worthRating(book, problem, problemFor, by),
    rotation: rotationNotes(treatedIds, plan, reckoned.asOf),
    notices: noticeList(book, treated, options.addresses ?? []),
    treated: treatedTrees(book, treated),
  };
}

function frameOf({ reckoned, draws, seed }: OfferBook, limits: WorkLimits) {
  const { settings, asOf, stages } = reckoned;
  const { title, season, units } = stages.survey;
  const { calibrated, plan } = settings;
  return { title, season, units, asOf, currency: plan.currency, calibrated, draws, seed, limits, settings: plan };
}

/** In the order of the ground's blocks. */
function stainedByBlock({ stages: { ground, stain } }: Reckoned): Map<string, number> {
  return new Map(ground.blocks.map(({ blockId }, block) => [blockId, stain.ledgers.byBlock.stainedM2[block]]));
}

interface Chosen {
  readonly book: OfferBook;
  readonly problem: WorkProblem;
  readonly choice: Choice;
  readonly by: Solving;
}

/** All blocks in rank order. */
function plannedBlocks({ book, problem, choice, by }: Chosen): PlannedBlock[] {
  const { ground, ranking } = book.reckoned.stages;
  const { limits } = problem;
  const taken = new Map(choice.offers.map((offer) => [offer.blockId, offer]));
  const inOrder = ranking.ranked.flatMap(({ blockId }) => taken.get(blockId) ?? []);
  const weeks = weeksOf(inOrder, limits);
  const kept = sharesKept(book, problem, taken, by);
  const mustDo = new Set(limits.mustDo.map(({ block_id }) => block_id));
  return ranking.ranked.map(({ blockId, index, rank }): PlannedBlock => {
    const offers = book.offers.slice(index * ACTIONS.length, (index + 1) * ACTIONS.length);
    const offer = taken.get(blockId) ?? (offers.find(({ action }) => action === 'leave') as ActionOffer);
    const week = weeks.get(blockId) ?? null;
    return {
      blockId,
      name: ground.blocks[index].name,
      rank,
      bloomState: book.bloom.windows[index].state,
      action: offer.action,
      taken: offer,
      week,
      weekOf: week === null ? null : addDays(limits.asOf, 7 * (week - 1)),
      mustDo: mustDo.has(blockId),
      keeps: kept?.(blockId) ?? null,
      offers,
      leave: leaveOutlook(book, index),
    };
  });
}

/** What stays when nothing is done: the stain fades by the user's setting, affected crowns refoliate. */
function leaveOutlook({ reckoned, samples }: OfferBook, block: number): LeaveOutlook {
  const { stages, settings, asOf } = reckoned;
  const { weeks, fade_half_life_days, refoliate_days } = settings.plan;
  const stainedM2 = ranged(stages.stain.ledgers.byBlock.stainedM2[block], samples?.stained, block);
  const worst = stages.ranking.notes[block].worstSeverityPct ?? 0;
  return {
    stainedM2,
    fadedM2: stainedM2.value * 2 ** ((-7 * weeks) / fade_half_life_days),
    onDay: addDays(asOf, 7 * weeks),
    refoliatedBy: worst > 0 ? addDays(asOf, Math.round(refoliate_days)) : null,
  };
}

function districtShares(
  book: OfferBook,
  { districts }: WorkLimits,
  { offers }: Choice,
  stained: ReadonlyMap<string, number>,
): DistrictShare[] {
  return districts.map(({ name, blocks }) => {
    const own = offers.filter(({ blockId }) => blocks.includes(blockId));
    const avoidedM2 = own.reduce((sum, offer) => sum + offer.avoidedM2.value, 0);
    return {
      name,
      stainedM2: blocks.reduce((sum, id) => sum + (stained.get(id) ?? 0), 0),
      avoidedM2,
      avoidedRange80M2: ranged(avoidedM2, addedDraws(book, own), 0).range80,
      cost: own.reduce((sum, { cost }) => sum + (cost ?? 0), 0),
      blocks: own.length,
    };
  });
}

/** The draws of several offers' own effects, added up; null without draws. */
function addedDraws({ reckoned, samples }: OfferBook, offers: readonly ActionOffer[]) {
  if (samples === null) return null;
  const blockOf = new Map(reckoned.stages.ground.blocks.map(({ blockId }, block) => [blockId, block]));
  const added = figureSamples(1, samples.draws);
  for (const { action, blockId } of offers) {
    const effect = effectOf(action);
    if (effect === null) continue;
    const { value, rows } = samples[effect];
    for (let draw = 0; draw < samples.draws; draw++)
      added.value[draw] += value[draw * rows + (blockOf.get(blockId) ?? 0)];
  }
  return added;
}

function treatedTrees({ reckoned, scene }: OfferBook, treated: readonly ActionOffer[]): TreatedTree[] {
  const { ground } = reckoned.stages;
  const blockOf = new Map(ground.blocks.map(({ blockId }, block) => [blockId, block]));
  return treated.flatMap(({ blockId }) =>
    scene.treated[blockOf.get(blockId) ?? -1].map((zone) => ({
      treeId: ground.crowns[zone].tree.treeId,
      blockId,
      nearestM: scene.nearest.get(zone) ?? {},
    })),
  );
}
