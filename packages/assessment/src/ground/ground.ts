/** What the geometry stage hands on: everything placed, the overlay reckoned, and no crown outlines in the plane kept. */
import type { Finding, LonLatGeometry, OverlayLedger } from '@crownfall/geometry';
import type { Extra, Pavement, Tree } from '@crownfall/survey';
import type Flatbush from 'flatbush';
import type { RegionLookup } from '../region-lookup.ts';

/** A tree whose crown has an outline. Its position in `Ground.crowns` is its zone in the ledger. */
export interface GroundCrown {
  readonly tree: Tree;
  /** Position in `survey.trees`. */
  readonly treeIndex: number;
  readonly crownM2: number;
  readonly spreadM: number;
  /** The block in which the trunk stands, −1 outside every block. */
  readonly block: number;
  readonly geometry: LonLatGeometry;
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

export interface Ground {
  /** proj4 definition of the equal-area plane. */
  readonly plane: string;
  readonly crowns: readonly GroundCrown[];
  readonly pavement: readonly GroundPavement[];
  readonly blocks: readonly GroundBlock[];
  readonly blocksFrom: BlockSource;
  readonly ledger: OverlayLedger;
  readonly near: Nearness;
  readonly findings: readonly Finding[];
}

/** What it takes to ask which crowns come within a distance of a site, and which block is nearest to a complaint. */
interface Nearness {
  readonly blocks: RegionLookup;
  /** Boxes of the crowns in the plane; null without crowns. */
  readonly crownBoxes: Flatbush | null;
  readonly forward: (lonlat: Float64Array) => Float64Array;
}
