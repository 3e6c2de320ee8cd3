/** One crown made into two along a cut between two of its points, and two crowns made into one. */
import { cleanRegion, equalAreaPlane, type LonLat, signedArea } from '@crownfall/geometry';
import type { CrownRecord } from '../edits/edit.ts';
import { cutPieces, type Position, recordOf, type Sketch, withoutSizes } from '../outline/sketch.ts';
import { wordsOf } from '../state/derived-state.ts';
import { changeSketch, chooseTree, freeTreeId, treeFeature } from './drawing.ts';
import { makeEdit } from './editing.ts';
import { middleOf } from './middle-of.ts';
import type { Session } from './session.ts';

/** Cuts the sketch between the point chosen before and the one chosen now; the smaller side becomes a tree of its own. */
export async function splitCrown(session: Session): Promise<void> {
  const { store } = session;
  const { sketch } = store.get();
  const pieces = sketch && cutPieces(sketch);
  if (!sketch || !pieces) return;
  const [kept, cut] = pieces.map((vertices) => recordOf({ ...sketch, vertices }));
  if (!kept || !cut) return;
  const newId = freeTreeId(session);
  changeSketch(session, null);
  store.change({ preview: null });
  await makeEdit(session, { kind: 'crown', treeId: sketch.treeId, before: sketch.before, after: kept });
  const after = { ...cut, properties: { ...cut.properties, tree_id: newId } };
  await makeEdit(session, { kind: 'crown', treeId: newId, before: null, after });
  store.change({ notice: wordsOf(store.get()).outline.splitDone(sketch.treeId, newId) });
  await chooseTree(session, newId);
}

/** Notes where the cut begins; null takes it back. */
export function startCut(session: Session, sketch: Sketch, cutFrom: number | null): void {
  changeSketch(session, { ...sketch, cutFrom });
}

/** How many neighbours are offered, and how far off their middle may be. */
const NEIGHBOURS_MOST = 6;
const NEIGHBOURS_WITHIN_DEG = 0.0003;

/** Crowns that stand nearest, nearest first. */
export function neighboursOf(session: Session, treeId: string): readonly string[] {
  const at = middleOf(treeFeature(session, treeId));
  if (!at) return [];
  const shrink = Math.cos((at[1] * Math.PI) / 180);
  const distance = (feature: GeoJSON.Feature): number => {
    const there = middleOf(feature);
    return there ? Math.hypot((there[0] - at[0]) * shrink, there[1] - at[1]) : Infinity;
  };
  return (session.store.get().layers?.trees.features ?? [])
    .map((feature) => ({ id: String(feature.properties?.tree_id), apart: distance(feature) }))
    .filter(({ id, apart }) => id !== treeId && apart < NEIGHBOURS_WITHIN_DEG)
    .sort((a, b) => a.apart - b.apart)
    .slice(0, NEIGHBOURS_MOST)
    .map(({ id }) => id);
}

/** The chosen tree takes over the crown of another, which goes. They must touch or overlap. */
export async function mergeCrown(session: Session, otherId: string): Promise<void> {
  const { store, reckoner } = session;
  const { tree } = store.get();
  const other = await reckoner.ask('tree', otherId);
  if (!tree || !other) return;
  const shapes = [tree.treeId, otherId].map((treeId) => treeFeature(session, treeId)?.geometry);
  const geometry = unionOf(shapes);
  if (!geometry) return store.change({ notice: wordsOf(store.get()).outline.apart(tree.treeId, otherId) });
  const after: CrownRecord = { geometry, properties: withoutSizes(tree.crown.properties) };
  await makeEdit(session, { kind: 'crown', treeId: tree.treeId, before: tree.crown, after });
  await makeEdit(session, { kind: 'crown', treeId: otherId, before: other.crown, after: null });
  store.change({ notice: wordsOf(store.get()).outline.mergeDone(tree.treeId, otherId) });
  await chooseTree(session, tree.treeId);
}

/** One outline round several; null when they lie apart, or one is none. */
function unionOf(shapes: readonly (GeoJSON.Geometry | undefined)[]): GeoJSON.Polygon | null {
  const rings = shapes.flatMap((shape) => (shape?.type === 'Polygon' ? [shape.coordinates[0]] : []));
  if (rings.length < shapes.length) return null;
  const plane = equalAreaPlane(positionOf(rings[0][0]));
  const flat = rings.map((ring) => plane.forward(Float64Array.from(ring.slice(0, -1).flat())));
  const whole = cleanRegion(flat.map((ring) => (signedArea(ring) < 0 ? turned(ring) : ring)));
  const shells = whole.filter((ring) => signedArea(ring) > 0);
  if (shells.length !== 1) return null;
  const holes = whole.filter((ring) => signedArea(ring) <= 0);
  const closed = (ring: Float64Array): Position[] => {
    const lonLat = plane.inverse(ring);
    const open = Array.from({ length: lonLat.length / 2 }, (_, i): Position => [lonLat[2 * i], lonLat[2 * i + 1]]);
    return [...open, open[0]];
  };
  return { type: 'Polygon', coordinates: [shells[0], ...holes].map((ring) => closed(ring).map((at) => [...at])) };
}

const positionOf = ([lon, lat]: GeoJSON.Position): LonLat => ({ lon, lat });

function turned(ring: Float64Array): Float64Array {
  return Float64Array.from({ length: ring.length }, (_, i) => ring[ring.length - 2 - 2 * Math.floor(i / 2) + (i % 2)]);
}
