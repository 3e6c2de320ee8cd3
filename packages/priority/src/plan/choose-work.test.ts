import type { Action } from '@crownfall/survey';
import { DEFAULT_SETTINGS } from '@crownfall/survey';
import fc from 'fast-check';
import loadHighs from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { ActionOffer } from './action-offer.ts';
import { chooseWork } from './choose-work.ts';
import { highsSolver } from './highs-solver.ts';
import type { Solver } from './programme.ts';
import { frontier, nextUnits } from './what-more-buys.ts';
import { hoursUntil, limitsOf, type WorkLimits, workProblem } from './work-problem.ts';

const AS_OF = '2026-05-20';
/** Sums of up to 12 areas below 100 m² in another order. */
const ROUNDING_M2 = 1e-9;
let solve: Solver;
beforeAll(async () => {
  solve = highsSolver(await loadHighs());
});

const limits = (change: Partial<WorkLimits> = {}): WorkLimits => ({
  ...limitsOf(AS_OF, DEFAULT_SETTINGS.plan),
  ...change,
});

function offer(blockId: string, action: Action, avoidedM2: number, change: Partial<ActionOffer> = {}): ActionOffer {
  return {
    blockId,
    action,
    treeIds: [],
    areaM2: 0,
    avoidedM2: { value: avoidedM2, range80: null, range95: null },
    cost: 100,
    crewHours: 4,
    hoursInWindow: 0,
    lastDay: null,
    forbidden: [],
    ...change,
  };
}

const STAINED = new Map(['A', 'B', 'C', 'D'].map((id, i) => [id, 10 * (i + 1)]));
const ACTIONS_TRIED = ['clean', 'treat', 'replace'] as const;

const offers = fc
  .array(
    fc.record({
      block: fc.constantFrom('A', 'B', 'C', 'D'),
      action: fc.constantFrom(...ACTIONS_TRIED),
      m2: fc.integer({ min: 0, max: 60 }),
      cost: fc.integer({ min: 1, max: 40 }),
      hours: fc.integer({ min: 1, max: 12 }),
      days: fc.integer({ min: 0, max: 20 }),
    }),
    { minLength: 1, maxLength: 9 },
  )
  .map((rows) => {
    const unique = new Map(rows.map((row) => [`${row.block} ${row.action}`, row]));
    return [...unique.values()].map(({ block, action, m2, cost, hours, days }) => {
      const lastDay = `2026-${days < 12 ? `05-${20 + days}` : `06-${String(days - 11).padStart(2, '0')}`}`;
      const window = action === 'treat' ? { lastDay, hoursInWindow: hours } : {};
      return offer(block, action, m2, { cost, crewHours: hours, ...window });
    });
  });
const bounds = fc.record({
  budget: fc.option(fc.integer({ min: 0, max: 120 }), { nil: null }),
  crewHoursPerWeek: fc.option(fc.integer({ min: 0, max: 20 }), { nil: null }),
  weeks: fc.integer({ min: 1, max: 3 }),
  mustDo: fc.constantFrom<WorkLimits['mustDo']>(
    [],
    [],
    [{ block_id: 'A', action: 'any' }],
    [{ block_id: 'B', action: 'treat' }],
    [{ block_id: 'C', action: 'leave' }],
  ),
  districts: fc.constant([
    { name: 'west', blocks: ['A', 'B'] },
    { name: 'east', blocks: ['C', 'D'] },
  ]),
  districtFloor: fc.constantFrom(0, 0, 0.5, 1),
});

/** Every choice of at most one offer for each block, judged by the words of the rules. The best value, null when none fits. */
function bruteForce(all: readonly ActionOffer[], given: WorkLimits): number | null {
  const blocks = [...new Set(all.map(({ blockId }) => blockId))];
  let choices: ActionOffer[][] = [[]];
  for (const block of blocks) {
    const own = all.filter(({ blockId }) => blockId === block);
    choices = choices.flatMap((choice) => [choice, ...own.map((one) => [...choice, one])]);
  }
  const values = choices.filter((choice) => allowed(choice, given, all)).map(areaOf);
  return values.length === 0 ? null : Math.max(...values);
}

const areaOf = (choice: readonly ActionOffer[]) => choice.reduce((sum, { avoidedM2 }) => sum + avoidedM2.value, 0);

function allowed(choice: readonly ActionOffer[], given: WorkLimits, all: readonly ActionOffer[]): boolean {
  const sum = (of: (one: ActionOffer) => number) => choice.reduce((total, one) => total + of(one), 0);
  if (given.budget !== null && sum(({ cost }) => cost ?? 0) > given.budget) return false;
  if (given.crewHoursPerWeek !== null) {
    if (sum(({ crewHours }) => crewHours ?? 0) > given.crewHoursPerWeek * given.weeks) return false;
    for (const { lastDay } of choice) {
      if (lastDay === null) continue;
      const due = sum((one) => (one.lastDay !== null && one.lastDay <= lastDay ? one.hoursInWindow : 0));
      if (due > hoursUntil(lastDay, given) + 1e-9) return false;
    }
  }
  for (const { block_id, action } of given.mustDo) {
    const own = choice.filter(({ blockId }) => blockId === block_id);
    if (action === 'leave' && own.length > 0) return false;
    if (action === 'any' && !own.some(({ avoidedM2 }) => avoidedM2.value > 0)) return false;
    if (action !== 'leave' && action !== 'any' && !own.some((one) => one.action === action)) return false;
  }
  if (given.districtFloor === 0) return true;
  const able = given.districts.filter(({ blocks }) =>
    all.some((one) => blocks.includes(one.blockId) && one.avoidedM2.value > 0),
  );
  const stain = (blocks: readonly string[]) => blocks.reduce((total, id) => total + (STAINED.get(id) ?? 0), 0);
  const town = able.reduce((total, { blocks }) => total + stain(blocks), 0);
  return able.every(({ blocks }) => {
    const part = areaOf(choice.filter(({ blockId }) => blocks.includes(blockId)));
    return part >= given.districtFloor * (stain(blocks) / town) * areaOf(choice) - 1e-9;
  });
}

describe('choosing work', () => {
  // Oracle: every choice there is, tried one by one.
  test('finds what trying every choice finds, and is never below taking the best ratio first', () => {
    fc.assert(
      fc.property(offers, bounds, (all, change) => {
        const given = limits(change);
        const found = chooseWork(workProblem(all, given, STAINED), solve);
        const best = bruteForce(all, given);
        expect(found.feasible).toBe(best !== null);
        if (!found.feasible || best === null) return;
        expect(Math.abs(found.avoidedM2 - best)).toBeLessThan(ROUNDING_M2);
        expect(found.gap).toBeLessThan(ROUNDING_M2);
        expect(found.avoidedM2).toBeGreaterThanOrEqual(found.greedyM2 ?? 0);
        expect(allowed(found.offers, given, all)).toBe(true);
      }),
      { seed: 20260520, numRuns: 150 },
    );
  });

  test('a clash names a smallest set: without any one of them there is a plan', () => {
    fc.assert(
      fc.property(offers, bounds, (all, change) => {
        const given = limits(change);
        const problem = workProblem(all, given, STAINED);
        const found = chooseWork(problem, solve);
        if (found.feasible) return;
        const named = problem.programme.rows.filter(({ constraint }) => found.clash.includes(constraint));
        const fixed = problem.programme.rows.filter(({ constraint }) => constraint.kind === 'one-per-block');
        const possible = (rows: typeof named) =>
          solve({ gain: problem.programme.gain, rows: [...fixed, ...rows] }).status !== 'infeasible';
        expect(possible(named)).toBe(false);
        for (const each of named) expect(possible(named.filter((row) => row !== each))).toBe(true);
      }),
      { seed: 20260521, numRuns: 150 },
    );
  });

  test('two must-do blocks beyond the budget clash with it, and only with it', () => {
    const all = [offer('A', 'clean', 5, { cost: 80 }), offer('B', 'clean', 5, { cost: 70 }), offer('C', 'clean', 50)];
    const mustDo = [
      { block_id: 'A', action: 'any' as const },
      { block_id: 'B', action: 'clean' as const },
    ];
    const found = chooseWork(workProblem(all, limits({ budget: 120, crewHoursPerWeek: 40, mustDo }), STAINED), solve);
    expect(found.feasible ? [] : found.clash.map(({ kind }) => kind)).toEqual(['budget', 'must-do', 'must-do']);
  });

  test('a must-do block whose actions are all forbidden clashes by itself', () => {
    const all = [
      offer('A', 'clean', 5, { forbidden: [{ code: 'nothing-stained', facts: {} }] }),
      offer('B', 'clean', 5),
    ];
    const mustDo = [{ block_id: 'A', action: 'any' as const }];
    const found = chooseWork(workProblem(all, limits({ budget: 1000, mustDo }), STAINED), solve);
    expect(found.feasible ? [] : found.clash).toEqual([{ kind: 'must-do', blockId: 'A', action: 'any' }]);
  });

  test('what is forbidden, or has no price, is never chosen', () => {
    const all = [
      offer('A', 'treat', 90, { forbidden: [{ code: 'bees-seen', facts: {} }] }),
      offer('B', 'clean', 80, { cost: null }),
      offer('C', 'clean', 1),
    ];
    const found = chooseWork(workProblem(all, limits(), STAINED), solve);
    expect(found.feasible && found.offers.map(({ blockId }) => blockId)).toEqual(['C']);
  });

  test('the next unit and the frontier agree with planning anew, and the frontier never falls', () => {
    fc.assert(
      fc.property(offers, (all) => {
        const given = limits({ budget: 30, crewHoursPerWeek: 8, weeks: 1 });
        const problemFor = (other: WorkLimits) => workProblem(all, other, STAINED);
        const plan = chooseWork(problemFor(given), solve);
        if (!plan.feasible) throw new Error('nothing must be done, so there is a plan');
        const by = { solve, options: {}, hoursPerDay: 8 };
        const [money, crew] = nextUnits(problemFor, given, plan, by);
        expect(money.step).toBe(2);
        expect(plan.avoidedM2 + money.avoidedM2).toBeCloseTo(bruteForce(all, { ...given, budget: 32 }) as number, 9);
        expect(plan.avoidedM2 + crew.avoidedM2).toBeCloseTo(
          bruteForce(all, { ...given, crewHoursPerWeek: 16 }) as number,
          9,
        );
        const points = frontier(problemFor, given, by);
        for (const { budget, avoidedM2 } of points)
          expect(avoidedM2).toBeCloseTo(bruteForce(all, { ...given, budget }) as number, 9);
        expect(points.map(({ avoidedM2 }) => avoidedM2)).toEqual(
          points.map(({ avoidedM2 }) => avoidedM2).sort((a, b) => a - b),
        );
      }),
      { seed: 20260522, numRuns: 25 },
    );
  });
});
