/** The ground within a distance of a feature: what is to be kept clear about water. */
import { widenLine } from '../line/widen-line.ts';
import { offsetRegion } from '../offset/offset-region.ts';
import type { LocalPlane } from '../plane/local-plane.ts';
import type { LonLatGeometry, Region } from '../ring.ts';
import { chainsOf } from './chains-of.ts';

/**
 * Regions that together hold every point of the plane within `distanceM` of the feature; arcs as polylines, never short by more
 * than `chordM`. Nothing for no geometry or a distance of 0 or less.
 * @example groundWithin({ kind: 'point', points: Float64Array.of(-80.2, 25.77) }, 5, plane, 0.05) // one disc, radius 5 m
 */
export function groundWithin(
  geometry: LonLatGeometry,
  distanceM: number,
  { forward }: Pick<LocalPlane, 'forward'>,
  chordM: number,
): readonly Region[] {
  if (!(distanceM > 0)) return [];
  if (geometry.kind === 'area') {
    const region = geometry.polygons.flatMap((rings) => rings.map(forward));
    return [offsetRegion(region, distanceM, chordM)];
  }
  return chainsOf(geometry, forward).map((chain) => widenLine(chain, 2 * distanceM, { chordToleranceM: chordM }));
}
