/** The accounting of pavement by any key (piece, block, kind), as columns, and its rows as figures. */
import { BalancedSums } from './balanced-sum.ts';
import type { PavementFigures, Ranged } from './figures.ts';

/** One row for each key; m². */
export interface AreaColumns {
  readonly pavementM2: Float64Array;
  readonly driplineM2: Float64Array;
  readonly falloutM2: Float64Array;
  readonly stainedM2: Float64Array;
}

/** Sums rows by `key` to `rows` sums of each column, compensated. Linear time. */
export function areasBy(areas: AreaColumns, key: Int32Array, rows: number): AreaColumns {
  const sums = new BalancedSums(rows);
  const sumsOf = (column: Float64Array): Float64Array => {
    sums.clear(rows);
    for (let row = 0; row < key.length; row++) sums.add(key[row], column[row]);
    return sums.values();
  };
  return {
    pavementM2: sumsOf(areas.pavementM2),
    driplineM2: sumsOf(areas.driplineM2),
    falloutM2: sumsOf(areas.falloutM2),
    stainedM2: sumsOf(areas.stainedM2),
  };
}

/** One row of the columns as figures, without ranges. */
export function figuresAt(columns: AreaColumns, row: number): PavementFigures {
  return {
    pavementM2: columns.pavementM2[row],
    driplineM2: columns.driplineM2[row],
    falloutM2: columns.falloutM2[row],
    stainedM2: unranged(columns.stainedM2[row]),
  };
}

/** A figure whose range is not known, because no draws were made. */
export function unranged(value: number): Ranged {
  return { value, range80: null, range95: null };
}
