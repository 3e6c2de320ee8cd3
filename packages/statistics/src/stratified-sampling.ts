/** How to share a sample among strata, and what precision the shares buy. */

import { CompensatedSum } from './compensated-sum.ts';
import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectNonNegative, expectPositive, expectSameLength } from './expectations.ts';

/** One stratum: how many it holds, how much they vary (in the units of the estimate), what one costs (default 1). */
export type Stratum = { readonly size: number; readonly standardDeviation: number; readonly cost?: number };

/**
 * Sample sizes in proportion to the strata's sizes, nₕ = n·Nₕ/N; not rounded.
 *
 * Accuracy tested: 1e-10. Undefined without strata or when all are empty. RangeError when n exceeds the population.
 *
 * Example: sizes 155, 62, 93 and n = 30 give 15, 6, 9.
 */
export function proportionalAllocation(strata: readonly Stratum[], total: number): Defined<number[]> {
  return allocate(strata, total, (stratum) => stratum.size, 'no-observations');
}

/**
 * Sample sizes that make the variance of the stratified mean least, nₕ = n·NₕSₕ/ΣNS; not rounded. A stratum never gets more
 * than it holds; what it cannot take goes to the others by the same rule.
 *
 * Accuracy tested: 1e-10. Undefined when no stratum varies. RangeError when n exceeds the population.
 * Sources: Neyman (1934), JRSS 97, 558–625; Cochran (1977), equation 5.26 and section 5.8 (from memory).
 *
 * Example: sizes 155, 62, 93, standard deviations 5, 15, 10 and n = 30 give 8.8235, 10.5882, 10.5882.
 */
export function neymanAllocation(strata: readonly Stratum[], total: number): Defined<number[]> {
  return allocate(strata, total, (stratum) => stratum.size * stratum.standardDeviation, 'no-variation');
}

/**
 * Sample sizes that make the variance least for a given cost, nₕ ∝ NₕSₕ/√cₕ; otherwise as `neymanAllocation`.
 *
 * Source: Cochran (1977), equation 5.23 (from memory).
 *
 * Example: the strata above with costs 1, 1.5, 2.25 give 10.7922, 10.5741, 8.6337.
 */
export function costOptimalAllocation(strata: readonly Stratum[], total: number): Defined<number[]> {
  const share = (stratum: Stratum): number => {
    const cost = stratum.cost ?? 1;
    expectPositive(cost, 'cost');
    return (stratum.size * stratum.standardDeviation) / Math.sqrt(cost);
  };
  return allocate(strata, total, share, 'no-variation');
}

/**
 * Whole sample sizes near an allocation: the same total, at least `least` per non-empty stratum where it holds that many, never
 * more than a stratum holds. Rounded by largest remainders, ties to the earlier stratum.
 *
 * RangeError when the total cannot be met within these limits.
 *
 * Example: `wholeAllocation([8.82, 10.59, 10.59], strata)` with a total of 30 gives 9, 11, 10.
 */
export function wholeAllocation(allocation: readonly number[], strata: readonly Stratum[], least = 1): number[] {
  expectSameLength(allocation, strata, 'allocation and strata');
  const total = Math.round(allocation.reduce((sum, n) => sum + n, 0));
  const lowest = strata.map((stratum) => Math.min(least, Math.floor(stratum.size)));
  const sizes = allocation.map((n, h) =>
    Math.min(Math.max(Math.floor(n), lowest[h] as number), Math.floor((strata[h] as Stratum).size)),
  );
  for (let missing = total - sum(sizes); missing !== 0; missing = total - sum(sizes)) {
    const step = Math.sign(missing);
    const chosen = neediest(
      allocation,
      sizes,
      (h) =>
        step > 0
          ? (sizes[h] as number) + 1 <= (strata[h] as Stratum).size
          : (sizes[h] as number) > (lowest[h] as number),
      step,
    );
    if (chosen < 0) throw new RangeError(`allocation: expected a total between the strata's limits, got ${total}`);
    sizes[chosen] = (sizes[chosen] as number) + step;
  }
  return sizes;
}

/**
 * Variance of the stratified mean, Σ(Nₕ/N)²Sₕ²(1/nₕ − 1/Nₕ), in squared units of the values.
 *
 * Accuracy tested: 1e-10. Empty strata count nothing; a stratum that varies but is not sampled makes it undefined.
 * Source: Cochran (1977), equation 5.6 (from memory).
 *
 * Example: the strata of `neymanAllocation` at its sizes give 2.1260752688.
 */
export function stratifiedMeanVariance(strata: readonly Stratum[], sizes: readonly number[]): Defined<number> {
  expectSameLength(strata, sizes, 'strata and sizes');
  const population = populationOf(strata);
  if (population === 0) return undefinedBecause('no-observations');
  const total = new CompensatedSum();
  for (const [h, { size, standardDeviation }] of strata.entries()) {
    if (size === 0 || standardDeviation === 0) continue;
    const sampled = sizes[h] as number;
    if (!(sampled > 0)) return undefinedBecause('too-few-observations');
    total.add((size / population) ** 2 * standardDeviation ** 2 * (1 / sampled - 1 / size));
  }
  return defined(Math.max(0, total.total));
}

/**
 * How many to sample, shared by Neyman's rule, so that the stratified mean has the wanted variance:
 * n = (ΣNₕSₕ)²/(N²V + ΣNₕSₕ²); not rounded.
 *
 * Undefined when no stratum varies. Valid while no stratum is taken whole: check with `stratifiedMeanVariance`.
 * Source: Cochran (1977), equation 5.49's special case for Neyman's allocation (from memory); tested by the variance it reaches.
 *
 * Example: for the strata of `neymanAllocation` and a variance of 2.1260752688 it gives 30.
 */
export function stratifiedSampleSize(strata: readonly Stratum[], wantedVariance: number): Defined<number> {
  expectPositive(wantedVariance, 'wantedVariance');
  const population = populationOf(strata);
  if (population === 0) return undefinedBecause('no-observations');
  const spread = sum(strata.map((s) => s.size * s.standardDeviation));
  if (spread === 0) return undefinedBecause('no-variation');
  const squares = sum(strata.map((s) => s.size * s.standardDeviation ** 2));
  return defined(spread ** 2 / (population ** 2 * wantedVariance + squares));
}

function allocate(
  strata: readonly Stratum[],
  total: number,
  share: (stratum: Stratum) => number,
  whenNone: 'no-observations' | 'no-variation',
): Defined<number[]> {
  const population = populationOf(strata);
  if (population === 0) return undefinedBecause('no-observations');
  if (!(total >= 0 && total <= population)) {
    throw new RangeError(`total: expected a sample of 0 to ${population}, got ${total}`);
  }
  const shares = strata.map(share);
  if (sum(shares) === 0) return undefinedBecause(whenNone);
  return defined(withinSizes(strata, shares, total));
}

/** Shares the total out, taking strata whole as long as any would get more than it holds. */
function withinSizes(strata: readonly Stratum[], shares: readonly number[], total: number): number[] {
  const takenWhole = new Set<number>();
  for (;;) {
    const rest = total - sum(strata.map((s, h) => (takenWhole.has(h) ? s.size : 0)));
    const open = sum(shares.map((s, h) => (takenWhole.has(h) ? 0 : s)));
    const sizes = strata.map((s, h) => {
      if (takenWhole.has(h)) return s.size;
      return open === 0 ? 0 : (rest * (shares[h] as number)) / open;
    });
    const over = sizes.findIndex((n, h) => !takenWhole.has(h) && n > (strata[h] as Stratum).size);
    if (over < 0) return open === 0 && rest > 0 ? fillEqually(strata, sizes, rest) : sizes;
    for (const [h, n] of sizes.entries()) if (n > (strata[h] as Stratum).size) takenWhole.add(h);
  }
}

/** All strata that vary are taken whole: what is left goes to the others in proportion to their sizes. */
function fillEqually(strata: readonly Stratum[], sizes: readonly number[], rest: number): number[] {
  const unsampled = sum(strata.map((s, h) => (sizes[h] === 0 ? s.size : 0)));
  return sizes.map((n, h) => (n === 0 ? (rest * (strata[h] as Stratum).size) / unsampled : n));
}

/** The stratum farthest below (step 1) or above (step −1) its allocation among those allowed to change; −1 for none. */
function neediest(
  allocation: readonly number[],
  sizes: readonly number[],
  allowed: (h: number) => boolean,
  step: number,
): number {
  let chosen = -1;
  let most = Number.NEGATIVE_INFINITY;
  for (const [h, wanted] of allocation.entries()) {
    const need = step * (wanted - (sizes[h] as number));
    if (allowed(h) && need > most) {
      most = need;
      chosen = h;
    }
  }
  return chosen;
}

function populationOf(strata: readonly Stratum[]): number {
  expectNonNegative(
    strata.map((stratum) => stratum.size),
    'sizes of strata',
  );
  expectNonNegative(
    strata.map((stratum) => stratum.standardDeviation),
    'standard deviations of strata',
  );
  return sum(strata.map((stratum) => stratum.size));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
