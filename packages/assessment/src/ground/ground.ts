/** What the geometry stage hands on: everything placed, the overlay reckoned, and no crown outlines in the plane kept. */
import type { Finding, LonLatGeometry, OverlayLedger } from '@crownfall/geometry';
import type { Extra, Pavement, Tree } from '@crownfall/survey';
import type { RegionLookup } from '../region-lookup.ts';

/** A tree whose crown has an outline. Its position in `Ground.crowns` is its zone in the ledger. */
export interface GroundCrown {
  readonly tree: Tree;
  readonly crownM2: number;
  readonly spreadM: number;
  /** The block in which the trunk stands, −1 outside every block. */
  readonly block: number;
  readonly geometry: LonLatGeometry;
  /** Of its outline in the plane: least x and y, greatest x and y, m. */
  readonly box: readonly [number, number, number, number];
}

/** A piece of pavement with an area. Its position in `Ground.pavement` is its piece in the ledger. */
export interface GroundPavement {
  readonly pavement: Pavement;
  readonly geometry: LonLatGeometry;
}

/** A block, given or derived. Its position in `Ground.blocks` is its block in the ledger. */
export interface GroundBlock {
  readonly blockId: string;
  readonly name: string | null;
  readonly geometry: LonLatGeometry;
  readonly extra: Extra;
}

export const BLOCK_SOURCES = ['given', 'streets', 'cells'] as const;
/** Where the blocks come from: the project's layer, faces of its street network, or square cells. */
export type BlockSource = (typeof BLOCK_SOURCES)[number];

/** What stays as it is while crowns change. */
export interface FixedGround {
  /** proj4 definition of the equal-area plane. */
  readonly plane: string;
  readonly pavement: readonly GroundPavement[];
  readonly blocks: readonly GroundBlock[];
  readonly blocksFrom: BlockSource;
  readonly near: Nearness;
  readonly findings: readonly Finding[];
}

export interface Ground extends FixedGround {
  readonly crowns: readonly GroundCrown[];
  /** By crown: the position of its tree in `survey.trees`. */
  readonly treeIndex: Int32Array;
  readonly ledger: OverlayLedger;
  /** Of the ledger. */
  readonly cellCount: number;
}

/** What it takes to ask which block holds a place, or is nearest to it. */
export interface Nearness {
  readonly blocks: RegionLookup;
  readonly forward: (lonlat: ArrayLike<number>) => Float64Array;
}
