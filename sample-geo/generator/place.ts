/**
 * Where the invented town lies: open sea some 50 km off Florida's east coast, inside the area of EPSG:2236, on no real
 * place. Its plan is drawn in metres on that grid (x east, y north); files hold longitude and latitude.
 */
import proj4 from 'proj4';
import type { Point } from './town/loop.ts';

/** NAD83 / Florida East (ftUS), EPSG:2236; its grid counts US survey feet. */
const FLORIDA_EAST_FT =
  '+proj=tmerc +lat_0=24.3333333333333 +lon_0=-81 +k=0.999941177 +x_0=200000.0001016 +y_0=0 +ellps=GRS80 +units=us-ft +no_defs';
/** US survey feet in a metre, exactly. */
export const FEET_PER_METRE = 3937 / 1200;
const ORIGIN_FT = { x: 958_000, y: 1_444_000 };

const toLonLat = proj4(FLORIDA_EAST_FT, '+proj=longlat +ellps=GRS80 +no_defs');

export function gridFeet([x, y]: Point): Point {
  return [ORIGIN_FT.x + x * FEET_PER_METRE, ORIGIN_FT.y + y * FEET_PER_METRE];
}

/** Longitude and latitude, to nine decimals (0.1 mm). */
export function lonLat(point: Point): Point {
  const [lon, lat] = toLonLat.forward([...gridFeet(point)]);
  return [rounded(lon), rounded(lat)];
}

function rounded(degrees: number): number {
  return Math.round(degrees * 1e9) / 1e9;
}
