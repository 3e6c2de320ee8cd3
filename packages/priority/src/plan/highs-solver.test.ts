import loadHighs from 'highs';
import { expect, test } from 'vitest';
import { highsSolver } from './highs-solver.ts';
import type { Programme } from './programme.ts';

/** Exact sums of whole numbers below 2,000. */
const EXACT = 6;

/**
 * Knapsack instances P01–P07: KNAPSACK_01 (Burkardt J, Florida State University, public teaching data, from memory), after
 * Martello S, Toth P (1990) Knapsack Problems, and Kreher D, Stinson D (1999). Each optimum was proved by enumerating all choices.
 */
const PUBLISHED = [
  {
    name: 'P01',
    capacity: 165,
    weights: [23, 31, 29, 44, 53, 38, 63, 85, 89, 82],
    profits: [92, 57, 49, 68, 60, 43, 67, 84, 87, 72],
    optimum: 309,
    chosen: [1, 1, 1, 1, 0, 1, 0, 0, 0, 0],
    greedy: 309,
  },
  {
    name: 'P02',
    capacity: 26,
    weights: [12, 7, 11, 8, 9],
    profits: [24, 13, 23, 15, 16],
    optimum: 51,
    chosen: [0, 1, 1, 1, 0],
    greedy: 47,
  },
  {
    name: 'P03',
    capacity: 190,
    weights: [56, 59, 80, 64, 75, 17],
    profits: [50, 50, 64, 46, 50, 5],
    optimum: 150,
    chosen: [1, 1, 0, 0, 1, 0],
    greedy: 146,
  },
  {
    name: 'P04',
    capacity: 50,
    weights: [31, 10, 20, 19, 4, 3, 6],
    profits: [70, 20, 39, 37, 7, 5, 10],
    optimum: 107,
    chosen: [1, 0, 0, 1, 0, 0, 0],
    greedy: 102,
  },
  {
    name: 'P05',
    capacity: 104,
    weights: [25, 35, 45, 5, 25, 3, 2, 2],
    profits: [350, 400, 450, 20, 70, 8, 5, 5],
    optimum: 900,
    chosen: [1, 0, 1, 1, 1, 0, 1, 1],
    greedy: 858,
  },
  {
    name: 'P06',
    capacity: 170,
    weights: [41, 50, 49, 59, 55, 57, 60],
    profits: [442, 525, 511, 593, 546, 564, 617],
    optimum: 1735,
    chosen: [0, 1, 0, 1, 0, 0, 1],
    greedy: 1478,
  },
  {
    name: 'P07',
    capacity: 750,
    weights: [70, 73, 77, 80, 82, 87, 90, 94, 98, 106, 110, 113, 115, 118, 120],
    profits: [135, 139, 149, 150, 156, 163, 173, 184, 192, 201, 210, 214, 221, 229, 240],
    optimum: 1458,
    chosen: [1, 0, 1, 0, 1, 0, 1, 1, 1, 0, 0, 0, 0, 1, 1],
    greedy: 1441,
  },
] as const;

function knapsack(capacity: number, weights: readonly number[], profits: readonly number[]): Programme {
  return {
    gain: Float64Array.from(profits),
    rows: [
      {
        constraint: { kind: 'budget', money: capacity },
        from: Number.NEGATIVE_INFINITY,
        to: capacity,
        column: weights.map((_, i) => i),
        value: weights,
      },
    ],
  };
}

test.each(PUBLISHED)(
  '$name: the published optimum, its set, and the bound',
  async ({ capacity, weights, profits, optimum, chosen, greedy }) => {
    const solve = highsSolver(await loadHighs());
    const programme = knapsack(capacity, weights, profits);
    const solved = solve(programme);
    expect(solved.status).toBe('optimal');
    expect(solved.value).toBeCloseTo(optimum, EXACT);
    expect([...solved.chosen]).toEqual(chosen);
    expect(solved.bound).toBeCloseTo(optimum, EXACT);
    expect(solved.value).toBeGreaterThanOrEqual(greedy);
    // Dropping the whole numbers can only help.
    expect(solve(programme, { relaxed: true }).value).toBeGreaterThanOrEqual(optimum - 1e-6);
    // The same again, to the digit.
    expect(solve(programme)).toEqual(solved);
  },
);

test('what cannot be is infeasible; nothing to choose from is solved', async () => {
  const solve = highsSolver(await loadHighs());
  const row = {
    constraint: { kind: 'must-do', blockId: 'A', action: 'any' },
    from: 1,
    to: 1,
    column: [],
    value: [],
  } as const;
  expect(solve({ gain: Float64Array.of(1), rows: [row] }).status).toBe('infeasible');
  expect(solve({ gain: new Float64Array(0), rows: [row] }).status).toBe('infeasible');
  expect(solve({ gain: new Float64Array(0), rows: [] })).toMatchObject({ status: 'optimal', value: 0 });
});
