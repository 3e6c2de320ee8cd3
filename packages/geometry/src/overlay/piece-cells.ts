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
  readonly block: Int32Array;
  readonly areaM2: Float64Array;
  /** One longer than `block`. */
  readonly coverStart: Int32Array;
  readonly zone: Int32Array;
  readonly layer: Uint8Array;
}

export const NO_CELLS: PieceCells = {
  block: new Int32Array(0),
  areaM2: new Float64Array(0),
  coverStart: new Int32Array(1),
  zone: new Int32Array(0),
  layer: new Uint8Array(0),
};

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
  const coverStart = new Int32Array(cells.length + 1);
  cells.forEach(({ zones }, i) => {
    coverStart[i + 1] = coverStart[i] + zones.length;
  });
  const zone = new Int32Array(coverStart[cells.length]);
  const layer = new Uint8Array(zone.length);
  cells.forEach(({ zones, rings }, i) => {
    zone.set(zones, coverStart[i]);
    layer.set(rings, coverStart[i]);
  });
  return {
    block: Int32Array.from(cells, ({ block }) => block),
    areaM2: Float64Array.from(cells, ({ areaM2 }) => areaM2),
    coverStart,
    zone,
    layer,
  };
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
