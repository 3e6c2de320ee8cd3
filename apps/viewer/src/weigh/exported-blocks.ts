/**
 * The ranking as files: the blocks that are shown, in their order, under the weights in force, in the columns of the file
 * `blocks.geojson` that `crownfall reckon` writes.
 */
import { geometryFromJson, geopackageFile, share, writeCsv } from '@crownfall/exchange';
import type { BlockSummary } from '../project/project.ts';

/** `outlines`: the blocks layer, whose figures are those of the run; rank and score are the screen's. */
export function blocksGeoJson(outlines: GeoJSON.FeatureCollection, shown: readonly BlockSummary[]): string {
  const features = exportedFeatures(outlines, shown);
  return `{"type":"FeatureCollection","features":[\n${features.map((each) => JSON.stringify(each)).join(',\n')}\n]}\n`;
}

/** The same without outlines; the parts of the score in columns of their own. Areas in m², shares 0–1. */
export function blocksCsv(outlines: GeoJSON.FeatureCollection, shown: readonly BlockSummary[]): string {
  const records = exportedFeatures(outlines, shown).map(flatColumns);
  return [...writeCsv(Object.keys(records[0] ?? {}), records)].join('');
}

/** The columns of the table with the outlines, as the layer `blocks` of a GeoPackage file. `madeAt`: ISO instant. */
export function blocksGeopackage(
  outlines: GeoJSON.FeatureCollection,
  shown: readonly BlockSummary[],
  madeAt: string,
): Uint8Array {
  const ignored = { unclosed: () => {}, collectionMixed: () => {} };
  const features = exportedFeatures(outlines, shown).map((feature) => ({
    geometry: geometryFromJson(feature.geometry, ignored),
    properties: flatColumns(feature),
  }));
  const description = 'Blocks in rank order, as seen: areas in square metres, shares from 0 to 1';
  return geopackageFile({ name: 'blocks', description, features, madeAt });
}

/** The parts of the score in columns of their own. */
function flatColumns({ properties }: GeoJSON.Feature): Record<string, unknown> {
  const { score_parts, ...columns } = properties ?? {};
  const parts = Object.entries(score_parts as Record<string, Record<string, number>>).flatMap(([name, part]) =>
    (['amount', 'weight', 'points'] as const).map((figure) => [`${name}_${figure}`, part[figure]]),
  );
  return { ...columns, ...Object.fromEntries(parts) };
}

function exportedFeatures(outlines: GeoJSON.FeatureCollection, shown: readonly BlockSummary[]): GeoJSON.Feature[] {
  const byId = new Map(outlines.features.map((feature) => [feature.properties?.block_id, feature]));
  return shown.flatMap(({ blockId, rank, score, scoreParts }) => {
    const feature = byId.get(blockId);
    if (!feature) return [];
    const parts = scoreParts.map(({ criterion, amount, value, weight, points }) => [
      criterion,
      { amount: share(amount), value: share(value), weight: share(weight), points: share(points) },
    ]);
    const ranked = { rank, score: share(score), score_parts: Object.fromEntries(parts) };
    // Known columns keep their places.
    return [{ type: 'Feature', properties: { ...feature.properties, ...ranked }, geometry: feature.geometry }];
  });
}
