/** Tells a map source what changed instead of handing it everything again. */
import type { GeoJSONSource, GeoJSONSourceDiff } from 'maplibre-gl';

/** More changes than this are quicker handed over whole. */
const CHANGES_MOST = 2000;

/** Features are told apart by `idField` and compared by identity. */
export function updateSource(
  source: GeoJSONSource | undefined,
  idField: string,
  before: GeoJSON.FeatureCollection,
  after: GeoJSON.FeatureCollection,
): void {
  if (!source || before === after) return;
  const known = new Map(before.features.map((feature) => [idOf(feature, idField), feature]));
  const add = after.features.filter((feature) => known.get(idOf(feature, idField)) !== feature);
  const left = new Set(after.features.map((feature) => idOf(feature, idField)));
  const remove = [...known.keys()].filter((id) => !left.has(id));
  if (add.length + remove.length > CHANGES_MOST) return void source.setData(after);
  // Adding a feature of a known id replaces it.
  const diff: GeoJSONSourceDiff = { add, remove };
  if (add.length + remove.length > 0) void source.updateData(diff);
}

function idOf(feature: GeoJSON.Feature, idField: string): string {
  return String(feature.properties?.[idField]);
}
