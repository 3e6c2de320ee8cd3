/**
 * The neighbourhood of one pavement piece: the parts of all chains that can matter inside it, and what each layer means.
 *
 * Nothing left, right or above the piece's box changes the cover of a spot inside it. A chain wholly below the box only
 * shifts winding numbers, so a flat line stands in for it.
 */
import type { ChainStore } from './chains.ts';
import type { Box } from './ledger.ts';

/** What a layer's winding says about a spot. */
export const MASK = 0;
export const EXCLUSION = 1;
export const BLOCK = 2;
export const ZONE = 3;

/** Height of the flat lines that stand in for chains below the box: lower than any region reaches. */
export const FAR_BELOW_M = -1e8;

export interface Layer {
  readonly role: typeof MASK | typeof EXCLUSION | typeof BLOCK | typeof ZONE;
  /** Block or zone number. */
  readonly number: number;
  /** Of a zone: 0 = drip line, then the drift rings. */
  readonly ring: number;
}

/** A run of edges of one chain, cut to the box in x. Vertices are numbers into `ChainStore.xy`. */
export interface Part {
  readonly layer: number;
  readonly sign: number;
  readonly fromX: number;
  readonly toX: number;
  /** First vertex of the first edge; −1 for a flat line below the box. */
  readonly firstVertex: number;
  /** Last vertex of the last edge. */
  readonly lastVertex: number;
}

export class Neighbourhood {
  readonly layers: Layer[] = [];
  readonly parts: Part[] = [];
  minX = 0;
  minY = 0;
  maxX = 0;
  maxY = 0;

  readonly chains: ChainStore;

  constructor(chains: ChainStore) {
    this.chains = chains;
  }

  /** Begins anew with the box of a piece; its own region is to be added first, as the mask. */
  begin(box: Box): void {
    this.layers.length = 0;
    this.parts.length = 0;
    this.minX = box.minX;
    this.minY = box.minY;
    this.maxX = box.maxX;
    this.maxY = box.maxY;
  }

  add(region: number, layer: Layer): void {
    const number = this.layers.push(layer) - 1;
    const { chains } = this;
    for (let chain = chains.regionStart[region]; chain < chains.regionStart[region + 1]; chain++) {
      const fromX = Math.max(chains.firstX(chain), this.minX);
      const toX = Math.min(chains.lastX(chain), this.maxX);
      if (fromX >= toX || (chains.minY[chain] >= this.maxY && layer.role !== MASK)) {
        continue;
      }
      const sign = chains.sign[chain];
      if (chains.maxY[chain] <= this.minY && layer.role !== MASK) {
        this.parts.push({ layer: number, sign, fromX, toX, firstVertex: -1, lastVertex: -1 });
      } else {
        const end = chains.vertexStart[chain + 1];
        const firstVertex = lastAtOrBefore(chains.xy, chains.vertexStart[chain], end, fromX);
        this.parts.push({ layer: number, sign, fromX, toX, firstVertex, lastVertex: end - 1 });
      }
    }
  }
}

/** The last vertex in `from … end − 1` with x ≤ `x`; the first of them is known to qualify. */
function lastAtOrBefore(xy: Float64Array, from: number, end: number, x: number): number {
  let low = from;
  let high = end - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (xy[2 * middle] <= x) {
      low = middle;
    } else {
      high = middle - 1;
    }
  }
  return low;
}
