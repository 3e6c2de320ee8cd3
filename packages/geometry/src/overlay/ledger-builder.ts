/** From areas by cover state to the cells of the ledger. */
import type { CoverStates } from './cover-states.ts';
import type { OverlayLedger } from './ledger.ts';
import { BLOCK, EXCLUSION, type Layer, MASK } from './neighbourhood.ts';

/**
 * Cells smaller than this are rounding along shared edges and are dropped, m². Far below a square millimetre, and far above
 * the rounding of a sum of edge integrals over a city block (about 1e-12 m²).
 */
const NOTHING_M2 = 1e-10;

interface Cell {
  readonly block: number;
  readonly zones: readonly number[];
  readonly rings: readonly number[];
  areaM2: number;
}

export class LedgerBuilder {
  private readonly piece: number[] = [];
  private readonly block: number[] = [];
  private readonly areaM2: number[] = [];
  private readonly coverStart: number[] = [0];
  private readonly zone: number[] = [];
  private readonly layer: number[] = [];

  /** Adds one piece's cells. `areas` is indexed by state and may be shorter than the number of states. */
  addPiece(piece: number, layers: readonly Layer[], states: CoverStates, areas: Float64Array): void {
    const cells = new Map<string, Cell>();
    for (let state = 0; state < areas.length; state++) {
      if (areas[state] !== 0) {
        collect(cells, layers, states.layersOf(state), areas[state]);
      }
    }
    const kept = [...cells.values()].filter((cell) => cell.areaM2 > NOTHING_M2).sort(byBlockThenCover);
    for (const cell of kept) {
      this.piece.push(piece);
      this.block.push(cell.block);
      this.areaM2.push(cell.areaM2);
      for (let i = 0; i < cell.zones.length; i++) {
        this.zone.push(cell.zones[i]);
        this.layer.push(cell.rings[i]);
      }
      this.coverStart.push(this.zone.length);
    }
  }

  finish(): OverlayLedger {
    return {
      cellCount: this.piece.length,
      piece: Int32Array.from(this.piece),
      block: Int32Array.from(this.block),
      areaM2: Float64Array.from(this.areaM2),
      coverStart: Int32Array.from(this.coverStart),
      zone: Int32Array.from(this.zone),
      layer: Uint8Array.from(this.layer),
    };
  }
}

/** Adds a state's area to the cell it belongs to: inside the mask, in no earlier piece, in the first of its blocks. */
function collect(
  cells: Map<string, Cell>,
  layers: readonly Layer[],
  covering: readonly number[],
  areaM2: number,
): void {
  let inMask = false;
  let block = -1;
  const zones: number[] = [];
  const rings: number[] = [];
  for (const number of covering) {
    const layer = layers[number];
    if (layer.role === EXCLUSION) {
      return;
    }
    if (layer.role === MASK) {
      inMask = true;
    } else if (layer.role === BLOCK) {
      block = block < 0 ? layer.number : block;
    } else if (zones[zones.length - 1] !== layer.number) {
      zones.push(layer.number);
      rings.push(layer.ring);
    }
  }
  if (!inMask) {
    return;
  }
  const key = `${block}:${zones.map((zone, i) => `${zone}.${rings[i]}`).join(',')}`;
  const cell = cells.get(key);
  if (cell) {
    cell.areaM2 += areaM2;
  } else {
    cells.set(key, { block, zones, rings, areaM2 });
  }
}

function byBlockThenCover(a: Cell, b: Cell): number {
  if (a.block !== b.block) {
    return a.block - b.block;
  }
  const shared = Math.min(a.zones.length, b.zones.length);
  for (let i = 0; i < shared; i++) {
    const difference = a.zones[i] - b.zones[i] || a.rings[i] - b.rings[i];
    if (difference !== 0) {
      return difference;
    }
  }
  return a.zones.length - b.zones.length;
}
