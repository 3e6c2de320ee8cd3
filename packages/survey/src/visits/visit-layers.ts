/** Visits as rows of the layers, so that what was rated, measured and seen in the field counts like any other record. */
import type { Finding } from '@crownfall/geometry';
import { finding } from '../findings/finding-codes.ts';
import type { LayerName, ProjectInput, RawFeature, RawLayer } from '../project-input.ts';
import type { KnownIds } from '../reading/known-ids.ts';
import { type Visit, type VisitFinds, visitDay, visitFinds } from './visit.ts';

/** The layers that visits add to. */
const VISIT_LAYERS = ['ratings', 'quadrats', 'bloom'] as const satisfies readonly LayerName[];
type VisitLayer = (typeof VISIT_LAYERS)[number];

/** How the rows' file is called in findings. */
const FILE = 'visits';

/**
 * Rows of every visit, by layer; absent for a layer without any. Tree, block, day and person come from the visit unless
 * the row gives them; each row carries `visit_id`, its source. A visit whose id a row of the project's own layer bears was
 * taken over by hand: its rows there count, these do not.
 * @example visitLayers([visit], {}).ratings.features[0].properties.visit_id // 'b5d0…'
 */
export function visitLayers(
  visits: readonly Visit[],
  own: ProjectInput['layers'],
): Partial<Readonly<Record<VisitLayer, RawLayer>>> {
  const layers: Partial<Record<VisitLayer, RawLayer>> = {};
  for (const layer of VISIT_LAYERS) {
    const taken = new Set(own[layer]?.features.map(({ properties }) => properties.visit_id));
    const features = visits.flatMap((visit, at) =>
      taken.has(visit.visitId) ? [] : visitFinds(visit)[layer].map((given) => rowOf(layer, visit, given, at + 1)),
    );
    if (features.length > 0) layers[layer] = { file: FILE, shape: 'features', crs: 'OGC:CRS84', features };
  }
  return layers;
}

/** What visits say of the crowns themselves; a person decides, nothing is changed. */
export function visitFindings(visits: readonly Visit[], trees: KnownIds): Finding[] {
  return visits.flatMap((visit): Finding[] => {
    const finds = visitFinds(visit);
    const facts = { by: visit.visitor, on: visitDay(visit) };
    const where = { layer: 'crowns', file: FILE, feature: visit.treeId ?? visit.visitId };
    const known = visit.treeId !== undefined && trees.has(visit.treeId);
    return [
      ...(finds.notFound && known ? [finding('visit-tree-not-found', 'warning/kept', where, facts)] : []),
      ...(finds.wrongSpecies !== null && known
        ? [finding('visit-other-host', 'warning/kept', where, { ...facts, got: finds.wrongSpecies })]
        : []),
      ...(isNew(finds, trees) ? [finding('visit-new-tree', 'warning/left_out', where, facts)] : []),
    ];
  });
}

/** A new tree stays one until a crown of its name is in the project. */
function isNew({ newTree }: VisitFinds, trees: KnownIds): boolean {
  return newTree !== null && !(typeof newTree.tree_id === 'string' && trees.has(newTree.tree_id));
}

function rowOf(layer: VisitLayer, visit: Visit, given: Readonly<Record<string, unknown>>, row: number): RawFeature {
  const { treeId, blockId, visitor, visitId } = visit;
  const day = visitDay(visit);
  const place = treeId === undefined ? { block_id: blockId } : { tree_id: treeId };
  const from = {
    ratings: { tree_id: treeId, rated_on: day, rater: visitor },
    quadrats: { measured_on: day, by: visitor },
    bloom: { ...(given.tree_id === undefined && given.block_id === undefined ? place : {}), observed_on: day },
  }[layer];
  return { row, geometry: { kind: 'none' }, properties: { ...from, ...given, visit_id: visitId } };
}
