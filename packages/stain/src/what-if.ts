/**
 * What changed doses would do: treating trees, a milder season, a different cause. No geometry is redone; only the cells
 * under the changed crowns are weighed again.
 */
import type { OverlayLedger } from '@crownfall/geometry';
import { BalancedSums } from './balanced-sum.ts';
import { cellDose, checkAmount, type DoseField } from './stained-share.ts';

/** For each zone the cells it covers, in compressed rows. Made once, it serves any number of what-ifs. */
export interface ZoneCells {
  /** Length zones + 1. */
  readonly start: Int32Array;
  readonly cell: Int32Array;
}

export interface WhatIf {
  /** Stained area after minus before, m²; negative is less stain. */
  readonly changeM2: number;
  /** By block index; −1 is outside every block. Blocks that the change does not reach are absent. */
  readonly changeByBlock: ReadonlyMap<number, number>;
  readonly changeByPiece: ReadonlyMap<number, number>;
}

/** The cells under each zone (the ledger's covers, turned round). Counting sort, linear time. */
export function zoneCells(ledger: OverlayLedger, zoneCount: number): ZoneCells {
  const start = new Int32Array(zoneCount + 1);
  const entries = ledger.coverStart[ledger.cellCount];
  for (let entry = 0; entry < entries; entry++) start[ledger.zone[entry] + 1]++;
  for (let zone = 0; zone < zoneCount; zone++) start[zone + 1] += start[zone];
  const next = start.slice();
  const cell = new Int32Array(entries);
  for (let i = 0; i < ledger.cellCount; i++) {
    for (let entry = ledger.coverStart[i]; entry < ledger.coverStart[i + 1]; entry++)
      cell[next[ledger.zone[entry]]++] = i;
  }
  return { start, cell };
}

/**
 * The effect of giving some zones another dose. `ΔS = Σ A·(e^−D − e^−D')` over the cells under them, exact to rounding
 * (tested against reckoning anew). An empty change has no effect. RangeError for a zone that is not there or a dose that
 * is negative or not finite.
 *
 * Example: 10 m² under one crown of dose 1, treated (dose 0): change −6.3212 m².
 */
export function whatIf(
  field: DoseField,
  changes: ReadonlyMap<number, number>,
  cells: ZoneCells = zoneCells(field.ledger, field.dose.length),
): WhatIf {
  const { ledger } = field;
  const touched = doseChanges(field, changes, cells);
  const block = new KeyedSums();
  const piece = new KeyedSums();
  const total = new BalancedSums(1);
  for (const [cell, added] of touched) {
    const changeM2 = ledger.areaM2[cell] * shareChange(cellDose(field, cell), added);
    total.add(0, changeM2);
    block.add(ledger.block[cell], changeM2);
    piece.add(ledger.piece[cell], changeM2);
  }
  return { changeM2: total.at(0), changeByBlock: block.values(), changeByPiece: piece.values() };
}

/**
 * What treating each tree alone would save, m², by zone: the fall of the stained area when only its dose becomes 0,
 * `Σ A·e^−D·(e^d_t − 1)`. At most the attributed area, less where other crowns stain the same ground. Linear time.
 */
export function savedByTreating(field: DoseField): Float64Array {
  const { ledger, layerShare, dose } = field;
  const saved = new BalancedSums(dose.length);
  for (let cell = 0; cell < ledger.cellCount; cell++) {
    const sum = cellDose(field, cell);
    for (let entry = ledger.coverStart[cell]; entry < ledger.coverStart[cell + 1]; entry++) {
      const own = layerShare[ledger.layer[entry]] * dose[ledger.zone[entry]];
      if (own > 0) saved.add(ledger.zone[entry], -ledger.areaM2[cell] * Math.exp(own - sum) * Math.expm1(-own));
    }
  }
  return saved.values();
}

/** `e^−D − e^−(D + added)` without loss of digits or overflow at either end. */
function shareChange(sum: number, added: number): number {
  if (added >= 0) return -Math.exp(-sum) * Math.expm1(-added);
  return Math.exp(-Math.max(0, sum + added)) * Math.expm1(added);
}

/** By cell, in ascending order: how much dose the changes add to it (negative: take from it). */
function doseChanges(field: DoseField, changes: ReadonlyMap<number, number>, cells: ZoneCells): [number, number][] {
  const { ledger, layerShare, dose } = field;
  const reached = new Set<number>();
  for (const [zone, after] of changes) {
    if (!(zone >= 0 && zone < dose.length)) throw new RangeError(`expected a zone below ${dose.length}, got ${zone}`);
    checkAmount(after, `changed dose of zone ${zone}`);
    for (let i = cells.start[zone]; i < cells.start[zone + 1]; i++) reached.add(cells.cell[i]);
  }
  return [...reached]
    .sort((a, b) => a - b)
    .map((cell) => {
      let added = 0;
      for (let entry = ledger.coverStart[cell]; entry < ledger.coverStart[cell + 1]; entry++) {
        const after = changes.get(ledger.zone[entry]);
        if (after !== undefined) added += layerShare[ledger.layer[entry]] * (after - dose[ledger.zone[entry]]);
      }
      return [cell, added];
    });
}

/** Compensated sums by keys that are met on the way. */
class KeyedSums {
  readonly #sums = new Map<number, BalancedSums>();

  add(key: number, value: number): void {
    let sum = this.#sums.get(key);
    if (!sum) {
      sum = new BalancedSums(1);
      this.#sums.set(key, sum);
    }
    sum.add(0, value);
  }

  values(): ReadonlyMap<number, number> {
    return new Map([...this.#sums].map(([key, sum]) => [key, sum.at(0)]));
  }
}
