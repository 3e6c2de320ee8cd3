/** The integer programme as data, and the port through which a solver is reached. */

import type { Constraint } from '@crownfall/survey';

/** `from ≤ Σ value · x ≤ to`. */
export interface ProgrammeRow {
  readonly constraint: Constraint;
  readonly from: number;
  readonly to: number;
  readonly column: readonly number[];
  readonly value: readonly number[];
}

/** Maximise `Σ gain · x` over x ∈ {0, 1} under all rows. */
export interface Programme {
  readonly gain: Float64Array;
  readonly rows: readonly ProgrammeRow[];
}

export interface SolveOptions {
  /** Stop when the bound is within this share of the value; 0: prove the optimum. */
  readonly gap?: number;
  /** Stop after so many seconds with the best found; only then may the outcome depend on the machine. */
  readonly seconds?: number;
  /** Let x be any number from 0 to 1. */
  readonly relaxed?: boolean;
}

export interface Solved {
  /** `limit`: stopped early, or within the gap asked for; `chosen` is the best found. */
  readonly status: 'optimal' | 'limit' | 'infeasible';
  /** By column. Fractions only when relaxed; empty when infeasible or nothing was found. */
  readonly chosen: Float64Array;
  readonly value: number;
  /** No choice can be worth more than this. */
  readonly bound: number;
}

/** Solves a programme; pure and synchronous. See `highsSolver`. */
export type Solver = (programme: Programme, options?: SolveOptions) => Solved;
