/**
 * Rings and regions: the one shape of coordinates in Crownfall.
 *
 * A ring is flat and open, `[x0, y0, x1, y1, …]`, the first vertex not repeated. A region is a list of rings read by the
 * non-zero winding rule: shells counter-clockwise (y up), holes clockwise. Several polygons are one region.
 */
declare const frame: unique symbol;

/** `plane`: metres in a local equal-area plane. `lonlat`: WGS 84 degrees, longitude first. */
export type Frame = 'plane' | 'lonlat';

export type Coordinates<F extends Frame> = Float64Array & { readonly [frame]?: F };

export type Ring = Coordinates<'plane'>;
export type Region = readonly Ring[];

/** A feature's geometry in longitude and latitude, rings open. `none` stands for an empty or null geometry. */
export type LonLatGeometry =
  | { readonly kind: 'none' }
  | { readonly kind: 'point'; readonly points: Coordinates<'lonlat'> }
  | { readonly kind: 'line'; readonly lines: readonly Coordinates<'lonlat'>[] }
  | { readonly kind: 'area'; readonly polygons: readonly (readonly Coordinates<'lonlat'>[])[] };

/**
 * Signed area of a ring, m² when the ring is in metres; positive counter-clockwise. `A = ½ Σ cross`, taken about the
 * first vertex so that coordinates far from the origin lose no digits. Fewer than three vertices give 0.
 */
export function signedArea(ring: Float64Array): number {
  const x0 = ring[0];
  const y0 = ring[1];
  let twice = 0;
  for (let i = 2; i + 3 < ring.length; i += 2) {
    twice += (ring[i] - x0) * (ring[i + 3] - y0) - (ring[i + 2] - x0) * (ring[i + 1] - y0);
  }
  return twice / 2;
}

/** The ring in opposite order, as a new array. */
export function reversed(ring: Ring): Ring {
  const out = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    out[i] = ring[ring.length - 2 - i];
    out[i + 1] = ring[ring.length - 1 - i];
  }
  return out;
}
