/** A feature as chains of points in a plane, whatever its kind: what distances are measured to. */
import type { LonLatGeometry, Region } from '../ring.ts';
import type { Chains } from './nearest-pair.ts';

type Forward = (lonLat: Float64Array) => Float64Array;

/** Points as chains of one, lines as they are, outlines closed; nothing for no geometry. */
export function chainsOf(geometry: LonLatGeometry, forward: Forward): Chains {
  if (geometry.kind === 'line') return geometry.lines.map(forward);
  if (geometry.kind === 'area') return closedChains(geometry.polygons.flatMap((rings) => rings.map(forward)));
  if (geometry.kind !== 'point') return [];
  const points = forward(Float64Array.from(geometry.points));
  return Array.from({ length: points.length / 2 }, (_, i) => points.slice(2 * i, 2 * i + 2));
}

/** Rings as chains that end where they begin. */
export function closedChains(region: Region): Chains {
  return region.map((ring) => Float64Array.of(...ring, ring[0], ring[1]));
}
