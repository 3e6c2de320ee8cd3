/** The ground of a project that is being edited: pavement and blocks once and for all, crowns as they stand. */
import { ledgerOf, type OverlayLedger, type PieceCells } from '@crownfall/geometry';
import type { Tree } from '@crownfall/survey';
import type { FixedGround, Ground, GroundCrown } from '../ground/ground.ts';
import type { PlacedCrown } from '../ground/place-crowns.ts';
import { fixedGround, groundCrown, type PlacedGround } from '../ground/reckon-geometry.ts';
import { once } from '../once.ts';
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
    const zoneOf = new Int32Array(placed.length).fill(-1);
    const slotOf = new Int32Array(placed.length);
    const crowns: GroundCrown[] = [];
    placed.forEach((crown, slot) => {
      if (crown === null) return;
      zoneOf[slot] = crowns.length;
      slotOf[crowns.length] = slot;
      crowns.push(this.#crown(slot, crown));
    });
    const trees = this.#state.trees();
    const cells = overlay.allCells();
    // Large, and read by plans and draws alone.
    const ledger = once(() => numbered(ledgerOf(cells), zoneOf, this.blockOf));
    const ground: Ground = {
      ...this.fixed,
      crowns,
      treeIndex: positionsOf(crowns, trees),
      cellCount: cells.reduce((sum, { block }) => sum + block.length, 0),
      get ledger() {
        return ledger();
      },
    };
    return { ground, trees, slotOf: slotOf.subarray(0, crowns.length), zoneOf };
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
  const positions = new Int32Array(crowns.length);
  let index = -1;
  crowns.forEach(({ tree }, zone) => {
    do index++;
    while (trees[index].treeId !== tree.treeId);
    positions[zone] = index;
  });
  return positions;
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
