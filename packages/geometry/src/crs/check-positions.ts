/** Whether numbers can be positions in the coordinate system that a file states, or states not. */
import type { Finding, Place } from '../finding.ts';
import type { CoordinateSystem } from './coordinate-system.ts';

export type PositionFinding = Finding<'crs-missing' | 'lonlat-out-of-range' | 'lonlat-maybe-swapped'>;

/** West, south, east, north in degrees. */
export type LonLatExtent = readonly [west: number, south: number, east: number, north: number];

export interface CheckPositionsOptions {
  /** The system the file states; undefined: none, the numbers are read as longitude, latitude (RFC 7946). */
  readonly crs?: CoordinateSystem;
  /** Where the data ought to lie, from the project's other layers or its imagery. */
  readonly reference?: LonLatExtent;
  readonly where?: Place;
}

/** Farther than this from the reference extent, data is elsewhere: about 200 km. */
const ELSEWHERE_DEG = 2;
/** Files count longitude from −180 or from 0; beyond a full turn it is no longitude. */
const FULL_TURN_DEG = 360;
/** Far more than any projection loses within its reach, or a seven-parameter shift on the way there and back. */
const THERE_AND_BACK_M = 1;

/**
 * Looks at flat positions as they stand in a file and gives at most one finding, with the first vertex it concerns:
 *
 * - `crs-missing`: no system is stated and the numbers are too large for degrees; they are projected.
 * - `lonlat-maybe-swapped`: latitude seems to come first. Most latitudes are beyond 90° and all would be right the other way round; or
 *   all data lies more than 2° outside the reference extent and, swapped, in it. Kept as it is.
 * - `lonlat-out-of-range`: degrees beyond ±90° or ±360°, or numbers outside what the projection can reach.
 *
 * Positions that are not finite are passed over. `facts`: `x`, `y` as they stand, `count`.
 * Example: `checkPositions([25.77, -80.19], { reference: [-80.3, 25.7, -80.1, 25.9] })` → `lonlat-maybe-swapped`.
 */
export function checkPositions(xy: ArrayLike<number>, options: CheckPositionsOptions = {}): PositionFinding[] {
  if (options.crs?.kind === 'projected') return checkProjected(xy, options.crs, options);
  const bad = tally(xy, (x, y) => Math.abs(y) > 90 || Math.abs(x) > FULL_TURN_DEG);
  if (bad.count > 0 && !options.crs && bad.largest > FULL_TURN_DEG)
    return [finding('crs-missing', 'stops', bad, options)];
  if (bad.count > 0 && swappable(xy, bad)) return [finding('lonlat-maybe-swapped', 'kept', bad, options)];
  if (bad.count > 0) return [finding('lonlat-out-of-range', 'left_out', bad, options)];
  return swappedBy(xy, options);
}

function checkProjected(
  xy: ArrayLike<number>,
  crs: CoordinateSystem,
  options: CheckPositionsOptions,
): PositionFinding[] {
  // Beyond its reach an inverse projection may still answer; but then not with a position that projects back.
  const back = crs.fromLonLat(crs.toLonLat(xy));
  const bad = tally(
    xy,
    (x, y, i) => !(Math.hypot(back[i] - x, back[i + 1] - y) * crs.metresPerUnit < THERE_AND_BACK_M),
  );
  return bad.count > 0 ? [finding('lonlat-out-of-range', 'left_out', bad, options)] : [];
}

function swappedBy(xy: ArrayLike<number>, options: CheckPositionsOptions): PositionFinding[] {
  const reference = options.reference;
  if (!reference) return [];
  const all = tally(xy, () => true);
  const here = tally(xy, (x, y) => isNear(reference, x, y)).count;
  const swapped = tally(xy, (x, y) => isNear(reference, y, x)).count;
  const plainly = all.count > 0 && here === 0 && swapped === all.count;
  return plainly ? [finding('lonlat-maybe-swapped', 'kept', all, options)] : [];
}

function isNear([west, south, east, north]: LonLatExtent, lon: number, lat: number): boolean {
  const inLon = lon >= west - ELSEWHERE_DEG && lon <= east + ELSEWHERE_DEG;
  return inLon && lat >= south - ELSEWHERE_DEG && lat <= north + ELSEWHERE_DEG;
}

/** Whether most positions are wrong as they stand, and all would be right the other way round. */
function swappable(xy: ArrayLike<number>, bad: Tally): boolean {
  if (2 * bad.count <= tally(xy, () => true).count) return false;
  return tally(xy, (x, y) => Math.abs(x) > 90 || Math.abs(y) > FULL_TURN_DEG / 2).count === 0;
}

interface Tally {
  readonly count: number;
  /** Position of the first in the array, and the largest number among them. */
  readonly first: number;
  readonly largest: number;
  readonly x: number;
  readonly y: number;
}

function tally(xy: ArrayLike<number>, counts: (x: number, y: number, i: number) => boolean): Tally {
  let count = 0;
  let first = -1;
  let largest = 0;
  for (let i = 0; i + 1 < xy.length; i += 2) {
    if (!Number.isFinite(xy[i]) || !Number.isFinite(xy[i + 1]) || !counts(xy[i], xy[i + 1], i)) continue;
    if (first < 0) first = i;
    count++;
    largest = Math.max(largest, Math.abs(xy[i]), Math.abs(xy[i + 1]));
  }
  return { count, first, largest, x: xy[first], y: xy[first + 1] };
}

function finding(
  code: PositionFinding['code'],
  effect: PositionFinding['effect'],
  found: Tally,
  options: CheckPositionsOptions,
): PositionFinding {
  const where = { ...options.where, vertex: found.first / 2 + 1 };
  const facts = { x: found.x, y: found.y, count: found.count };
  return { code, severity: effect === 'stops' ? 'error' : 'warning', effect, where, facts };
}
