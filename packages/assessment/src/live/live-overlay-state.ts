/**
 * The overlay of a project that is being edited. Each tree keeps a slot of its own in the live overlay for good, so that a
 * crown can go and come back; the ledger that the stages read numbers only the crowns that stand.
 */
import { type FalloutZone, falloutZone, LiveOverlay, type OverlayLedger } from '@crownfall/geometry';
import type { Settings, Tree } from '@crownfall/survey';
import { type PlacedCrown, placeCrowns } from '../ground/place-crowns.ts';
import type { PlacedGround } from '../ground/reckon-geometry.ts';
import { overlayInput } from '../ground/reckon-geometry.ts';
import { noProgress } from '../progress.ts';

export class LiveOverlayState {
  readonly overlay: LiveOverlay;
  /** The standing crowns by slot; null where a crown is gone. */
  readonly crowns: (PlacedCrown | null)[];
  readonly #slotOf = new Map<string, number>();
  readonly #placed: PlacedGround;
  readonly #settings: Settings;
  #shown: number | null = null;

  constructor(placed: PlacedGround, settings: Settings) {
    this.#placed = placed;
    this.#settings = settings;
    this.overlay = new LiveOverlay(overlayInput(placed, settings));
    this.crowns = [...placed.crowns];
    placed.crowns.forEach((crown, slot) => void this.#slotOf.set(crown.tree.treeId, slot));
  }

  /** The slot of a tree: its own, or the next free one for a tree without. */
  slotOf(treeId: string): number {
    return this.#slotOf.get(treeId) ?? this.crowns.length;
  }

  /** A tree's crown in the plane, or null when it has no usable outline. */
  place(tree: Tree): PlacedCrown | null {
    return placeCrowns([tree], this.#placed.plane, this.#settings, noProgress).crowns[0] ?? null;
  }

  /** Shows a crown that is not kept yet; answers the pieces whose cells may have changed. */
  show(slot: number, crown: PlacedCrown | null): number[] {
    if (this.#shown !== slot) this.revert();
    this.#shown = slot;
    return this.overlay.setZone(slot, crown && this.#zone(crown));
  }

  /** Takes back what was shown and not kept. */
  revert(): void {
    const slot = this.#shown;
    this.#shown = null;
    if (slot === null) return;
    const kept = this.crowns[slot] ?? null;
    this.overlay.setZone(slot, kept && this.#zone(kept));
  }

  /** Keeps a crown in its tree's slot; null takes the crown away. */
  keep(treeId: string, crown: PlacedCrown | null): void {
    this.revert();
    const slot = this.slotOf(treeId);
    if (slot === this.crowns.length && crown === null) return;
    this.#slotOf.set(treeId, slot);
    this.crowns[slot] = crown;
    this.overlay.setZone(slot, crown && this.#zone(crown));
  }

  /** The ledger with zones numbered among the standing crowns, and these crowns in that order. */
  standing(): { readonly ledger: OverlayLedger; readonly crowns: PlacedCrown[] } {
    const number = new Int32Array(this.crowns.length);
    const crowns: PlacedCrown[] = [];
    this.crowns.forEach((crown, slot) => {
      number[slot] = crowns.length;
      if (crown) crowns.push(crown);
    });
    const ledger = this.overlay.ledger();
    return { ledger: { ...ledger, zone: ledger.zone.map((slot) => number[slot]) }, crowns };
  }

  #zone({ outline }: PlacedCrown): FalloutZone {
    const { drift_rings, chord_tolerance_m, wind } = this.#settings;
    return falloutZone(outline, drift_rings, chord_tolerance_m, wind);
  }
}
