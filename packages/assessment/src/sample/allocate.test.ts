import { describe, expect, test } from 'vitest';
import { allocateRatings, halfWidthAfter } from './allocate.ts';
import type { RatingStratum } from './strata.ts';

function stratum(host: string, rated: number, unrated: number, standardDeviation: number): RatingStratum {
  const zones = (count: number) => Array.from({ length: count }, (_, i) => i);
  return {
    host,
    blockId: 'B1',
    rated: zones(rated),
    unrated: zones(unrated),
    standardDeviation,
    from: 'stratum',
    hostDeviation: standardDeviation,
  };
}

const allocated = (...args: Parameters<typeof allocateRatings>) => {
  const allocation = allocateRatings(...args);
  if (!allocation.defined) throw new Error(allocation.reason);
  return allocation.value;
};
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

describe('how many further trees', () => {
  // Sizes and deviations of Scheaffer et al.'s strata (from memory), in hundredths; a total of 30 gives 8.82, 10.59, 10.59.
  const strata = [stratum('A', 0, 155, 0.05), stratum('B', 0, 62, 0.15), stratum('C', 0, 93, 0.1)];

  test('a number of trees is shared out by Neyman’s rule', () => {
    const [a, ...tied] = allocated(strata, { trees: 30 }).add;
    expect(a).toBe(9);
    expect(tied.sort()).toEqual([10, 11]);
  });

  test('a wanted precision takes the least trees that reach it', () => {
    const wanted = 0.02;
    const { add, halfWidth } = allocated(strata, { halfWidth: wanted });
    expect(halfWidth.defined && halfWidth.value).toBeLessThanOrEqual(wanted);
    const fewer = allocated(strata, { trees: sum(add) - 2 });
    expect(fewer.halfWidth.defined && fewer.halfWidth.value).toBeGreaterThan(wanted);
  });

  test('ratings that are there count: none are asked for where enough are', () => {
    const rich = [stratum('A', 150, 5, 0.05), ...strata.slice(1)];
    const { add } = allocated(rich, { trees: 20 });
    expect(add[0]).toBe(0);
    expect(sum(add)).toBe(20);
    expect(
      sum(
        allocated(
          rich.map((one) => ({ ...one, rated: one.unrated, unrated: [] })),
          { halfWidth: 0.5 },
        ).add,
      ),
    ).toBe(0);
  });

  test('more trees than there are takes all; all rated leaves nothing to know', () => {
    const { add, halfWidth } = allocated(strata, { trees: 10_000 });
    expect(add).toEqual([155, 62, 93]);
    expect(halfWidth.defined && halfWidth.value).toBeCloseTo(0, 12);
  });

  test('one stratum is Cochran’s simple random sample', () => {
    const one = [stratum('A', 0, 400, 0.2)];
    // n0 = (1.96 · 0.2/0.05)² = 61.46, corrected 61.46/(1 + 61.46/400) = 53.3 (Cochran 1977, equation 4.3 form for a mean).
    const { add } = allocated(one, { halfWidth: 0.05 });
    expect(add).toEqual([54]);
  });

  test('trees that are all alike, and no trees, are named', () => {
    expect(allocateRatings([stratum('A', 3, 5, 0)], { trees: 2 })).toEqual({ defined: false, reason: 'no-variation' });
    expect(allocateRatings([], { trees: 2 })).toEqual({ defined: false, reason: 'no-observations' });
    expect(halfWidthAfter(strata, []).defined).toBe(false);
  });
});
