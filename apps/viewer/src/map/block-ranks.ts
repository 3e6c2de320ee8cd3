/** Blocks and their labels as the map draws them: outline, rank, whether the filters leave them. */
import type { BlockSummary } from '../project/project.ts';
import { blockLabels } from './block-labels.ts';

export interface BlockMarks {
  readonly blocks: GeoJSON.FeatureCollection;
  readonly labels: GeoJSON.FeatureCollection;
}

/** `outlines`: the blocks layer; `shown`: ids that the filters leave. */
export function blockMarks(
  outlines: GeoJSON.FeatureCollection,
  ranked: readonly BlockSummary[],
  shown: ReadonlySet<string>,
): BlockMarks {
  const rankOf = new Map(ranked.map(({ blockId, rank }) => [blockId, rank]));
  const features = outlines.features.map((feature) => {
    const block_id = String(feature.properties?.block_id);
    const properties = { block_id, rank: rankOf.get(block_id) ?? 0, shown: shown.has(block_id) };
    return { ...feature, properties };
  });
  const blocks: GeoJSON.FeatureCollection = { type: 'FeatureCollection', features };
  return { blocks, labels: blockLabels(blocks) };
}
