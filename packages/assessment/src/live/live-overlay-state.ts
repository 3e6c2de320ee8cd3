/**
 * The overlay of a project that is being edited. Each tree keeps a slot of its own in the live overlay for good, so that a
 * crown can go and come back; the stages read the crowns that stand, numbered in the order of their slots.
 */
import { type FalloutZone, falloutZone, LiveOverlay, type OverlayLedger } from '@crownfall/geometry';
import type { Settings, Tree } from '@crownfall/survey';
import { type PlacedCrown, placeCrowns } from '../ground/place-crowns.ts';
import type { PlacedGround } from '../ground/reckon-geometry.ts';
import { overlayInput } from '../ground/reckon-geometry.ts';
import { noProgress } from '../progress.ts';

export class LiveOverlayState {
  readonly overlay: LiveOverlay;
  /** The standing crowns by slot; null where a crown is gone or has no usable outline. */
  readonly crowns: (PlacedCrown | null)[];
  /** By slot; null where a tree is gone. */
  readonly #trees: (Tree | null)[];
  /** Trees that never had a usable outline. */
  readonly #outlineless: Map<string, Tree>;
  readonly #slotOf = new Map<string, number>();
  readonly #placed: PlacedGround;
  readonly #settings: Settings;
  #changed = new Set<number>();
  #shown: number | null = null;

  constructor(placed: PlacedGround, settings: Settings, trees: readonly Tree[], ledger?: OverlayLedger) {
    this.#placed = placed;
    this.#settings = settings;
    this.overlay = new LiveOverlay(overlayInput(placed, settings), ledger);
    this.crowns = [...placed.crowns];
    this.#trees = placed.crowns.map(({ tree }) => tree);
    placed.crowns.forEach((crown, slot) => void this.#slotOf.set(crown.tree.treeId, slot));
    const without = trees.filter(({ treeId }) => !this.#slotOf.has(treeId));
    this.#outlineless = new Map(without.map((tree) => [tree.treeId, tree]));
    for (let piece = 0; piece < placed.pieces.regions.length; piece++) this.#changed.add(piece);
  }

  /** All trees: those with a slot in the order of slots, then the others. */
  trees(): Tree[] {
    return [...this.#trees.filter((tree) => tree !== null), ...this.#outlineless.values()];
  }

  tree(treeId: string): Tree | undefined {
    return this.#trees[this.slotOf(treeId)] ?? this.#outlineless.get(treeId);
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
    return this.#setZone(slot, crown);
  }

  /** Takes back what was shown and not kept. */
  revert(): void {
    const slot = this.#shown;
    this.#shown = null;
    if (slot !== null) this.#setZone(slot, this.crowns[slot] ?? null);
  }

  /** Keeps a tree with its crown, in its place or as the last. */
  keep(tree: Tree): void {
    const crown = this.place(tree);
    const slot = this.slotOf(tree.treeId);
    this.revert();
    if (slot === this.crowns.length && crown === null) {
      this.#outlineless.set(tree.treeId, tree);
      return;
    }
    this.#outlineless.delete(tree.treeId);
    this.#slotOf.set(tree.treeId, slot);
    this.#put(slot, tree, crown);
  }

  /** Takes a tree away. */
  drop(treeId: string): void {
    this.revert();
    this.#outlineless.delete(treeId);
    const slot = this.#slotOf.get(treeId);
    if (slot !== undefined) this.#put(slot, null, null);
  }

  /** The pieces whose cells may have changed since this was last asked, ascending; at first all. */
  takeChanged(): Int32Array {
    const changed = Int32Array.from(this.#changed).sort();
    this.#changed = new Set();
    return changed;
  }

  #put(slot: number, tree: Tree | null, crown: PlacedCrown | null): void {
    this.#trees[slot] = tree;
    this.crowns[slot] = crown;
    this.#setZone(slot, crown);
  }

  #setZone(slot: number, crown: PlacedCrown | null): number[] {
    const pieces = this.overlay.setZone(slot, crown && this.#zone(crown));
    for (const piece of pieces) this.#changed.add(piece);
    return pieces;
  }

  #zone({ outline }: PlacedCrown): FalloutZone {
    const { drift_rings, chord_tolerance_m, wind } = this.#settings;
    return falloutZone(outline, drift_rings, chord_tolerance_m, wind);
  }
}
