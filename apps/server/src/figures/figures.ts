/** The figures of a project at one moment of its journal, as the bodies that the server sends: made once, held as bytes. */
import type { FeatureSet } from './feature-set.ts';

/** The viewer's map layers. */
export const LAYER_NAMES = ['blocks', 'pavement', 'trees', 'drift'] as const;
export type LayerName = (typeof LAYER_NAMES)[number];

/** The collections that other programs read. */
export const COLLECTION_NAMES = ['crowns', 'pavement', 'blocks'] as const;
export type CollectionName = (typeof COLLECTION_NAMES)[number];

export interface Figures {
  /** Number of the last edit that these figures hold; 0 for a project without a journal. */
  readonly journal: number;
  readonly title: string;
  /** Paths of its pictures, as the project gives them. */
  readonly imagery: readonly string[];
  /** Figures, score parts and findings as JSON, without outlines. */
  readonly assessment: Uint8Array;
  readonly layers: Readonly<Record<LayerName, Uint8Array>>;
  readonly collections: Readonly<Record<CollectionName, FeatureSet>>;
  /** West, south, east, north in degrees; null when nothing has a place. */
  readonly bounds: readonly [number, number, number, number] | null;
}
