/**
 * What a day in the field brought: its visits one by one, and what they changed in the figures of the blocks they went to,
 * all else equal. Both reckonings are as of the end of that day; one knows the day's visits, the other does not.
 */
import type { Finding } from '@crownfall/geometry';
import type { Ranged } from '@crownfall/stain';
import {
  isIsoDay,
  type ProjectInput,
  readSurvey,
  type Visit,
  type VisitFinds,
  visitDay,
  visitFinds,
} from '@crownfall/survey';
import { assess, isStopped, type Stopped } from '../assess.ts';
import type { BlockResult } from '../result.ts';

export interface VisitOptions {
  /** ISO day; the newest day with a visit when absent. */
  readonly day?: string;
  readonly draws?: number;
  readonly seed?: number;
}

/** One visit: who, where, what was found. */
export interface VisitedPlace {
  readonly visit: Visit;
  /** Of the visit, or of the tree; null when neither is known. */
  readonly blockId: string | null;
  readonly finds: VisitFinds;
}

/** Figures of a block before and after the day's visits counted. */
export interface VisitedBlock {
  readonly blockId: string;
  readonly name: string | null;
  readonly before: BlockFigures;
  readonly after: BlockFigures;
}

type BlockFigures = Pick<BlockResult, 'rank' | 'treesRated' | 'worstSeverityPct' | 'bloomState'> & {
  readonly stainedM2: Ranged;
};

export interface VisitReview {
  readonly title: string;
  readonly units: 'metric' | 'us';
  /** null when the project has no visits. */
  readonly day: string | null;
  /** Days with visits, oldest first. */
  readonly days: readonly string[];
  readonly visits: readonly VisitedPlace[];
  /** Blocks that were gone to, in rank order after the day. */
  readonly blocks: readonly VisitedBlock[];
  readonly town: { readonly before: Ranged; readonly after: Ranged };
  /** What is to know of the day's own rows. */
  readonly findings: readonly Finding[];
}

/**
 * Reviews one day's visits. A day without visits gives empty lists and equal figures; a project without any, no day.
 * RangeError unless `day` is an ISO day.
 * @example reviewVisits(input, { day: '2026-05-20' }).blocks[0].after.stainedM2.value // 41.7 (m²)
 */
export function reviewVisits(input: ProjectInput, options: VisitOptions = {}): VisitReview | Stopped {
  const { draws = 0, seed = 1 } = options;
  if (options.day !== undefined && !isIsoDay(options.day)) {
    throw new RangeError(`day: expected YYYY-MM-DD, got ${options.day}`);
  }
  const all = input.visits ?? [];
  const days = [...new Set(all.map(visitDay))].sort();
  const day = options.day ?? days.at(-1) ?? null;
  const asOf = day === null ? {} : { as_of: day };
  const settings = { ...input.settings, ...asOf };
  const until = (keep: (on: string) => boolean): ProjectInput => {
    return { ...input, settings, visits: all.filter((visit) => keep(visitDay(visit))) };
  };
  const afterInput = until((on) => day === null || on <= day);
  const after = assess(afterInput, { draws, seed });
  if (isStopped(after)) return after;
  // A project whose only ratings are the day's has no ratings before it, but it can be reckoned.
  const before = assess(
    until((on) => day === null || on < day),
    { draws, seed },
  );
  if (isStopped(before)) return before;
  const blockOf = new Map(after.trees.map(({ treeId, blockId }) => [treeId, blockId]));
  const visits = all
    .filter((visit) => visitDay(visit) === day)
    .map((visit): VisitedPlace => {
      const ofTree = visit.treeId === undefined ? null : (blockOf.get(visit.treeId) ?? null);
      return { visit, blockId: visit.blockId ?? ofTree, finds: visitFinds(visit) };
    });
  const goneTo = new Set(visits.map(({ blockId }) => blockId));
  const earlier = new Map(before.blocks.map((block) => [block.blockId, block]));
  return {
    title: after.title,
    units: after.units,
    day,
    days,
    visits,
    blocks: after.blocks.flatMap((block): VisitedBlock[] => {
      const was = earlier.get(block.blockId);
      if (!goneTo.has(block.blockId) || was === undefined) return [];
      return [{ blockId: block.blockId, name: block.name, before: figuresOf(was), after: figuresOf(block) }];
    }),
    town: { before: before.total.stainedM2, after: after.total.stainedM2 },
    findings: ofDay(afterInput, day),
  };
}

function figuresOf({ rank, treesRated, worstSeverityPct, bloomState, stainedM2 }: BlockResult): BlockFigures {
  return { rank, treesRated, worstSeverityPct, bloomState, stainedM2 };
}

/** Findings about rows of the day's visits alone. */
function ofDay(input: ProjectInput, day: string | null): Finding[] {
  const visits = (input.visits ?? []).filter((visit) => visitDay(visit) === day);
  return readSurvey({ ...input, visits, findings: [] }).findings.filter(({ where }) => where.file === 'visits');
}
