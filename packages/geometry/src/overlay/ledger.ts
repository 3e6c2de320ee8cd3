/**
 * The overlay ledger: every square metre of pavement, once, by the piece and the block it belongs to and by the fallout
 * zones that cover it. Union areas, stained area, attribution, what-ifs and random draws are all weighted sums over it.
 */
import type { Region } from '../ring.ts';

/** The fallout zone of one tree: nested layers, `layers[0]` the drip line, then one for each drift ring, outwards. */
export interface FalloutZone {
  readonly layers: readonly Region[];
}

/**
 * Fallout zones made when they are needed, so that a city's drift rings are never all in memory. `layers(i)` may be called
 * more than once for a zone and must give the same coordinates each time.
 */
export interface ZoneSource {
  readonly count: number;
  /** A box that holds all layers of zone `i`; it may be generous. */
  readonly box: (i: number) => Box;
  readonly layers: (i: number) => readonly Region[];
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export interface OverlayInput {
  readonly zones: readonly FalloutZone[] | ZoneSource;
  /** Pavement pieces. Where two overlap, the shared part belongs to the one listed first. */
  readonly pieces: readonly Region[];
  /** Blocks. Where two overlap, the shared part belongs to the one listed first. */
  readonly blocks: readonly Region[];
}

/**
 * Cells in compressed rows. Cell `i` is the part of pavement piece `piece[i]` that lies in block `block[i]` and is covered
 * by exactly the zones `zone[coverStart[i]] … zone[coverStart[i + 1] - 1]` (ascending), each at its innermost layer
 * `layer[…]` (0 = under the crown, 1 = first drift ring, …). Its area is `areaM2[i]`.
 *
 * Uncovered pavement is there too, as cells with an empty cover. Cells are ordered by piece, then block, then cover; no
 * two have the same key. Areas sum to the union of all pieces.
 */
export interface OverlayLedger {
  readonly cellCount: number;
  readonly piece: Int32Array;
  /** −1: outside every block. */
  readonly block: Int32Array;
  readonly areaM2: Float64Array;
  /** Length `cellCount + 1`. */
  readonly coverStart: Int32Array;
  readonly zone: Int32Array;
  readonly layer: Uint8Array;
}
