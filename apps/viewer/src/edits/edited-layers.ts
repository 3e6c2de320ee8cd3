/** The crowns and ratings layers with the person's edits in them: what is reckoned with, and what is exported. */
import type { RawFeature, RawLayer } from '@crownfall/survey';
import type { CrownRecord, RecordEdit } from './edit.ts';
import { fromGeoJson } from './record-geometry.ts';

/** The last word on each edited crown: its record, or null when it was taken away. In the order of first editing. */
export function editedCrowns(edits: readonly RecordEdit[]): ReadonlyMap<string, CrownRecord | null> {
  const crowns = new Map<string, CrownRecord | null>();
  for (const edit of edits) if (edit.kind === 'crown') crowns.set(edit.treeId, edit.after);
  return crowns;
}

/** Crowns changed in their place, taken away, or added last. `idOf` names the features of the base layer. */
export function crownsWith(
  base: RawLayer,
  edits: readonly RecordEdit[],
  idOf: (feature: RawFeature) => string,
): RawLayer {
  const left = new Map(editedCrowns(edits));
  const features = base.features.flatMap((feature) => {
    const id = idOf(feature);
    const record = left.get(id);
    if (record === undefined) return [feature];
    left.delete(id);
    return record === null ? [] : [rawCrown(record, feature.row)];
  });
  let row = base.features.length;
  for (const record of left.values()) if (record) features.push(rawCrown(record, ++row));
  return { ...base, features };
}

export function rawCrown({ geometry, properties }: CrownRecord, row: number): RawFeature {
  return { row, geometry: fromGeoJson(geometry), properties };
}

const NO_RATINGS: RawLayer = { file: 'ratings.csv', shape: 'table', crs: 'OGC:CRS84', features: [] };

/** Ratings with the new ones below. In a store's layer a row's number is its record's. */
export function ratingsWith(base: RawLayer = NO_RATINGS, edits: readonly RecordEdit[]): RawLayer {
  const added = edits.flatMap((edit) => (edit.kind === 'rating' ? [edit.after] : []));
  const gone = new Set(edits.flatMap((edit) => (edit.kind === 'rating-gone' ? [edit.recordId] : [])));
  const last = base.features.at(-1)?.row ?? 1;
  const rows = added.map((properties, i) => ({ row: last + i + 1, geometry: { kind: 'none' as const }, properties }));
  const kept = gone.size === 0 ? base.features : base.features.filter(({ row }) => !gone.has(row));
  return { ...base, features: [...kept, ...rows] };
}
