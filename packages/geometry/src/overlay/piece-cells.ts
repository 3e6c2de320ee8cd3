/** From areas by cover state to the cells of one pavement piece. */
import type { CoverStates } from './cover-states.ts';
import { BLOCK, EXCLUSION, type Layer, MASK_LAYER } from './neighbourhood.ts';

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

/**
 * Gathers states that stand for the same cell. `areas` is indexed by state. Relies on the order in which a neighbourhood adds
 * its layers: the mask, then exclusions, blocks, and zones from their innermost layer outwards.
 */
export function cellsOfPiece(layers: readonly Layer[], states: CoverStates, areas: Float64Array): PieceCells {
  const cells: Cell[] = [];
  for (let state = 0; state < areas.length; state++) {
    if (areas[state] !== 0) {
      const cell = cellOf(layers, states, state, areas[state]);
      if (cell) {
        cells.push(cell);
      }
    }
  }
  return rowsOf(merged(cells.sort(byBlockThenCover)));
}

interface Cell {
  readonly block: number;
  readonly zones: readonly number[];
  readonly rings: readonly number[];
  areaM2: number;
}

/** The cell of a state, or null outside the mask and inside an earlier piece. The first of its blocks holds it. */
function cellOf(layers: readonly Layer[], states: CoverStates, state: number, areaM2: number): Cell | null {
  const end = states.coverEnd(state);
  let i = states.coverStart(state);
  if (i === end || states.layerAt(i++) !== MASK_LAYER) {
    return null;
  }
  let block = -1;
  const zones: number[] = [];
  const rings: number[] = [];
  for (; i < end; i++) {
    const layer = layers[states.layerAt(i)];
    if (layer.role === EXCLUSION) {
      return null;
    }
    if (layer.role === BLOCK) {
      block = block < 0 ? layer.number : block;
    } else if (zones[zones.length - 1] !== layer.number) {
      zones.push(layer.number);
      rings.push(layer.ring);
    }
  }
  return { block, zones, rings, areaM2 };
}

/** Sorted cells with equal ones added up and rounding left out. */
function merged(cells: readonly Cell[]): Cell[] {
  const sums: Cell[] = [];
  for (const cell of cells) {
    const last = sums[sums.length - 1];
    if (last && byBlockThenCover(last, cell) === 0) {
      last.areaM2 += cell.areaM2;
    } else {
      sums.push(cell);
    }
  }
  return sums.filter((cell) => cell.areaM2 > NOTHING_M2);
}

function rowsOf(cells: readonly Cell[]): PieceCells {
  const block: number[] = [];
  const areaM2: number[] = [];
  const coverStart = [0];
  const zone: number[] = [];
  const layer: number[] = [];
  for (const cell of cells) {
    block.push(cell.block);
    areaM2.push(cell.areaM2);
    zone.push(...cell.zones);
    layer.push(...cell.rings);
    coverStart.push(zone.length);
  }
  return { block, areaM2, coverStart, zone, layer };
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
