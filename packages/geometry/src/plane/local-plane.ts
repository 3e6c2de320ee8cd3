/**
 * The analysis plane: a local Lambert azimuthal equal-area projection of the WGS 84 ellipsoid, centred on the data.
 * Source: Snyder (1987), Map Projections: A Working Manual, USGS Professional Paper 1395, pp. 187–190 (ellipsoid).
 */

import type { LonLat } from '../crown-shape.ts';
import { type CoordinateSystem, coordinateSystem } from '../crs/coordinate-system.ts';
import type { Coordinates, Ring } from '../ring.ts';

export interface LocalPlane {
  /** PROJ string. */
  readonly definition: string;
  /** Where the plane's (0, 0) lies. */
  readonly centre: LonLat;
  /** Flat longitude, latitude (degrees) → flat x east, y north (metres). Not finite or unreachable: NaN, NaN. */
  forward(lonLat: ArrayLike<number>): Ring;
  /** The way back. */
  inverse(plane: ArrayLike<number>): Coordinates<'lonlat'>;
}

/** About 1 km. Coarse, so that one more tree at the edge seldom moves the plane; areas do not depend on the centre. */
const CENTRE_STEP_DEG = 0.01;

/**
 * The local equal-area plane about a centre, or about the middle of the extent of flat longitude, latitude coordinates.
 *
 * Areas in it are ellipsoidal areas wherever the centre lies (tested against geodesic areas: 1e-8 relative). Lengths are
 * true to 1e-5 within 35 km of the centre and to 2e-5 within 50 km (tested against geodesics). The way there and back
 * gives the same position to 0.1 mm; within 0.6 mm of the centre, the centre. The middle is taken by extent, across the
 * 180th meridian where that is shorter, and rounded to 0.01°, so that the same data in any order give the same plane.
 * Without a finite position the centre is (0, 0). A given centre is used as it is; one off the globe is a RangeError.
 * Example: `equalAreaPlane({ lon: -80.2, lat: 25.77 }).forward([-80.2, 25.78])` → `[0, 1107.845…]`.
 */
export function equalAreaPlane(at: LonLat | ArrayLike<number> | Iterable<ArrayLike<number>>): LocalPlane {
  const centre = isLonLat(at) ? at : middleOf(isFlat(at) ? [at] : at);
  if (!(Math.abs(centre.lat) <= 90) || !Number.isFinite(centre.lon)) {
    throw new RangeError(`plane centre: expected degrees, got lon ${centre.lon}, lat ${centre.lat}`);
  }
  const origin = `+lat_0=${plain(centre.lat)} +lon_0=${plain(centre.lon)}`;
  const definition = `+proj=laea ${origin} +x_0=0 +y_0=0 +ellps=WGS84 +units=m`;
  const name = 'local equal-area plane';
  const crs = coordinateSystem({ code: name, name }, definition, { name: 'WGS 84', reading: 'wgs84' });
  return { definition, centre, forward: crs.fromLonLat, inverse: (plane) => refinedInverse(crs, plane) };
}

/**
 * A projected system as the plane, its coordinates turned into metres: for comparing with figures that were reckoned in, say,
 * EPSG:25833. Areas in it carry the square of that projection's scale (UTM 0.9992 to 1.0008 and more). A geographic
 * system is a RangeError.
 */
export function planeOf(crs: CoordinateSystem): LocalPlane {
  if (crs.kind !== 'projected') throw new RangeError(`plane: expected a projected system, got ${crs.code}`);
  const inverse = (plane: ArrayLike<number>) => crs.toLonLat(scaled(plane, 1 / crs.metresPerUnit));
  const [lon, lat] = inverse([0, 0]);
  return {
    definition: crs.definition,
    centre: { lon, lat },
    forward: (lonLat) => scaled(crs.fromLonLat(lonLat), crs.metresPerUnit),
    inverse,
  };
}

/**
 * proj4's inverse stops its series for the authalic latitude early, up to 2 mm off. That error hardly varies from place to place, so
 * the inverse of the forward of the inverse shows it, and it is taken off: what is left is rounding.
 */
function refinedInverse(crs: CoordinateSystem, plane: ArrayLike<number>): Coordinates<'lonlat'> {
  const lonLat = crs.toLonLat(plane);
  const again = crs.toLonLat(crs.fromLonLat(lonLat));
  for (let i = 0; i < lonLat.length; i++) {
    const error = again[i] - lonLat[i];
    if (Math.abs(error) < 1e-6) lonLat[i] -= error;
  }
  return lonLat;
}

function isLonLat(at: object): at is LonLat {
  return 'lon' in at && 'lat' in at;
}

function isFlat(at: ArrayLike<number> | Iterable<ArrayLike<number>>): at is ArrayLike<number> {
  return ArrayBuffer.isView(at) || (Array.isArray(at) && (at.length === 0 || typeof at[0] === 'number'));
}

function middleOf(parts: Iterable<ArrayLike<number>>): LonLat {
  const lon = emptyRange();
  /** Longitudes counted from 0 to 360, for data on both sides of the 180th meridian. */
  const eastLon = emptyRange();
  const lat = emptyRange();
  for (const part of parts) {
    for (let i = 0; i + 1 < part.length; i += 2) {
      if (!(Math.abs(part[i]) <= 360) || !(Math.abs(part[i + 1]) <= 90)) continue;
      widen(lon, part[i]);
      widen(eastLon, part[i] < 0 ? part[i] + 360 : part[i]);
      widen(lat, part[i + 1]);
    }
  }
  if (lat.min > lat.max) return { lon: 0, lat: 0 };
  const shorter = eastLon.max - eastLon.min < lon.max - lon.min ? eastLon : lon;
  const middle = (shorter.min + shorter.max) / 2;
  return { lon: rounded(middle > 180 ? middle - 360 : middle), lat: rounded((lat.min + lat.max) / 2) };
}

function emptyRange(): { min: number; max: number } {
  return { min: Number.POSITIVE_INFINITY, max: Number.NEGATIVE_INFINITY };
}

function widen(range: { min: number; max: number }, value: number): void {
  if (value < range.min) range.min = value;
  if (value > range.max) range.max = value;
}

function rounded(deg: number): number {
  return Math.round(deg / CENTRE_STEP_DEG) / Math.round(1 / CENTRE_STEP_DEG);
}

/** Without an exponent, which PROJ strings do not carry well. */
function plain(deg: number): string {
  return Math.abs(deg) < 1e-6 ? '0' : String(deg);
}

function scaled(coordinates: ArrayLike<number>, factor: number): Float64Array {
  const out = Float64Array.from(coordinates);
  if (factor !== 1) for (let i = 0; i < out.length; i++) out[i] *= factor;
  return out;
}
