/** Water, drains and wells about the trees of a block that a treatment could be meant for: told and ready to be drawn. */
import {
  chainsOf,
  closedChains,
  equalAreaPlane,
  groundWithin,
  type LocalPlane,
  type LonLatGeometry,
  nearestPair,
  signedArea,
} from '@crownfall/geometry';
import type { WaterFeature } from '@crownfall/survey';
import type { OfferBook } from './offers-of.ts';
import type { NearWater } from './water-distances.ts';

type Kind = WaterFeature['kind'];

/** The shortest way from a crown's edge to the nearest feature of one kind; longitudes and latitudes. */
export interface WaterLine {
  readonly kind: Kind;
  readonly distanceM: number;
  /** null: no distance is stated for this kind. */
  readonly keepOffM: number | null;
  readonly from: readonly [lon: number, lat: number];
  readonly to: readonly [lon: number, lat: number];
}

export interface TreeWater {
  readonly treeId: string;
  /** One for each kind that is mapped. */
  readonly lines: readonly WaterLine[];
}

export interface BlockWater {
  readonly blockId: string;
  /** Trees with a cause found on evidence that treatment acts on, the one that water comes nearest to first. */
  readonly trees: readonly TreeWater[];
  readonly features: readonly { readonly kind: Kind; readonly geometry: LonLatGeometry }[];
  /** Ground within the distance to keep of each feature. */
  readonly keepOff: readonly LonLatGeometry[];
}

/** Beyond the distance to keep, features within this of a crown are shown, m. */
const AROUND_M = 25;
const CHORD_M = 0.1;

/** Empty where no tree of the block could be treated or nothing is mapped. RangeError for an unknown block. */
export function blockWater({ reckoned, scene }: OfferBook, blockId: string): BlockWater {
  const { ground } = reckoned.stages;
  const block = ground.blocks.findIndex((each) => each.blockId === blockId);
  if (block < 0) throw new RangeError(`expected a block of the project, got ${blockId}`);
  const { keep_off_m } = reckoned.settings.plan;
  const zones = scene.treatable[block];
  const [first] = zones;
  if (first === undefined) return { blockId, trees: [], features: [], keepOff: [] };
  const plane = planeAt(ground.crowns[first].geometry);
  const trees = zones.map((zone): TreeWater => {
    const { tree, geometry } = ground.crowns[zone];
    const lines = scene.water.nearest(zone).map((near) => lineTo(near, geometry, plane));
    return {
      treeId: tree.treeId,
      lines: lines.map((line) => ({ ...line, keepOffM: keep_off_m[line.kind] })),
    };
  });
  const farthest = AROUND_M + Math.max(0, ...Object.values(keep_off_m).map((metres) => metres ?? 0));
  const features = [...new Set(zones.flatMap((zone) => scene.water.within(zone, farthest)))];
  return {
    blockId,
    trees: trees.sort((a, b) => room(a) - room(b)),
    features: features.map(({ kind, geometry }) => ({ kind, geometry })),
    keepOff: features.flatMap(({ kind, geometry }) => keptClear(geometry, keep_off_m[kind] ?? 0, plane)),
  };
}

/** What is left of the nearest water's distance when the one to keep is taken off. */
function room({ lines }: TreeWater): number {
  return Math.min(...lines.map(({ distanceM, keepOffM }) => distanceM - (keepOffM ?? 0)));
}

function planeAt(geometry: LonLatGeometry): LocalPlane {
  return equalAreaPlane(geometry.kind === 'area' ? geometry.polygons[0] : []);
}

/** Where they meet, the line has no length. */
function lineTo({ feature, distanceM }: NearWater, crown: LonLatGeometry, plane: LocalPlane) {
  const rings =
    crown.kind === 'area' ? crown.polygons.flatMap((polygon) => polygon.map((ring) => plane.forward(ring))) : [];
  const pair = nearestPair(closedChains(rings), chainsOf(feature.geometry, plane.forward));
  const at = (point: readonly [number, number]): [number, number] => {
    const [lon, lat] = plane.inverse(point);
    return [lon, lat];
  };
  const to = pair === null ? ([Number.NaN, Number.NaN] as const) : at(pair.to);
  const from = pair === null || distanceM === 0 ? to : at(pair.from);
  return { kind: feature.kind, distanceM, from, to };
}

function keptClear(geometry: LonLatGeometry, keepM: number, plane: LocalPlane): LonLatGeometry[] {
  // Holes are shown as kept clear too: too much is on the safe side.
  return groundWithin(geometry, keepM, plane, CHORD_M).map((region) => ({
    kind: 'area',
    polygons: region.filter((ring) => signedArea(ring) > 0).map((ring) => [plane.inverse(ring)]),
  }));
}
