/** How many further trees of each stratum to rate. */
import {
  type Defined,
  defined,
  mapDefined,
  neymanAllocation,
  normalCritical,
  type Stratum,
  stratifiedMeanVariance,
  wholeAllocation,
} from '@crownfall/statistics';
import type { RatingStratum } from './strata.ts';

/** What is wanted: a precision of the town's mean g·s (share), or a number of further trees. */
export type RatingGoal = { readonly halfWidth: number } | { readonly trees: number };

export interface Allocation {
  /** Further trees by stratum. */
  readonly add: readonly number[];
  /** Half the 95 % interval of the town's mean g·s once these are rated. */
  readonly halfWidth: Defined<number>;
}

const CONFIDENCE = 0.95;
/** Halvings of the search for a total: to far below one tree. */
const HALVINGS = 50;

/**
 * The least further trees that reach the goal, shared out by Neyman's rule: of a total over all ratings each stratum gets its
 * part, less what it has rated; a stratum that has more than its part keeps it. Whole numbers by largest remainders; never
 * more than a stratum has unrated. Undefined when the trees do not vary, or when there are none.
 */
export function allocateRatings(strata: readonly RatingStratum[], goal: RatingGoal): Defined<Allocation> {
  const sizes = strata.map(asStratum);
  const population = sizes.reduce((sum, { size }) => sum + size, 0);
  const possible = neymanAllocation(sizes, population);
  if (!possible.defined) return possible;
  const present = halfWidthAfter(strata, []);
  if ('halfWidth' in goal && present.defined && present.value <= goal.halfWidth) {
    return defined({ add: strata.map(() => 0), halfWidth: present });
  }
  const at = (total: number): number[] => {
    const all = neymanAllocation(sizes, total);
    return all.defined ? shortfalls(strata, all.value) : strata.map(() => 0);
  };
  const reaches = (short: readonly number[]): boolean => {
    if ('trees' in goal) return sum(short) >= goal.trees;
    const after = halfWidthAfter(strata, short);
    return after.defined && after.value <= goal.halfWidth;
  };
  let [low, high] = [0, population];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (reaches(at(middle))) high = middle;
    else low = middle;
  }
  const add = whole(strata, at(high));
  return defined({ add, halfWidth: halfWidthAfter(strata, add) });
}

/**
 * Half the 95 % interval of the town's mean g·s with `add` further ratings by stratum: stratified by host, since strata
 * without a rating borrow from their host. Undefined where a host that varies has no rating.
 */
export function halfWidthAfter(strata: readonly RatingStratum[], add: readonly number[]): Defined<number> {
  const hosts = new Map<string | null, { size: number; sampled: number; standardDeviation: number }>();
  strata.forEach(({ host, rated, unrated, hostDeviation }, i) => {
    const before = hosts.get(host) ?? { size: 0, sampled: 0 };
    hosts.set(host, {
      size: before.size + rated.length + unrated.length,
      sampled: before.sampled + rated.length + (add[i] ?? 0),
      standardDeviation: hostDeviation,
    });
  });
  const merged = [...hosts.values()];
  const variance = stratifiedMeanVariance(
    merged,
    merged.map(({ sampled }) => sampled),
  );
  return mapDefined(variance, (value) => normalCritical(CONFIDENCE) * Math.sqrt(value));
}

function asStratum({ rated, unrated, standardDeviation }: RatingStratum): Stratum {
  return { size: rated.length + unrated.length, standardDeviation };
}

function shortfalls(strata: readonly RatingStratum[], all: readonly number[]): number[] {
  return strata.map(({ rated, unrated }, i) => Math.min(unrated.length, Math.max(0, all[i] - rated.length)));
}

/** Whole numbers of trees that sum to no less than the shortfalls do. */
function whole(strata: readonly RatingStratum[], short: readonly number[]): number[] {
  const wanted = sum(short);
  if (wanted === 0) return short.map(() => 0);
  const most = strata.reduce((total, { unrated }) => total + unrated.length, 0);
  const total = Math.min(most, Math.ceil(wanted - 1e-6));
  const capacity = strata.map(({ unrated }) => ({ size: unrated.length, standardDeviation: 0 }));
  return wholeAllocation(
    short.map((n) => (n * total) / wanted),
    capacity,
    0,
  );
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
