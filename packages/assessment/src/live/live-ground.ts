/** The ground of a project that is being edited: pavement and blocks once and for all, crowns as they stand. */
import { ledgerOf, type OverlayLedger, type PieceCells } from '@crownfall/geometry';
import type { Tree } from '@crownfall/survey';
import type { FixedGround, Ground, GroundCrown } from '../ground/ground.ts';
import type { PlacedCrown } from '../ground/place-crowns.ts';
import { fixedGround, groundCrown, type PlacedGround } from '../ground/reckon-geometry.ts';
import type { LiveOverlayState } from './live-overlay-state.ts';

/** The ground as it stands, and how its numbers follow from those of the live overlay. */
export interface Standing {
  readonly ground: Ground;
  /** All trees of the survey, those without an outline too. */
  readonly trees: readonly Tree[];
  /** By zone. */
  readonly slotOf: Int32Array;
  /** By slot; −1 where no crown stands. */
  readonly zoneOf: Int32Array;
}

export class LiveGround {
  readonly fixed: FixedGround;
  /** From the blocks of the live overlay, bare square cells among them, to those of the ground; null: the same. */
  readonly blockOf: Int32Array | null;
  readonly #state: LiveOverlayState;
  /** By slot, with what it was made of. */
  readonly #made: { readonly of: PlacedCrown; readonly crown: GroundCrown }[] = [];

  constructor(placed: PlacedGround, state: LiveOverlayState) {
    const { fixed, blockOf } = fixedGround(placed, blocksOf(state.overlay.allCells()));
    this.fixed = fixed;
    this.blockOf = blockOf;
    this.#state = state;
  }

  standing(): Standing {
    const { crowns: placed, overlay } = this.#state;
    const slotOf = Int32Array.from(placed.keys()).filter((slot) => placed[slot] !== null);
    const zoneOf = new Int32Array(placed.length).fill(-1);
    slotOf.forEach((slot, zone) => {
      zoneOf[slot] = zone;
    });
    const crowns = Array.from(slotOf, (slot) => this.#crown(slot, placed[slot] as PlacedCrown));
    const trees = this.#state.trees();
    const cells = overlay.allCells();
    let ledger: OverlayLedger | null = null;
    // Few ask for the whole ledger, and it is large: it is put together for the first who does.
    const wholeLedger = (): OverlayLedger => {
      ledger ??= numbered(ledgerOf(cells), zoneOf, this.blockOf);
      return ledger;
    };
    const ground: Ground = {
      ...this.fixed,
      crowns,
      treeIndex: positionsOf(crowns, trees),
      cellCount: cells.reduce((sum, { block }) => sum + block.length, 0),
      get ledger() {
        return wholeLedger();
      },
    };
    return { ground, trees, slotOf, zoneOf };
  }

  #crown(slot: number, placed: PlacedCrown): GroundCrown {
    const known = this.#made[slot];
    if (known?.of === placed) return known.crown;
    const crown = groundCrown(placed, this.fixed.near);
    this.#made[slot] = { of: placed, crown };
    return crown;
  }
}

/** Of each crown's tree among the trees, which come in the same order. */
function positionsOf(crowns: readonly GroundCrown[], trees: readonly Tree[]): Int32Array {
  let index = -1;
  return Int32Array.from(crowns, ({ tree }) => {
    do index++;
    while (trees[index].treeId !== tree.treeId);
    return index;
  });
}

function numbered(ledger: OverlayLedger, zoneOf: Int32Array, blockOf: Int32Array | null): OverlayLedger {
  return {
    ...ledger,
    zone: ledger.zone.map((slot) => zoneOf[slot]),
    block: blockOf ? ledger.block.map((block) => (block < 0 ? -1 : blockOf[block])) : ledger.block,
  };
}

function* blocksOf(cells: readonly PieceCells[]): Generator<number> {
  for (const { block } of cells) yield* block;
}
