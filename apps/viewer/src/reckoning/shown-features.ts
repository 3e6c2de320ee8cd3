/** Results as the map's features: the very columns of the files that `crownfall reckon` writes. */
import type { Assessment, TreeResult } from '@crownfall/assessment';
import {
  blockFeature,
  degree,
  geometryToJson,
  type OutFeature,
  pavementFeature,
  treeFeature,
} from '@crownfall/exchange';
import { equalAreaPlane, falloutZone, type LocalPlane } from '@crownfall/geometry';
import { summariseFindings } from '@crownfall/survey';
import type { Bounds, Project } from '../project/project.ts';

type Part = Partial<Pick<Assessment, 'blocks' | 'trees' | 'pavement'>>;

export interface ResultFeatures {
  readonly blocks: readonly GeoJSON.Feature[];
  readonly trees: readonly GeoJSON.Feature[];
  readonly pavement: readonly GeoJSON.Feature[];
}

/** Features of the given results; kinds that are not given stay empty. */
export function resultFeatures({ blocks = [], trees = [], pavement = [] }: Part): ResultFeatures {
  return {
    blocks: blocks.map((block) => shownFeature(blockFeature(block))),
    trees: trees.map((tree) => shownFeature(treeFeature(tree))),
    pavement: pavement.map((piece) => shownFeature(pavementFeature(piece))),
  };
}

function shownFeature({ geometry, properties }: OutFeature): GeoJSON.Feature {
  // A feature without a place is drawn nowhere, but its figures are there.
  const shape = geometryToJson(geometry, degree) as GeoJSON.Geometry | null;
  return { type: 'Feature', properties, geometry: shape as GeoJSON.Geometry };
}

/** Of each kind of finding; the rest are counted. */
const SHOWN_OF_EACH = 50;

export function projectOf(assessment: Assessment, bounds: Bounds | null): Project {
  const { title, season, units, total, run, trees } = assessment;
  return {
    title,
    season,
    units,
    total,
    run,
    trees: trees.length,
    treesRated: trees.filter((tree) => tree.severityFrom === 'rating').length,
    blocks: assessment.blocks.map(({ geometry, extra, ...figures }) => figures),
    findings: summariseFindings(assessment.findings, SHOWN_OF_EACH),
    bounds,
  };
}

/** Edges are drawn a pixel or two wide; a chord this far from its arc is never seen. */
const DRIFT_TOLERANCE_M = 0.05;
/** Beyond this many staining crowns their drift is not drawn for the whole town. */
const DRIFT_CROWNS_MOST = 5000;

/** The outer edge of a staining crown's drift, for the eye. */
export function driftFeatures({ trees, run }: Assessment, wanted: readonly TreeResult[]): GeoJSON.Feature[] {
  if (trees.length > DRIFT_CROWNS_MOST) return [];
  const staining = wanted.filter((tree) => tree.dose > 0 && tree.geometry.kind === 'area');
  if (staining.length === 0) return [];
  const plane = equalAreaPlane(staining[0].at);
  return staining.map((tree) => driftOf(tree, plane, run.settings));
}

function driftOf(tree: TreeResult, plane: LocalPlane, settings: Assessment['run']['settings']): GeoJSON.Feature {
  const rings = tree.geometry.kind === 'area' ? tree.geometry.polygons.flat() : [];
  const region = rings.map((ring) => plane.forward(ring));
  const { layers } = falloutZone(region, settings.drift_rings, DRIFT_TOLERANCE_M, settings.wind);
  const coordinates = layers[layers.length - 1].map((ring) => {
    const lonLat = plane.inverse(ring);
    const line = Array.from({ length: lonLat.length / 2 }, (_, i) => [lonLat[2 * i], lonLat[2 * i + 1]]);
    return [...line, line[0]];
  });
  const properties = { tree_id: tree.treeId, dose: tree.dose };
  return { type: 'Feature', properties, geometry: { type: 'MultiLineString', coordinates } };
}
