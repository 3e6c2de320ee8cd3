/** The accounting of pavement by any key (piece, block, kind), as columns, and its rows as figures. */
import type { OverlayLedger } from '@crownfall/geometry';
import { BalancedSums } from './balanced-sum.ts';
import type { PavementFigures, Ranged } from './figures.ts';

/** One row for each key; m². */
export interface AreaColumns {
  readonly pavementM2: Float64Array;
  readonly driplineM2: Float64Array;
  readonly falloutM2: Float64Array;
  readonly stainedM2: Float64Array;
}

/**
 * Sums the cells of a ledger by key: pavement (all cells), drip line (cells with a zone at layer 0), fallout (cells with any
 * zone), stained (`area · share`). Overlaps count once, because each cell is one piece of ground. Linear time; compensated
 * sums. A key outside 0 … rows − 1 is a RangeError.
 */
export function areasBy(
  ledger: OverlayLedger,
  share: Float64Array,
  rows: number,
  keyOf: (cell: number) => number,
): AreaColumns {
  const pavement = new BalancedSums(rows);
  const dripline = new BalancedSums(rows);
  const fallout = new BalancedSums(rows);
  const stained = new BalancedSums(rows);
  for (let cell = 0; cell < ledger.cellCount; cell++) {
    const key = keyOf(cell);
    if (!(key >= 0 && key < rows))
      throw new RangeError(`cell ${cell}: expected a key from 0 to ${rows - 1}, got ${key}`);
    const areaM2 = ledger.areaM2[cell];
    pavement.add(key, areaM2);
    if (ledger.coverStart[cell + 1] === ledger.coverStart[cell]) continue;
    fallout.add(key, areaM2);
    if (isUnderCrown(ledger, cell)) dripline.add(key, areaM2);
    stained.add(key, areaM2 * share[cell]);
  }
  return {
    pavementM2: pavement.values(),
    driplineM2: dripline.values(),
    falloutM2: fallout.values(),
    stainedM2: stained.values(),
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

function isUnderCrown(ledger: OverlayLedger, cell: number): boolean {
  for (let entry = ledger.coverStart[cell]; entry < ledger.coverStart[cell + 1]; entry++) {
    if (ledger.layer[entry] === 0) return true;
  }
  return false;
}
