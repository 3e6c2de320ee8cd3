/** What to rate next: how many trees, which ones, in which order, and what that would do to the total's range. */
import { type Finding, type LonLat, walkInGroups } from '@crownfall/geometry';
import type { Ranged } from '@crownfall/stain';
import { type Defined, RandomStream, sampleWithoutReplacement } from '@crownfall/statistics';
import { asOfDay, type ProjectInput, type Rating, readSurvey, type Settings, type Survey } from '@crownfall/survey';
import type { Stopped } from '../assess.ts';
import { drawPart } from '../draws/draw-part.ts';
import { drawWork } from '../draws/draw-work.ts';
import { expectDraws, gatherDraws } from '../draws/drawn-ranges.ts';
import type { Ground } from '../ground/ground.ts';
import { reckonGeometry } from '../ground/reckon-geometry.ts';
import { noProgress, type Progress } from '../progress.ts';
import { rank } from '../rank-stage.ts';
import { reckonStain, type Stain } from '../stain-stage.ts';
import { allocateRatings, halfWidthAfter, type RatingGoal } from './allocate.ts';
import { type RatingStratum, ratingStrata } from './strata.ts';

export interface SampleOptions {
  readonly goal: RatingGoal;
  readonly seed?: number;
  /** 0 leaves the total's ranges out. */
  readonly draws?: number;
  readonly progress?: Progress;
}

export interface PlannedStratum extends Omit<RatingStratum, 'rated' | 'unrated' | 'hostDeviation'> {
  readonly trees: number;
  readonly rated: number;
  readonly add: number;
}

/** A range of the town's stained area, with everything unknown and with k and drift left aside. */
export interface TotalRanges {
  readonly all: Ranged;
  readonly givenCoefficient: Ranged;
}

export interface RatingPlan {
  readonly title: string;
  readonly asOf: string;
  readonly goal: RatingGoal;
  readonly seed: number;
  readonly trees: number;
  readonly rated: number;
  /** Half the 95 % interval of the town's mean g·s, 0–1, as ratings stand (by host). */
  readonly halfWidthNow: Defined<number>;
  /** The same once the list is rated. */
  readonly halfWidthAfterwards: Defined<number>;
  /** Half-widths for more and more further trees, by the same rule; empty when the trees do not vary. */
  readonly curve: readonly { readonly trees: number; readonly halfWidth: number }[];
  readonly strata: readonly PlannedStratum[];
  /** In walking order. */
  readonly list: readonly {
    readonly treeId: string;
    readonly host: string | null;
    readonly blockId: string | null;
    readonly at: LonLat;
  }[];
  /** null without draws, or when nothing is rated or to be rated. */
  readonly total: { readonly before: TotalRanges; readonly after: TotalRanges } | null;
  readonly findings: readonly Finding[];
}

/**
 * Plans ratings: Neyman's allocation by host and block on top of what is rated, a seeded random choice within each stratum,
 * and the ranges of the town's stained area before and after, the latter from one imagined future in which every listed tree
 * turns out like a random rated one of its host. RangeError for a goal that is not positive or draws neither 0 nor 100 … 60,000.
 */
export function planRatings(input: ProjectInput, options: SampleOptions): RatingPlan | Stopped {
  const { goal, seed = 1, draws = 0, progress = noProgress } = options;
  expectDraws(draws);
  const wanted = 'halfWidth' in goal ? goal.halfWidth : goal.trees;
  if (!(wanted > 0 && Number.isFinite(wanted))) throw new RangeError(`goal: expected a positive number, got ${wanted}`);
  const { survey, settings, findings } = readSurvey(input);
  if (findings.some(({ effect }) => effect === 'stops')) return { stopped: true, findings };
  const asOf = asOfDay(survey, settings);
  const ground = reckonGeometry(survey, settings, progress);
  if (ground.findings.some(({ effect }) => effect === 'stops')) return { stopped: true, findings: ground.findings };
  const stain = reckonStain(ground, survey, settings, asOf);
  const strata = ratingStrata(ground, stain);
  const allocation = allocateRatings(strata, goal);
  const add = allocation.defined ? allocation.value.add : strata.map(() => 0);
  const zones = chosen(strata, add, seed);
  const work: Work = { ground, survey, settings, asOf, draws, seed };
  const rated = strata.reduce((sum, stratum) => sum + stratum.rated.length, 0);
  return {
    title: survey.title,
    asOf,
    goal,
    seed,
    trees: ground.crowns.length,
    rated,
    halfWidthNow: halfWidthAfter(strata, []),
    halfWidthAfterwards: allocation.defined ? allocation.value.halfWidth : allocation,
    curve: curveOf(strata),
    strata: strata.map(({ rated: own, unrated, hostDeviation: _, ...stratum }, i) => ({
      ...stratum,
      trees: own.length + unrated.length,
      rated: own.length,
      add: add[i],
    })),
    list: inWalkingOrder(ground, survey, zones),
    total: draws > 0 && rated > 0 && zones.length > 0 ? beforeAndAfter(work, stain, zones) : null,
    findings,
  };
}

/** Steps of the curve between no further tree and all. */
const CURVE_STEPS = 16;

function curveOf(strata: readonly RatingStratum[]): RatingPlan['curve'] {
  const unrated = strata.reduce((sum, stratum) => sum + stratum.unrated.length, 0);
  const steps = new Set(Array.from({ length: CURVE_STEPS }, (_, i) => Math.ceil((unrated * (i + 1)) / CURVE_STEPS)));
  return [...steps].flatMap((trees) => {
    const allocation = trees === 0 ? null : allocateRatings(strata, { trees });
    if (!allocation?.defined || !allocation.value.halfWidth.defined) return [];
    return [
      { trees: allocation.value.add.reduce((sum, n) => sum + n, 0), halfWidth: allocation.value.halfWidth.value },
    ];
  });
}

function chosen(strata: readonly RatingStratum[], add: readonly number[], seed: number): number[] {
  return strata.flatMap(({ unrated }, i) =>
    sampleWithoutReplacement(unrated.length, add[i], new RandomStream(seed, 0, i)).map((position) => unrated[position]),
  );
}

function inWalkingOrder(ground: Ground, { streets }: Survey, zones: readonly number[]): RatingPlan['list'] {
  const places = zones.map((zone) => {
    const { tree, block } = ground.crowns[zone];
    const [x, y] = ground.near.forward(Float64Array.of(tree.at.lon, tree.at.lat));
    return { x, y, group: block };
  });
  const lines = streets.flatMap((street) => street.lines.map((line) => ground.near.forward(line)));
  return walkInGroups(places, { streets: lines }).map((position) => {
    const { tree, block } = ground.crowns[zones[position]];
    const blockId = block < 0 ? null : ground.blocks[block].blockId;
    return { treeId: tree.treeId, host: tree.host ?? null, blockId, at: tree.at };
  });
}

interface Work {
  readonly ground: Ground;
  readonly survey: Survey;
  readonly settings: Settings;
  readonly asOf: string;
  readonly draws: number;
  readonly seed: number;
}

function beforeAndAfter(work: Work, stain: Stain, zones: readonly number[]): RatingPlan['total'] {
  const imagined = { ...work.survey, ratings: [...work.survey.ratings, ...imaginedRatings(work, stain, zones)] };
  return { before: totalRanges(work, work.survey), after: totalRanges(work, imagined) };
}

/** Each listed tree gets the newest ratings of a random rated tree of its host; of a host without any, none. */
function imaginedRatings({ ground, survey, asOf, seed }: Work, stain: Stain, zones: readonly number[]): Rating[] {
  const members = new Map(stain.reading.groups.map((group) => [group.group, group.members]));
  const ofSeason = new Map<string, Rating[]>();
  for (const rating of survey.ratings) {
    if (!rating.ratedOn.startsWith(`${survey.season}-`) || rating.ratedOn > asOf) continue;
    ofSeason.set(rating.treeId, [...(ofSeason.get(rating.treeId) ?? []), rating]);
  }
  const random = new RandomStream(seed, 1);
  return zones.flatMap((zone) => {
    const donors = members.get(stain.severities[zone].group) ?? [];
    if (donors.length === 0) return [];
    const donor = donors[random.wholeBelow(donors.length)];
    const { treeId } = ground.crowns[zone].tree;
    return (ofSeason.get(donor.treeId) ?? []).map((rating) => ({ ...rating, treeId }));
  });
}

function totalRanges({ ground, settings, asOf, draws, seed }: Work, survey: Survey): TotalRanges {
  const known = { ...settings.uncertainty, dose_coefficient_log_sd: 0, ring_share_spread: 0 };
  const under = (used: Settings): Ranged => {
    const stain = reckonStain(ground, survey, used, asOf);
    const ranking = rank(ground, stain, { complaints: [], bloom: [], sites: [] }, used, asOf);
    const work = drawWork(ground, stain, ranking, { settings: used, seed });
    const { total } = gatherDraws(work, [drawPart(work, 0, draws)]);
    return { value: stain.ledgers.total.stainedM2[0], ...total };
  };
  return { all: under(settings), givenCoefficient: under({ ...settings, uncertainty: known }) };
}
