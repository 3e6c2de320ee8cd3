/**
 * The stained share of every cell of the overlay ledger: `c = 1 − exp(−Σ share_layer · d_t)`, the coverage law of randomly
 * falling matter (Boolean model; Chiu, Stoyan, Kendall, Mecke 2013, Stochastic Geometry and its Applications, ch. 3).
 */
import type { OverlayLedger } from '@crownfall/geometry';

/** The overlay ledger with the doses that fall on it. Everything that the stain package reckons follows from these. */
export interface DoseField {
  readonly ledger: OverlayLedger;
  /** Share of the dose that each layer takes: `[1, ring 1, ring 2, …]`. */
  readonly layerShare: ArrayLike<number>;
  /** `d_t` by zone, dimensionless, ≥ 0. */
  readonly dose: Float64Array;
}

/**
 * Stained share of each cell, 0–1, by cell index. Time is linear in the covers. A cell under no zone, or under zones
 * without a dose, has share 0. RangeError when a dose or a layer share is negative or not finite, or when one is missing.
 *
 * Example: one cell under two crowns of dose 0.5 and 0.25 has share 1 − e^−0.75 = 0.5276.
 */
export function stainedShares(field: DoseField): Float64Array {
  checkField(field);
  const { ledger } = field;
  const share = new Float64Array(ledger.cellCount);
  for (let cell = 0; cell < ledger.cellCount; cell++) share[cell] = -Math.expm1(-cellDose(field, cell));
  return share;
}

/** The dose that falls on a cell: the sum over the zones of its cover. */
export function cellDose({ ledger, layerShare, dose }: DoseField, cell: number): number {
  let sum = 0;
  const end = ledger.coverStart[cell + 1];
  for (let entry = ledger.coverStart[cell]; entry < end; entry++) {
    sum += layerShare[ledger.layer[entry]] * dose[ledger.zone[entry]];
  }
  return sum;
}

function checkField({ ledger, ...doses }: DoseField): void {
  checkDoses(doses);
  const { layerShare, dose } = doses;
  for (let entry = 0; entry < ledger.coverStart[ledger.cellCount]; entry++) {
    if (ledger.layer[entry] >= layerShare.length || ledger.zone[entry] >= dose.length) {
      throw new RangeError(
        `the ledger names zone ${ledger.zone[entry]}, layer ${ledger.layer[entry]}; got ${dose.length} doses and ${layerShare.length} layer shares`,
      );
    }
  }
}

export function checkDoses({ layerShare, dose }: Omit<DoseField, 'ledger'>): void {
  for (let zone = 0; zone < dose.length; zone++) checkAmount(dose[zone], `dose of zone ${zone}`);
  for (let layer = 0; layer < layerShare.length; layer++) checkAmount(layerShare[layer], `share of layer ${layer}`);
}

export function checkAmount(value: number, what: string): void {
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`${what}: expected a finite number ≥ 0, got ${value}`);
  }
}
