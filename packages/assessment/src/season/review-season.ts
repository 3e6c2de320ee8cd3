/** The follow-up between two days: what changed, where, and whether a treatment had to do with it. */
import type { Finding } from '@crownfall/geometry';
import { type Ranged, ranges } from '@crownfall/stain';
import { type Defined, quantileOfSorted } from '@crownfall/statistics';
import { asOfDay, isIsoDay, type ProjectInput, readSurvey, type Settings, type Survey } from '@crownfall/survey';
import type { Stopped } from '../assess.ts';
import { drawPart } from '../draws/draw-part.ts';
import { drawWork } from '../draws/draw-work.ts';
import { expectDraws } from '../draws/drawn-ranges.ts';
import type { Ground } from '../ground/ground.ts';
import { reckonGeometry } from '../ground/reckon-geometry.ts';
import { noProgress, type Progress } from '../progress.ts';
import { rank } from '../rank-stage.ts';
import { reckonStain, type Stain } from '../stain-stage.ts';
import { type Efficacy, efficacyOf, type FollowedTree } from './efficacy.ts';
import { type SpotTree, severitySpots } from './hot-spots.ts';

export interface SeasonOptions {
  /** ISO days; `before` defaults to the newest rating of an earlier year, `after` to the day of the figures. */
  readonly before?: string;
  readonly after?: string;
  /** Trees that were treated in between. */
  readonly treated?: readonly string[];
  /** Trees that serve as untreated checks; default: all others of the treated trees' hosts. */
  readonly checks?: readonly string[];
  /** Neighbours of the hot spots, m. */
  readonly reachM?: number;
  readonly draws?: number;
  readonly seed?: number;
  readonly progress?: Progress;
}

export interface BlockChange {
  /** null gathers what lies in no block. */
  readonly blockId: string | null;
  readonly name: string | null;
  readonly stainedBeforeM2: number;
  readonly stainedAfterM2: number;
  /** After minus before; its ranges leave out what both days share (k, drift). */
  readonly changeM2: Ranged;
  /** Trees with a rating at both days, and their mean g·s; null without such trees. */
  readonly treesFollowed: number;
  readonly severityBefore: number | null;
  readonly severityAfter: number | null;
}

export interface SeasonReview {
  readonly title: string;
  readonly before: string;
  readonly after: string;
  readonly calibrated: boolean;
  readonly draws: number;
  readonly seed: number;
  readonly reachM: number;
  readonly treesFollowed: number;
  /** null when no tree was said to be treated. */
  readonly efficacy: Efficacy | null;
  /** Ids given as treated or as checks that are no tree with a rating at both days. */
  readonly notFollowed: readonly string[];
  /** By size of the change, greatest fall first. */
  readonly blocks: readonly BlockChange[];
  readonly total: BlockChange;
  readonly spots: Defined<SpotTree[]>;
  readonly findings: readonly Finding[];
}

/** (A) Neighbours of a tree for the hot spots: about a block face. */
export const DEFAULT_REACH_M = 60;

/**
 * Reviews the season between two days on the same ground (today's crowns and pavement): severities and stained areas of
 * either day from the ratings of its year up to it. RangeError for days that are none, or out of order, when no earlier year was
 * rated and no day is given, or for draws that are neither 0 nor from 100 to 60,000.
 */
export function reviewSeason(input: ProjectInput, options: SeasonOptions = {}): SeasonReview | Stopped {
  const { draws = 0, seed = 1, reachM = DEFAULT_REACH_M, progress = noProgress } = options;
  expectDraws(draws);
  const { survey, settings, findings } = readSurvey(input);
  if (findings.some(({ effect }) => effect === 'stops')) return { stopped: true, findings };
  const after = options.after ?? asOfDay(survey, settings);
  const before = options.before ?? newestOfEarlierYear(survey, after);
  expectDays(before, after);
  const ground = reckonGeometry(survey, settings, progress);
  if (ground.findings.some(({ effect }) => effect === 'stops')) return { stopped: true, findings: ground.findings };
  const days = [before, after].map((day) => dayOf({ ground, survey, settings, day, draws, seed }));
  const followed = followedTrees(ground, days);
  const treated = options.treated ?? [];
  const groups = grouped(followed, ground, { treated, checks: options.checks });
  const known = new Set(followed.map(({ treeId }) => treeId));
  const changes = blockChanges(ground, days, followed);
  return {
    title: survey.title,
    before,
    after,
    calibrated: settings.calibrated,
    draws,
    seed,
    reachM,
    treesFollowed: followed.length,
    efficacy: treated.length === 0 ? null : efficacyOf(groups, seed),
    notFollowed: [...treated, ...(options.checks ?? [])].filter((id) => !known.has(id)),
    blocks: changes.blocks,
    total: changes.total,
    spots: severitySpots(ground, ratedOn(days[1]), reachM),
    findings,
  };
}

function expectDays(before: string, after: string): void {
  for (const day of [before, after]) {
    if (!isIsoDay(day)) throw new RangeError(`expected a day as YYYY-MM-DD, got ${day}`);
  }
  if (!(before < after)) throw new RangeError(`expected the first day before the second, got ${before} and ${after}`);
}

function newestOfEarlierYear(survey: Survey, after: string): string {
  const earlier = survey.ratings.map(({ ratedOn: day }) => day).filter((day) => day.slice(0, 4) < after.slice(0, 4));
  const newest = earlier.sort().at(-1);
  if (newest === undefined)
    throw new RangeError(`expected ratings of a year before ${after.slice(0, 4)}, or a first day; got neither`);
  return newest;
}

interface Day {
  readonly stain: Stain;
  /** Draws of all blocks, then of what lies in no block; draw by draw. Empty without draws. */
  readonly drawn: Float32Array;
}

interface DayWork {
  readonly ground: Ground;
  readonly survey: Survey;
  readonly settings: Settings;
  readonly day: string;
  readonly draws: number;
  readonly seed: number;
}

function dayOf({ ground, survey, settings, day, draws, seed }: DayWork): Day {
  const stain = reckonStain(ground, { ...survey, season: Number(day.slice(0, 4)) }, settings, day);
  if (draws === 0) return { stain, drawn: new Float32Array(0) };
  const ranking = rank(ground, stain, { complaints: [], bloom: [], sites: [] }, settings, day);
  return { stain, drawn: drawPart(drawWork(ground, stain, ranking, { settings, seed }), 0, draws).blocks.value };
}

/** Crowns with a rating of the day's own season, and their g·s. */
function ratedOn({ stain }: Day): { zone: number; severity: number }[] {
  return stain.severities.flatMap(({ from, gateShare, share }, zone) =>
    from === 'rating' ? [{ zone, severity: gateShare * share }] : [],
  );
}

type Followed = Omit<FollowedTree, 'group'> & { readonly zone: number };

function followedTrees(ground: Ground, [before, after]: readonly Day[]): Followed[] {
  const early = new Map(ratedOn(before).map(({ zone, severity }) => [zone, severity]));
  return ratedOn(after).flatMap(({ zone, severity }): Followed[] => {
    const was = early.get(zone);
    if (was === undefined) return [];
    const { tree, block } = ground.crowns[zone];
    return [{ zone, treeId: tree.treeId, block, before: was, after: severity }];
  });
}

/** Treated trees and their checks; a tree that is neither is left out. */
function grouped(
  followed: readonly Followed[],
  ground: Ground,
  { treated, checks }: { readonly treated: readonly string[]; readonly checks: readonly string[] | undefined },
): FollowedTree[] {
  const treatedIds = new Set(treated);
  const checkIds = checks === undefined ? null : new Set(checks);
  const hostOf = ({ zone }: Followed) => (ground.crowns[zone].tree.host ?? '').toLowerCase();
  const hosts = new Set(followed.filter(({ treeId }) => treatedIds.has(treeId)).map(hostOf));
  return followed.flatMap((tree): FollowedTree[] => {
    if (treatedIds.has(tree.treeId)) return [{ ...tree, group: 'treated' }];
    const isCheck = checkIds === null ? hosts.has(hostOf(tree)) : checkIds.has(tree.treeId);
    return isCheck ? [{ ...tree, group: 'untreated' }] : [];
  });
}

function blockChanges(ground: Ground, days: readonly Day[], followed: readonly Followed[]) {
  const rows = ground.blocks.length + 1;
  const rangeOf = (take: (drawn: Float32Array, start: number) => number): Omit<Ranged, 'value'> => {
    const [early, late] = days.map(({ drawn }) => drawn);
    if (early.length === 0) return { range80: null, range95: null };
    const sorted = Float64Array.from(
      { length: early.length / rows },
      (_, i) => take(late, i * rows) - take(early, i * rows),
    ).sort();
    return ranges((share) => quantileOfSorted(sorted, share));
  };
  const change = (
    blocks: readonly number[],
    trees: readonly Followed[],
    named: Pick<BlockChange, 'blockId' | 'name'>,
  ): BlockChange => {
    const [stainedBeforeM2, stainedAfterM2] = days.map(({ stain }) =>
      blocks.reduce((sum, block) => sum + stain.ledgers.byBlock.stainedM2[block], 0),
    );
    const take = (drawn: Float32Array, start: number) => blocks.reduce((sum, block) => sum + drawn[start + block], 0);
    const mean = (of: (tree: Followed) => number) =>
      trees.length === 0 ? null : trees.reduce((sum, tree) => sum + of(tree), 0) / trees.length;
    return {
      ...named,
      stainedBeforeM2,
      stainedAfterM2,
      changeM2: { value: stainedAfterM2 - stainedBeforeM2, ...rangeOf(take) },
      treesFollowed: trees.length,
      severityBefore: mean((tree) => tree.before),
      severityAfter: mean((tree) => tree.after),
    };
  };
  const all = Array.from({ length: rows }, (_, block) => {
    const held = followed.filter((tree) => (tree.block < 0 ? rows - 1 : tree.block) === block);
    const { blockId, name } = ground.blocks[block] ?? { blockId: null, name: null };
    return change([block], held, { blockId, name });
  });
  const seen = all.filter((one) => one.blockId !== null || one.stainedBeforeM2 + one.stainedAfterM2 > 0);
  return {
    blocks: seen.sort(
      (a, b) => a.changeM2.value - b.changeM2.value || ((a.blockId ?? '') < (b.blockId ?? '') ? -1 : 1),
    ),
    total: change([...all.keys()], followed, { blockId: null, name: null }),
  };
}
