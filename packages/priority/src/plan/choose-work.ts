/** Chooses one offer for each block: the best that money, crew and windows allow, or the constraints that clash. */
import type { Constraint } from '@crownfall/survey';
import type { ActionOffer } from './action-offer.ts';
import { greedyChoice } from './greedy-choice.ts';
import type { Solved, SolveOptions, Solver } from './programme.ts';
import type { WorkProblem } from './work-problem.ts';

export interface Choice {
  readonly feasible: true;
  /** One at most for each block; blocks without one are left alone. */
  readonly offers: readonly ActionOffer[];
  /** Sum of the offers' own effects, m², and what no choice can exceed. */
  readonly avoidedM2: number;
  readonly boundM2: number;
  /** `(bound − value) / bound`; 0: the optimum is proved. */
  readonly gap: number;
  readonly cost: number;
  readonly crewHours: number;
  /** What taking the best ratio first would avoid; null where that finds no plan. */
  readonly greedyM2: number | null;
}

export interface Clash {
  readonly feasible: false;
  /** A smallest set that cannot be met together: without any one of them there would be a plan. */
  readonly clash: readonly Constraint[];
}

/**
 * The best choice. Its value is never below the greedy one; when the solver stops early with less, the greedy choice is taken.
 * Deterministic unless `seconds` run out.
 */
export function chooseWork(problem: WorkProblem, solve: Solver, options: SolveOptions = {}): Choice | Clash {
  const solved = solve(problem.programme, options);
  if (solved.status === 'infeasible') return { feasible: false, clash: clashOf(problem, solve) };
  const greedy = greedyChoice(problem);
  const greedyM2 = greedy === null ? null : avoidedBy(problem, greedy);
  const own = columnsOf(solved);
  const chosen = greedy !== null && greedyM2 !== null && greedyM2 > avoidedBy(problem, own) ? greedy : own;
  const avoidedM2 = avoidedBy(problem, chosen);
  const boundM2 = solved.status === 'optimal' ? avoidedM2 : Math.max(solved.bound, avoidedM2);
  const offers = chosen.map((column) => problem.columns[column]);
  return {
    feasible: true,
    offers,
    avoidedM2,
    boundM2,
    gap: boundM2 > 0 ? (boundM2 - avoidedM2) / boundM2 : 0,
    cost: offers.reduce((sum, { cost }) => sum + cost, 0),
    crewHours: offers.reduce((sum, { crewHours }) => sum + crewHours, 0),
    greedyM2,
  };
}

/** The columns taken. */
function columnsOf({ chosen }: Solved): number[] {
  return [...chosen.keys()].filter((column) => chosen[column] > 0.5);
}

function avoidedBy({ programme: { gain } }: WorkProblem, columns: readonly number[]): number {
  return columns.reduce((sum, column) => sum + gain[column], 0);
}

/**
 * Which constraints clash: each is left out in turn, for good when nothing is possible even so (deletion filter).
 * Source: Chinneck JW, Dravnieks EW (1991) Locating minimal infeasible constraint sets in linear programs, ORSA J. Comput.
 * 3:157–168.
 */
function clashOf({ programme }: WorkProblem, solve: Solver): Constraint[] {
  const gain = new Float64Array(programme.gain.length);
  const fixed = programme.rows.filter(({ constraint }) => constraint.kind === 'one-per-block');
  let suspects = programme.rows.filter(({ constraint }) => constraint.kind !== 'one-per-block');
  for (const suspect of [...suspects]) {
    const rest = suspects.filter((row) => row !== suspect);
    if (solve({ gain, rows: [...fixed, ...rest] }).status === 'infeasible') suspects = rest;
  }
  return suspects.map(({ constraint }) => constraint);
}
