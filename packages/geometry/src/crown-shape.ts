/**
 * The ways in which a crown's outline is recorded (what a person measured), before it becomes a region.
 * Coordinates are longitude and latitude; lengths are metres on the ground.
 */
import type { Coordinates } from './ring.ts';

export type CrownShape =
  | { readonly from: 'polygon'; readonly polygons: readonly (readonly Coordinates<'lonlat'>[])[] }
  | { readonly from: 'spread'; readonly at: LonLat; readonly spreadM: number }
  | {
      readonly from: 'diameters';
      readonly at: LonLat;
      readonly aM: number;
      readonly bM: number;
      /** Bearing of diameter a, clockwise from north. */
      readonly bearingDeg: number;
    }
  /** Radii at equal steps clockwise from north, measured from the trunk. */
  | { readonly from: 'radii'; readonly at: LonLat; readonly radiiM: readonly number[] };

export interface LonLat {
  readonly lon: number;
  readonly lat: number;
}
