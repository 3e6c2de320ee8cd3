/** Weighted least squares by Householder reflections. */

import { type Defined, defined, undefinedBecause } from './defined.ts';

/** Share of a column that must be left after taking out the other columns; below, it counts as their sum. */
const COLLINEAR = 1e-11;

/** A least-squares solution with what its standard errors are made of. */
export type LeastSquaresFit = {
  readonly coefficients: number[];
  /** (XᵀWX)⁻¹. */
  readonly inverse: number[][];
  /** Diagonal of the projection √W X (XᵀWX)⁻¹ Xᵀ √W: how much each observation pulls its own fit, 0–1. */
  readonly leverages: number[];
};

/**
 * The coefficients that make Σw(z − Xb)² least. `columns` are the columns of X, weights from 0 up.
 *
 * QR factorisation, so that the condition number is not squared. Undefined with fewer rows of positive weight than columns, and
 * when a column is numerically a sum of the others.
 * Source: Golub and Van Loan, Matrix Computations, section 5.2–5.3 (from memory).
 *
 * Example: columns [[1, 1, 1], [0, 1, 2]] and z = [1, 3, 5] with weights of 1 give [1, 2].
 */
export function leastSquares(
  columns: readonly ArrayLike<number>[],
  z: ArrayLike<number>,
  weights: ArrayLike<number>,
): Defined<LeastSquaresFit> {
  const rows = z.length;
  const size = columns.length;
  const roots = Float64Array.from(weights, Math.sqrt);
  if (roots.reduce((count, root) => count + (root > 0 ? 1 : 0), 0) < size) return undefinedBecause('collinear-terms');
  const q = columns.map((column) => roots.map((root, i) => root * (column[i] as number)));
  const right = roots.map((root, i) => (root === 0 ? 0 : root * (z[i] as number)));
  const norms = q.map(norm);
  const diagonal = new Array<number>(size).fill(0);
  for (let j = 0; j < size; j++) {
    const pivot = reflect(q, right, j);
    if (!(Math.abs(pivot) > COLLINEAR * (norms[j] as number))) return undefinedBecause('collinear-terms');
    diagonal[j] = pivot;
  }
  const r = (i: number, j: number): number => (i === j ? (diagonal[i] as number) : (q[j]?.[i] as number));
  const inverseR = invertUpper(r, size);
  return defined({
    coefficients: inverseR.map((row) => row.reduce((sum, value, k) => sum + value * (right[k] as number), 0)),
    inverse: inverseR.map((a) => inverseR.map((b) => a.reduce((sum, value, k) => sum + value * (b[k] as number), 0))),
    leverages: Array.from({ length: rows }, (_, i) => leverage(columns, inverseR, i) * (roots[i] as number) ** 2),
  });
}

/** Reflects column j, those after it and the right side; keeps the reflector in column j from row j down, returns R's diagonal. */
function reflect(q: readonly Float64Array[], right: Float64Array, j: number): number {
  const column = q[j] as Float64Array;
  const length = norm(column.subarray(j));
  if (length === 0) return 0;
  const head = column[j] as number;
  const pivot = head > 0 ? -length : length;
  column[j] = head - pivot;
  const scale = -pivot * (column[j] as number);
  for (const other of [...q.slice(j + 1), right]) {
    let product = 0;
    for (let i = j; i < other.length; i++) product += (column[i] as number) * (other[i] as number);
    const factor = product / scale;
    for (let i = j; i < other.length; i++) other[i] = (other[i] as number) - factor * (column[i] as number);
  }
  return pivot;
}

function invertUpper(r: (i: number, j: number) => number, size: number): number[][] {
  const inverse = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (let j = 0; j < size; j++) {
    for (let i = j; i >= 0; i--) {
      let rest = i === j ? 1 : 0;
      for (let k = i + 1; k <= j; k++) rest -= r(i, k) * (inverse[k]?.[j] as number);
      (inverse[i] as number[])[j] = rest / r(i, i);
    }
  }
  return inverse;
}

/** xᵢᵀ(XᵀWX)⁻¹xᵢ as the squared length of R⁻ᵀxᵢ. */
function leverage(columns: readonly ArrayLike<number>[], inverseR: readonly number[][], row: number): number {
  let total = 0;
  for (let k = 0; k < columns.length; k++) {
    let value = 0;
    for (let j = 0; j <= k; j++) value += (inverseR[j]?.[k] as number) * (columns[j]?.[row] as number);
    total += value * value;
  }
  return total;
}

function norm(values: Float64Array): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0));
}
