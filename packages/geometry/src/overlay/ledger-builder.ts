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

/** Cells in the order of arrival, in growing arrays; `finish` puts them in the order of pieces. */
export class LedgerBuilder {
  private readonly firstCell: Int32Array;
  private readonly cellsOfPiece: Int32Array;
  private readonly block: number[] = [];
  private readonly areaM2: number[] = [];
  private readonly coverStart: number[] = [0];
  private readonly zone: number[] = [];
  private readonly layer: number[] = [];

  constructor(pieceCount: number) {
    this.firstCell = new Int32Array(pieceCount);
    this.cellsOfPiece = new Int32Array(pieceCount);
  }

  /** Adds one piece's cells. `areas` is indexed by state and may be shorter than the number of states. */
  addPiece(piece: number, layers: readonly Layer[], states: CoverStates, areas: Float64Array): void {
    const cells = new Map<string, Cell>();
    for (let state = 0; state < areas.length; state++) {
      if (areas[state] !== 0) {
        collect(cells, layers, states.layersOf(state), areas[state]);
      }
    }
    const kept = [...cells.values()].filter((cell) => cell.areaM2 > NOTHING_M2).sort(byBlockThenCover);
    this.firstCell[piece] = this.block.length;
    this.cellsOfPiece[piece] = kept.length;
    for (const cell of kept) {
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
    const cellCount = this.block.length;
    const ledger = {
      cellCount,
      piece: new Int32Array(cellCount),
      block: new Int32Array(cellCount),
      areaM2: new Float64Array(cellCount),
      coverStart: new Int32Array(cellCount + 1),
      zone: new Int32Array(this.zone.length),
      layer: new Uint8Array(this.zone.length),
    };
    let cell = 0;
    let entry = 0;
    for (let piece = 0; piece < this.firstCell.length; piece++) {
      const first = this.firstCell[piece];
      for (let from = first; from < first + this.cellsOfPiece[piece]; from++) {
        ledger.piece[cell] = piece;
        ledger.block[cell] = this.block[from];
        ledger.areaM2[cell] = this.areaM2[from];
        for (let i = this.coverStart[from]; i < this.coverStart[from + 1]; i++) {
          ledger.zone[entry] = this.zone[i];
          ledger.layer[entry++] = this.layer[i];
        }
        ledger.coverStart[++cell] = entry;
      }
    }
    return ledger;
  }
}

/** Adds a state's area to the cell it belongs to: inside the mask, in no earlier piece, in the first of its blocks. */
function collect(cells: Map<string, Cell>, layers: readonly Layer[], covering: Int32Array, areaM2: number): void {
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
