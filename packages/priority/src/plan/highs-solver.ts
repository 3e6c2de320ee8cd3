/**
 * HiGHS behind the solver port. Source: Huangfu Q, Hall JAJ (2018) Parallelizing the dual revised simplex method, Math. Prog.
 * Comp. 10:119–142. The loaded WebAssembly module is handed in, so that this room stays free of I/O and runs anywhere.
 */
import type { Programme, Solved, SolveOptions, Solver } from './programme.ts';

/** The part of the loaded module that is used. */
export interface Highs {
  createModel(source: HighsModelData): HighsModel;
}

interface HighsModelData {
  readonly numCols: number;
  readonly numRows: number;
  readonly colCost: Float64Array;
  readonly colLower: Float64Array;
  readonly colUpper: Float64Array;
  readonly rowLower: Float64Array;
  readonly rowUpper: Float64Array;
  readonly matrix: {
    readonly format: 'csr';
    readonly numRows: number;
    readonly numCols: number;
    readonly starts: Int32Array;
    readonly indices: Int32Array;
    readonly values: Float64Array;
  };
  readonly integrality?: Int32Array;
}

interface HighsModel {
  readonly options: { set(name: string, value: boolean | number | string): unknown };
  readonly info: { get(name: string): number | bigint };
  run(): { readonly modelStatus: number };
  getSolution(): { readonly colValue: Float64Array };
  getObjectiveValue(): number;
  dispose(): void;
}

const STATUS = { optimal: 7, infeasible: 8, unboundedOrInfeasible: 9 };
/** The build has one thread; with one seed the same programme gives the same choice on every machine, unless seconds run out. */
const STEADY = { output_flag: false, random_seed: 0, mip_abs_gap: 0, mip_feasibility_tolerance: 1e-9 };
/** A bound this near to the value, relative, is the value. */
const PROVEN = 1e-9;

/**
 * The solver port over a loaded HiGHS module. Each call makes and frees a model of its own. A programme without columns is
 * solved without it.
 * @example const solve = highsSolver(await loadHighs()); solve(programme).value
 */
export function highsSolver(highs: Highs): Solver {
  return (programme, options = {}) => {
    if (programme.gain.length === 0) return withoutColumns(programme);
    const model = highs.createModel(dataOf(programme, options.relaxed === true));
    try {
      for (const [name, value] of Object.entries(STEADY)) model.options.set(name, value);
      model.options.set('mip_rel_gap', options.gap ?? 0);
      if (options.seconds !== undefined) model.options.set('time_limit', options.seconds);
      return outcomeOf(model, model.run().modelStatus, options);
    } finally {
      model.dispose();
    }
  };
}

function outcomeOf(model: HighsModel, status: number, { relaxed }: SolveOptions): Solved {
  const infeasible = status === STATUS.infeasible || status === STATUS.unboundedOrInfeasible;
  const nothing = new Float64Array(0);
  if (infeasible) return { status: 'infeasible', chosen: nothing, value: 0, bound: 0 };
  // HiGHS minimises the negated gains.
  const bound = relaxed ? -model.getObjectiveValue() : -Number(model.info.get('mip_dual_bound'));
  const found = Number(model.info.get('primal_solution_status')) === 2;
  if (!found) return { status: 'limit', chosen: nothing, value: 0, bound };
  const value = -model.getObjectiveValue();
  const proven = relaxed || bound - value <= PROVEN * Math.max(1, Math.abs(value));
  const raw = model.getSolution().colValue;
  const chosen = relaxed ? Float64Array.from(raw) : Float64Array.from(raw, (share) => (share > 0.5 ? 1 : 0));
  return {
    status: proven && status === STATUS.optimal ? 'optimal' : 'limit',
    chosen,
    value,
    bound: Math.max(bound, value),
  };
}

function withoutColumns({ rows }: Programme): Solved {
  const fits = rows.every(({ from, to }) => from <= 0 && to >= 0);
  return { status: fits ? 'optimal' : 'infeasible', chosen: new Float64Array(0), value: 0, bound: 0 };
}

function dataOf({ gain, rows }: Programme, relaxed: boolean): HighsModelData {
  const starts = new Int32Array(rows.length + 1);
  rows.forEach(({ column }, i) => {
    starts[i + 1] = starts[i] + column.length;
  });
  const [numCols, numRows] = [gain.length, rows.length];
  return {
    numCols,
    numRows,
    colCost: gain.map((each) => -each),
    colLower: new Float64Array(numCols),
    colUpper: new Float64Array(numCols).fill(1),
    rowLower: Float64Array.from(rows, ({ from }) => from),
    rowUpper: Float64Array.from(rows, ({ to }) => to),
    matrix: {
      format: 'csr',
      numRows,
      numCols,
      starts,
      indices: Int32Array.from(rows.flatMap(({ column }) => column)),
      values: Float64Array.from(rows.flatMap(({ value }) => value)),
    },
    ...(relaxed ? {} : { integrality: new Int32Array(numCols).fill(1) }),
  };
}
