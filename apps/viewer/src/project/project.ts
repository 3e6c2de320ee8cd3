/** A reckoned project as the screen knows it, wherever it was reckoned: by the server or in this browser. */
import type { Assessment, BlockResult } from '@crownfall/assessment';
import type { Finding } from '@crownfall/geometry';
import type { FindingGroup } from '@crownfall/survey';

/** A block's figures without its outline; outlines arrive with the map layers. */
export type BlockSummary = Omit<BlockResult, 'geometry' | 'extra'>;

/** Findings of one kind, in words. */
export interface SpokenGroup extends Pick<Finding, 'code' | 'severity'> {
  /** How many there are; `examples` holds the first ones. */
  readonly findings: number;
  /** What the totals did with them. */
  readonly effect: string;
  readonly examples: readonly { readonly where: string; readonly what: string; readonly remedy: string }[];
}

export interface Project extends Pick<Assessment, 'title' | 'season' | 'units' | 'total' | 'run'> {
  readonly blocks: readonly BlockSummary[];
  /** In the server's words, or as values that can be said in any language and lead to their place. */
  readonly findings: readonly (SpokenGroup | FindingGroup)[];
  readonly trees: number;
  readonly treesRated: number;
  /** West, south, east, north in degrees; null when nothing has a place. */
  readonly bounds: Bounds | null;
}

export type Bounds = readonly [west: number, south: number, east: number, north: number];

export const LAYERS = ['blocks', 'pavement', 'trees', 'drift'] as const;
export type LayerName = (typeof LAYERS)[number];
export type Layers = Readonly<Record<LayerName, GeoJSON.FeatureCollection>>;

export interface Shown {
  readonly project: Project;
  readonly layers: Layers;
}

/** The field that names a feature of each layer. */
export const FEATURE_ID: Readonly<Record<LayerName, string>> = {
  blocks: 'block_id',
  pavement: 'pavement_id',
  trees: 'tree_id',
  drift: 'tree_id',
};
