/** Whose stain it is: each cell's stained area split among the crowns above it in proportion to their doses. */

import { unranged } from './area-columns.ts';
import { BalancedSums } from './balanced-sum.ts';
import type { CrownFigures } from './figures.ts';
import { cellDose, type DoseField } from './stained-share.ts';

/** One row for each zone; m². Drip line and fallout are the crown's own, overlaps with other crowns not removed. */
export interface CrownColumns {
  readonly driplineM2: Float64Array;
  readonly falloutM2: Float64Array;
  /** Attributed. */
  readonly stainedM2: Float64Array;
}

/** The stained area of a block that is attributed to a zone, in compressed form: only pairs with a stain. */
export interface BlameColumns {
  /** −1: outside every block. Rows ascend by block, then zone; outside comes last. */
  readonly block: Int32Array;
  readonly zone: Int32Array;
  readonly stainedM2: Float64Array;
}

/**
 * Own areas and attributed stained area of every crown: `∫ c · d_t / Σd`, 0 where Σd = 0. Attributions sum to the stained
 * area (tested to 1e-9 relative); a crown without a dose is attributed nothing, whatever hangs over it.
 * `share` are the field's stained shares by cell.
 */
export function crownAreas(field: DoseField, share: Float64Array): CrownColumns {
  const { ledger } = field;
  const dripline = new BalancedSums(field.dose.length);
  const fallout = new BalancedSums(field.dose.length);
  const stained = new BalancedSums(field.dose.length);
  for (let cell = 0; cell < ledger.cellCount; cell++) {
    const areaM2 = ledger.areaM2[cell];
    for (let entry = ledger.coverStart[cell]; entry < ledger.coverStart[cell + 1]; entry++) {
      fallout.add(ledger.zone[entry], areaM2);
      if (ledger.layer[entry] === 0) dripline.add(ledger.zone[entry], areaM2);
    }
  }
  eachAttribution(field, share, (_cell, zone, attributedM2) => stained.add(zone, attributedM2));
  return { driplineM2: dripline.values(), falloutM2: fallout.values(), stainedM2: stained.values() };
}

/** The attribution by block as well: who stains this block, and by how much. Pairs with nothing attributed are left out. */
export function blameByBlock(field: DoseField, share: Float64Array, blockCount: number): BlameColumns {
  const zones = field.dose.length;
  const rowOf = new Map<number, number>();
  const pairs: number[] = [];
  eachAttribution(field, share, (cell, zone) => {
    const key = blockKey(field.ledger.block[cell], blockCount) * zones + zone;
    if (!rowOf.has(key)) rowOf.set(key, pairs.push(key) - 1);
  });
  pairs
    .sort((a, b) => a - b)
    .forEach((key, row) => {
      rowOf.set(key, row);
    });
  const stained = new BalancedSums(pairs.length);
  eachAttribution(field, share, (cell, zone, attributedM2) => {
    stained.add(rowOf.get(blockKey(field.ledger.block[cell], blockCount) * zones + zone) as number, attributedM2);
  });
  const blocks = Int32Array.from(pairs, (key) => Math.floor(key / zones));
  return {
    block: blocks.map((block) => (block === blockCount ? -1 : block)),
    zone: Int32Array.from(pairs, (key) => key % zones),
    stainedM2: stained.values(),
  };
}

/** One row of the columns as figures, without ranges. */
export function crownFiguresAt(columns: CrownColumns, zone: number): CrownFigures {
  return {
    driplineM2: columns.driplineM2[zone],
    falloutM2: columns.falloutM2[zone],
    stainedM2: unranged(columns.stainedM2[zone]),
  };
}

/** The row of a block in columns that keep a last row for what lies in no block. */
export function blockKey(block: number, blockCount: number): number {
  return block < 0 ? blockCount : block;
}

function eachAttribution(
  field: DoseField,
  share: Float64Array,
  visit: (cell: number, zone: number, attributedM2: number) => void,
): void {
  const { ledger, layerShare, dose } = field;
  for (let cell = 0; cell < ledger.cellCount; cell++) {
    const sum = cellDose(field, cell);
    if (sum === 0) continue;
    const perDose = (ledger.areaM2[cell] * share[cell]) / sum;
    for (let entry = ledger.coverStart[cell]; entry < ledger.coverStart[cell + 1]; entry++) {
      const zoneDose = layerShare[ledger.layer[entry]] * dose[ledger.zone[entry]];
      if (zoneDose > 0) visit(cell, ledger.zone[entry], perDose * zoneDose);
    }
  }
}
