/** Crowns about a point: those that could compete for the leaves of one that is proposed there. */
import type { Position } from './sketch.ts';

export interface NearCrown {
  readonly treeId: string;
  /** Outer rings, flat and open, degrees. */
  readonly shells: readonly (readonly number[])[];
  /** Whether the point lies in it. */
  readonly holds: boolean;
}

/** No crown of which anything lies in a window of 30 m about the point has its first vertex farther off than this. */
const FAR_M = 60;
const METRES_PER_DEGREE = 111_000;

/** In the order given. Features without an outline are passed over. */
export function crownsNear(features: readonly GeoJSON.Feature[], at: Position): readonly NearCrown[] {
  const lat = FAR_M / METRES_PER_DEGREE;
  const lon = lat / Math.max(0.01, Math.cos((at[1] * Math.PI) / 180));
  return features.flatMap((feature) => {
    const shells = shellsOf(feature.geometry);
    const first = shells[0];
    if (!first || Math.abs(first[0] - at[0]) > lon || Math.abs(first[1] - at[1]) > lat) return [];
    const holds = shells.some((shell) => isInside(shell, at));
    return [{ treeId: String(feature.properties?.tree_id), shells, holds }];
  });
}

/** All rings of an outline, holes included, flat and open. */
export function ringsOf(geometry: GeoJSON.Geometry | null | undefined): readonly (readonly number[])[] {
  return polygonsOf(geometry).flat().map(flat);
}

const shellsOf = (geometry: GeoJSON.Geometry | null): readonly (readonly number[])[] =>
  polygonsOf(geometry).map(([shell]) => flat(shell));

function polygonsOf(geometry: GeoJSON.Geometry | null | undefined): readonly (readonly GeoJSON.Position[][])[] {
  if (geometry?.type === 'Polygon') return [geometry.coordinates];
  return geometry?.type === 'MultiPolygon' ? geometry.coordinates : [];
}

const flat = (ring: readonly GeoJSON.Position[]): number[] => ring.slice(0, -1).flatMap((at) => at.slice(0, 2));

/** Even–odd. */
function isInside(ring: readonly number[], [x, y]: Position): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const above = ring[i + 1] > y;
    if (above === ring[j + 1] > y) continue;
    if (x < ((ring[j] - ring[i]) * (y - ring[i + 1])) / (ring[j + 1] - ring[i + 1]) + ring[i]) inside = !inside;
  }
  return inside;
}
