/**
 * A line with a width, as a region.
 */
import { type ArcJoins, checkJoins } from '../offset/arc-joins.ts';
import { offsetRing } from '../offset/offset-ring.ts';
import type { Region, Ring } from '../ring.ts';

export interface WidenOptions {
  /** Greatest distance between an arc and its polyline, m. (A) 0.01. */
  readonly chordToleranceM?: number;
  /** How the two ends are closed: a half circle, or cut square at the last point. (A) round. */
  readonly caps?: 'round' | 'flat';
  /**
   * When given, arcs are chords inside the circle, this many to a quarter turn, whatever the tolerance: the figures of other
   * programs can so be reproduced.
   */
  readonly segmentsPerQuadrant?: number;
}

/** Points closer than this to the one before them are one, m. */
const SAME_POINT_M = 1e-6;
const DEFAULT_CHORD_TOLERANCE_M = 0.01;

/**
 * All points within half of `widthM` of a line, as a region under the non-zero winding rule.
 *
 * The region is the offset curve of the ring there-and-back along the line. Its winding number counts the separate
 * stretches of line within half a width of a point, so lines that cross or run close to themselves, sharp corners and closed
 * lines need no clipping. Round caps: the result lies between the exact set and the exact set of half width plus tolerance.
 * Flat caps: the union of each segment's rectangle and a disc at every inner point. A closed line (first point = last) has
 * no ends: its joint is round.
 *
 * Repeated points and points that are not finite are skipped. A single point gives a disc with round caps, nothing with flat
 * ones; no points give nothing.
 *
 * @param line flat points `[x0, y0, …]`, metres
 * @throws RangeError for a width below 0 or not finite, a tolerance not above 0, segments not a whole number above 0
 * @example widenLine(Float64Array.of(0, 0, 10, 0), 3, { caps: 'flat' }) // one rectangle, 30 m²
 */
export function widenLine(line: Float64Array, widthM: number, options: WidenOptions = {}): Region {
  const joins: ArcJoins =
    options.segmentsPerQuadrant === undefined
      ? { kind: 'tangent', chordToleranceM: options.chordToleranceM ?? DEFAULT_CHORD_TOLERANCE_M }
      : { kind: 'inscribed', segmentsPerQuadrant: options.segmentsPerQuadrant };
  const halfM = widthM / 2;
  checkJoins(joins, halfM);
  const points = distinctPoints(line);
  const isFlat = options.caps === 'flat' && !isClosed(points);
  if (points.length === 0 || halfM === 0 || (isFlat && points.length === 2)) return [];
  return isFlat ? flatEnded(points, halfM, joins) : [rounded(points, halfM, joins)];
}

function distinctPoints(line: Float64Array): Float64Array {
  const kept: number[] = [];
  for (let i = 0; i < line.length; i += 2) {
    const [x, y] = [line[i], line[i + 1]];
    if (!(Number.isFinite(x) && Number.isFinite(y))) continue;
    const last = kept.length - 2;
    if (last >= 0 && Math.hypot(x - kept[last], y - kept[last + 1]) <= SAME_POINT_M) continue;
    kept.push(x, y);
  }
  return Float64Array.from(kept);
}

function isClosed(points: Float64Array): boolean {
  const last = points.length - 2;
  return last >= 4 && points[0] === points[last] && points[1] === points[last + 1];
}

function rounded(points: Float64Array, halfM: number, joins: ArcJoins): Ring {
  const path =
    points.length === 2 ? Float64Array.of(points[0], points[1], points[0] + SAME_POINT_M, points[1]) : points;
  return offsetRing(thereAndBack(path), { distanceM: halfM, joins, trims: true });
}

function thereAndBack(points: Float64Array): Float64Array {
  const ring = new Float64Array(2 * points.length - 4);
  ring.set(points);
  for (let i = points.length; i < ring.length; i += 2) {
    ring[i] = points[2 * points.length - 4 - i];
    ring[i + 1] = points[2 * points.length - 3 - i];
  }
  return ring;
}

/** Rectangles at both ends, and what lies between with round ends: a disc at the first and last inner point. */
function flatEnded(points: Float64Array, halfM: number, joins: ArcJoins): Region {
  const count = points.length / 2;
  const first = rectangle(points, 0, halfM);
  if (count === 2) return [first];
  const inner = points.slice(2, points.length - 2);
  return [first, rounded(inner, halfM, joins), rectangle(points, count - 2, halfM)];
}

function rectangle(p: Float64Array, segment: number, halfM: number): Ring {
  const [x0, y0, x1, y1] = p.subarray(2 * segment, 2 * segment + 4);
  const length = Math.hypot(x1 - x0, y1 - y0);
  const nx = ((y1 - y0) / length) * halfM;
  const ny = (-(x1 - x0) / length) * halfM;
  return Float64Array.of(x0 + nx, y0 + ny, x1 + nx, y1 + ny, x1 - nx, y1 - ny, x0 - nx, y0 - ny);
}
