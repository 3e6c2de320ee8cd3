/** The outer edges of the fallout zones of staining crowns, for the eye: figures come from the ledger, not from these. */
import type { Assessment, TreeResult } from '@crownfall/assessment';
import { type OutFeature, writeGeoJson } from '@crownfall/exchange';
import { equalAreaPlane, type FalloutZone, falloutZone, type LocalPlane, type Region } from '@crownfall/geometry';

/** Edges are drawn a pixel or two wide; a chord this far from its arc is never seen. */
const CHORD_TOLERANCE_M = 0.05;

/** GeoJSON text with one feature per staining crown: closed lines along the edge of its outermost drift ring. */
export function driftLayer({ trees, run }: Assessment): string {
  const staining = trees.filter((tree) => tree.dose > 0 && tree.geometry.kind === 'area');
  if (staining.length === 0) return [...writeGeoJson([])].join('');
  const plane = equalAreaPlane(staining[0].at);
  const { drift_rings, wind } = run.settings;
  const features = staining.map((tree) =>
    edgeOf(tree, plane, (crown) => falloutZone(crown, drift_rings, CHORD_TOLERANCE_M, wind)),
  );
  return [...writeGeoJson(features)].join('');
}

function edgeOf(tree: TreeResult, plane: LocalPlane, zoneOf: (crown: Region) => FalloutZone): OutFeature {
  const rings = tree.geometry.kind === 'area' ? tree.geometry.polygons.flat() : [];
  const zone = zoneOf(rings.map((ring) => plane.forward(ring)));
  const outermost = zone.layers[zone.layers.length - 1];
  const lines = outermost.map((ring) => plane.inverse(closed(ring)));
  return { geometry: { kind: 'line', lines }, properties: { tree_id: tree.treeId, dose: tree.dose } };
}

function closed(ring: Float64Array): Float64Array {
  const out = new Float64Array(ring.length + 2);
  out.set(ring);
  out.set(ring.subarray(0, 2), ring.length);
  return out;
}
