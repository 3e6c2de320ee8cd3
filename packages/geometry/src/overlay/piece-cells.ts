/** From areas by cover state to the cells of one pavement piece. */
import type { CoverStates } from './cover-states.ts';
import { BLOCK, EXCLUSION, type Layer, MASK } from './neighbourhood.ts';

/**
 * Cells smaller than this are rounding along shared edges and are dropped, m². Far below a square millimetre, and far above
 * the rounding of a sum of edge integrals over a city block (about 1e-12 m²).
 */
const NOTHING_M2 = 1e-10;

/** The cells of one piece, as in the ledger: by block, then by cover. */
export interface PieceCells {
  readonly block: readonly number[];
  readonly areaM2: readonly number[];
  /** One longer than `block`. */
  readonly coverStart: readonly number[];
  readonly zone: readonly number[];
  readonly layer: readonly number[];
}

export const NO_CELLS: PieceCells = { block: [], areaM2: [], coverStart: [0], zone: [], layer: [] };

/** Gathers states that stand for the same cell. `areas` is indexed by state. */
export function cellsOfPiece(layers: readonly Layer[], states: CoverStates, areas: Float64Array): PieceCells {
  const cells = new Map<string, Cell>();
  for (let state = 0; state < areas.length; state++) {
    if (areas[state] !== 0) {
      collect(cells, layers, states.layersOf(state), areas[state]);
    }
  }
  const kept = [...cells.values()].filter((cell) => cell.areaM2 > NOTHING_M2).sort(byBlockThenCover);
  const coverStart = [0];
  for (const cell of kept) {
    coverStart.push(coverStart[coverStart.length - 1] + cell.zones.length);
  }
  return {
    block: kept.map((cell) => cell.block),
    areaM2: kept.map((cell) => cell.areaM2),
    coverStart,
    zone: kept.flatMap((cell) => cell.zones),
    layer: kept.flatMap((cell) => cell.rings),
  };
}

interface Cell {
  readonly block: number;
  readonly zones: readonly number[];
  readonly rings: readonly number[];
  areaM2: number;
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
