/** The plan one would make by hand: must-do blocks first, then the best ratio of effect to money and time. */
import { hoursUntil, type WorkProblem } from './work-problem.ts';

/** Keeps the ratio finite when neither money nor hours are limited: effect alone orders then. */
const FREE = 1e-12;

/** Columns taken in ascending order, or null when the must-do blocks or the districts' floor cannot be met this way. */
export function greedyChoice(problem: WorkProblem): number[] | null {
  const { programme, columns } = problem;
  const hand = new Hand(problem);
  for (const { constraint, column } of programme.rows) {
    if (constraint.kind !== 'must-do') continue;
    if (constraint.action === 'leave') hand.leave(constraint.blockId);
    else if (!column.some(hand.has)) {
      const cheapest = column.filter(hand.fits).sort((a, b) => columns[a].cost - columns[b].cost || a - b)[0];
      if (cheapest === undefined) return null;
      hand.take(cheapest);
    }
  }
  for (const column of byRatio(problem)) if (programme.gain[column] > 0 && hand.fits(column)) hand.take(column);
  const taken = hand.taken();
  return floorsHold(programme, taken) ? taken : null;
}

/** Columns by effect for the part of all money and hours they take, best first. */
function byRatio({ columns, limits: { budget, crewHoursPerWeek, weeks }, programme }: WorkProblem): number[] {
  const allHours = (crewHoursPerWeek ?? Number.POSITIVE_INFINITY) * weeks;
  const ratio = columns.map(({ cost, crewHours }, column) => {
    const burden = cost / (budget || Number.POSITIVE_INFINITY) + crewHours / (allHours || 1);
    return programme.gain[column] / (FREE + burden);
  });
  return [...columns.keys()].sort((a, b) => ratio[b] - ratio[a] || a - b);
}

/** What has been taken so far, and what still fits beside it. */
class Hand {
  readonly #problem: WorkProblem;
  readonly #taken = new Set<number>();
  readonly #blocks = new Set<string>();
  /** Last days of windows in order, with the hours that must fall before each and the hours there are. */
  readonly #days: readonly string[];
  readonly #due: Float64Array;
  #money = 0;
  #hours = 0;

  constructor(problem: WorkProblem) {
    this.#problem = problem;
    this.#days = [...new Set(problem.columns.flatMap(({ lastDay }) => lastDay ?? []))].sort();
    this.#due = new Float64Array(this.#days.length);
  }

  readonly has = (column: number): boolean => this.#taken.has(column);

  readonly fits = (column: number): boolean => {
    const { columns, limits } = this.#problem;
    const { blockId, cost, crewHours, lastDay, hoursInWindow } = columns[column];
    if (this.#blocks.has(blockId) || this.#money + cost > (limits.budget ?? Number.POSITIVE_INFINITY)) return false;
    const { crewHoursPerWeek, weeks } = limits;
    if (crewHoursPerWeek === null) return true;
    if (this.#hours + crewHours > crewHoursPerWeek * weeks) return false;
    return this.#days.every((day, i) => {
      const own = lastDay !== null && lastDay <= day ? hoursInWindow : 0;
      return own === 0 || this.#due[i] + own <= hoursUntil(day, limits);
    });
  };

  leave(blockId: string): void {
    this.#blocks.add(blockId);
  }

  take(column: number): void {
    const { blockId, cost, crewHours, lastDay, hoursInWindow } = this.#problem.columns[column];
    this.#taken.add(column);
    this.#blocks.add(blockId);
    this.#money += cost;
    this.#hours += crewHours;
    this.#days.forEach((day, i) => {
      if (lastDay !== null && lastDay <= day) this.#due[i] += hoursInWindow;
    });
  }

  taken(): number[] {
    return [...this.#taken].sort((a, b) => a - b);
  }
}

function floorsHold({ rows }: WorkProblem['programme'], taken: readonly number[]): boolean {
  const chosen = new Set(taken);
  const sum = (column: readonly number[], value: readonly number[]) =>
    value.reduce((total, each, i) => total + (chosen.has(column[i]) ? each : 0), 0);
  return rows
    .filter(({ constraint }) => constraint.kind === 'district')
    .every(({ column, value, from }) => sum(column, value) >= from);
}
