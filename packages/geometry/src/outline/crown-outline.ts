/**
 * From what was measured of a crown to its outline as a region of the plane.
 */
import type { Finding, GeometryFindingCode } from '../finding.ts';
import type { Region, Ring } from '../ring.ts';
import type { PlaneCrownShape } from './plane-crown-shape.ts';
import { radiiRing, radiiRingOfSegments } from './radii-outline.ts';

export interface OutlineOptions {
  /** Greatest distance between a curved outline and its polygon, m. (A) 0.01. */
  readonly chordToleranceM?: number;
  /**
   * When given, curved outlines get exactly this many vertices (at least 3), inscribed and not scaled to the area: the
   * polygons of other programs can so be reproduced. The first vertex of a circle lies east of its centre.
   */
  readonly segments?: number;
}

export interface CrownOutline {
  /** Empty when the shape has no usable size. */
  readonly region: Region;
  readonly findings: readonly Finding<GeometryFindingCode>[];
}

/** Fewest radii that enclose an area. */
const FEWEST_RADII = 3;
/** Fewest vertices of a circle: below that the outline reads as a box on the map. */
const FEWEST_VERTICES = 16;
const DEFAULT_CHORD_TOLERANCE_M = 0.01;

/**
 * The outline of a crown in the plane, m.
 *
 * Circle, ellipse and the smooth curve through n radii become polygons whose deviation from the curve stays within the
 * chord tolerance and which are then scaled to the curve's exact area (πd²/4, πab/4, π/n · Σ r²). Drawn polygons pass
 * through untouched. Vertex count of a circle of radius r: the least multiple of 4, at least 16, for which the scaled
 * polygon holds the tolerance (about π√(r/3t): 40 for r = 4 m, t = 1 cm).
 *
 * Zero, negative or non-finite sizes give an empty region and `outline-zero-size`; a place that is not finite
 * `coordinates-not-finite`; fewer than three radii `outline-radii-too-few`. Single radii may be 0 (trunk on the drip line).
 *
 * @throws RangeError for a tolerance that is not positive or fewer than 3 segments
 * @example crownOutline({ from: 'spread', x: 0, y: 0, spreadM: 8 }).region // one ring of 40 vertices, 50.2655 m²
 */
export function crownOutline(shape: PlaneCrownShape, options: OutlineOptions = {}): CrownOutline {
  const toleranceM = options.chordToleranceM ?? DEFAULT_CHORD_TOLERANCE_M;
  if (!(toleranceM > 0)) throw new RangeError(`expected a chord tolerance above 0 m, got ${toleranceM}`);
  if (options.segments !== undefined && !(Number.isInteger(options.segments) && options.segments >= 3)) {
    throw new RangeError(`expected a whole number of segments from 3 upwards, got ${options.segments}`);
  }
  const problem = sizeFinding(shape);
  if (problem) return { region: [], findings: [problem] };
  return { region: drawn(shape, toleranceM, options.segments), findings: [] };
}

function drawn(shape: PlaneCrownShape, toleranceM: number, segments: number | undefined): Region {
  switch (shape.from) {
    case 'polygon':
      return shape.region;
    case 'spread': {
      const r = shape.spreadM / 2;
      return [ellipseRing({ ...shape, semiA: r, semiB: r, bearingDeg: 90 }, toleranceM, segments)];
    }
    case 'diameters':
      return [ellipseRing({ ...shape, semiA: shape.aM / 2, semiB: shape.bM / 2 }, toleranceM, segments)];
    case 'radii': {
      const outline = { ...shape, firstBearingDeg: shape.firstBearingDeg ?? 0 };
      return [segments === undefined ? radiiRing(outline, toleranceM) : radiiRingOfSegments(outline, segments)];
    }
  }
}

interface Ellipse {
  readonly x: number;
  readonly y: number;
  readonly semiA: number;
  readonly semiB: number;
  readonly bearingDeg: number;
}

/** Vertices at equal parameter steps from the end of semi-axis a: the affine image of a regular polygon. */
function ellipseRing(ellipse: Ellipse, toleranceM: number, segments: number | undefined): Ring {
  const count = segments ?? scaledVertexCount(Math.max(ellipse.semiA, ellipse.semiB), toleranceM);
  const scale = segments === undefined ? areaScale(count) : 1;
  const bearing = (ellipse.bearingDeg * Math.PI) / 180;
  const [ax, ay] = [Math.sin(bearing) * ellipse.semiA * scale, Math.cos(bearing) * ellipse.semiA * scale];
  const [bx, by] = [-Math.cos(bearing) * ellipse.semiB * scale, Math.sin(bearing) * ellipse.semiB * scale];
  const ring = new Float64Array(2 * count);
  for (let k = 0; k < count; k++) {
    const angle = (2 * Math.PI * k) / count;
    ring[2 * k] = ellipse.x + Math.cos(angle) * ax + Math.sin(angle) * bx;
    ring[2 * k + 1] = ellipse.y + Math.cos(angle) * ay + Math.sin(angle) * by;
  }
  return ring;
}

function scaledVertexCount(radiusM: number, toleranceM: number): number {
  const guess = (Math.PI * Math.sqrt(radiusM / (3 * toleranceM))) / 4;
  let count = Math.max(FEWEST_VERTICES, 4 * Math.floor(guess));
  while (radiusM * scaledDeviation(count) > toleranceM) count += 4;
  return count;
}

/** Greatest deviation of the area-true regular polygon from the unit circle: outwards at vertices, inwards at edges. */
function scaledDeviation(count: number): number {
  const scale = areaScale(count);
  return Math.max(scale - 1, 1 - scale * Math.cos(Math.PI / count));
}

/** Factor that gives the inscribed regular polygon the circle's area. */
function areaScale(count: number): number {
  const step = (2 * Math.PI) / count;
  return Math.sqrt(step / Math.sin(step));
}

function sizeFinding(shape: PlaneCrownShape): Finding<GeometryFindingCode> | undefined {
  if (shape.from === 'polygon') return undefined;
  if (!(Number.isFinite(shape.x) && Number.isFinite(shape.y))) return leftOut('coordinates-not-finite', {});
  if (shape.from === 'radii') return radiiFinding(shape.radiiM);
  const sizes = shape.from === 'spread' ? [shape.spreadM] : [shape.aM, shape.bM];
  const bad = sizes.find((size) => !(size > 0 && Number.isFinite(size)));
  if (bad !== undefined) return leftOut('outline-zero-size', { got: bad });
  const bearing = shape.from === 'diameters' ? shape.bearingDeg : 0;
  return Number.isFinite(bearing) ? undefined : leftOut('outline-zero-size', { got: bearing });
}

function radiiFinding(radiiM: readonly number[]): Finding<GeometryFindingCode> | undefined {
  if (radiiM.length < FEWEST_RADII) return leftOut('outline-radii-too-few', { got: radiiM.length });
  const bad = radiiM.find((r) => !(r >= 0 && Number.isFinite(r)));
  if (bad !== undefined) return leftOut('outline-zero-size', { got: bad });
  return radiiM.some((r) => r > 0) ? undefined : leftOut('outline-zero-size', { got: 0 });
}

function leftOut(code: GeometryFindingCode, facts: Finding['facts']): Finding<GeometryFindingCode> {
  return { code, severity: 'warning', effect: 'left_out', where: {}, facts };
}
