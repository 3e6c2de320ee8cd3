/** What another budget or crew would do: the next unit, and the frontier of money against stain. */
import { type Choice, type Clash, chooseWork } from './choose-work.ts';
import type { SolveOptions, Solver } from './programme.ts';
import type { FrontierPoint, NextUnit } from './work-plan.ts';
import type { WorkLimits, WorkProblem } from './work-problem.ts';

/** Makes the programme anew for other limits. */
export type ProblemFor = (limits: WorkLimits) => WorkProblem;

/** Twentieths of the budget are rounded to 1, 2 or 5 times a power of ten. */
const STEPS = 20;
const POINTS = 10;

/** What one more step of money, and one more crew day each week, would avoid; limits that are not set buy nothing. */
export function nextUnits(problemFor: ProblemFor, limits: WorkLimits, plan: Choice, by: Solving): NextUnit[] {
  const more = (other: Partial<WorkLimits>) =>
    avoidedBy(chooseWork(problemFor({ ...limits, ...other }), by.solve, by.options));
  const gained = (avoidedM2: number) => Math.max(0, avoidedM2 - plan.avoidedM2);
  const { budget, crewHoursPerWeek: hours } = limits;
  const step = niceStep((budget ?? 0) / STEPS);
  return [
    ...(budget === null ? [] : [{ of: 'money' as const, step, avoidedM2: gained(more({ budget: budget + step })) }]),
    ...(hours === null
      ? []
      : [
          {
            of: 'crew_days_per_week' as const,
            step: 1,
            avoidedM2: gained(more({ crewHoursPerWeek: hours + by.hoursPerDay })),
          },
        ]),
  ];
}

export interface Solving {
  readonly solve: Solver;
  readonly options: SolveOptions;
  readonly hoursPerDay: number;
  /** Points of the frontier beside 0; default 10. */
  readonly points?: number;
}

/**
 * Budget against stained area avoided, from nothing to what would be spent without a budget, crew and all else as they are. Points
 * at which the must-do blocks cannot be paid are left out. Never falls with the budget.
 */
export function frontier(
  problemFor: ProblemFor,
  limits: WorkLimits,
  { solve, options, points: count = POINTS }: Solving,
): FrontierPoint[] {
  const at = (budget: number | null) => chooseWork(problemFor({ ...limits, budget }), solve, options);
  const free = at(null);
  if (!free.feasible) return [];
  const points: FrontierPoint[] = [];
  for (let i = 0; i <= count; i++) {
    const budget = (free.cost * i) / count;
    const found = i === count ? free : at(budget);
    if (!found.feasible) continue;
    const before = points.at(-1);
    // Solved within a gap, a greater budget may find less; the smaller plan is still affordable.
    const worse = before !== undefined && found.avoidedM2 < before.avoidedM2;
    points.push(
      worse ? { ...before, budget } : { budget, cost: found.cost, avoidedM2: found.avoidedM2, gap: found.gap },
    );
    if (free.cost === 0) break;
  }
  return points;
}

function avoidedBy(outcome: Choice | Clash): number {
  return outcome.feasible ? outcome.avoidedM2 : 0;
}

/** The nearest of 1, 2, 5 · 10ⁿ, at least 1: `niceStep(430)` is 500. */
function niceStep(value: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(1, value)));
  const step = [1, 2, 5, 10].find((each) => each * power >= value * 0.999) ?? 10;
  return step * power;
}
