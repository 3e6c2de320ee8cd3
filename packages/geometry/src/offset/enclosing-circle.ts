/**
 * The smallest circle around points, built up point by point (Welzl 1991, in the incremental form of de Berg et al., 2008,
 * Computational Geometry, §4.7).
 */
interface Circle {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** Share of the radius by which a point may lie outside and still count as enclosed. */
const SLACK = 1e-12;

/** Radius of the smallest circle that encloses flat points, in their unit; one point gives 0, none NaN. */
export function enclosingRadius(points: Float64Array): number {
  if (points.length < 2) return Number.NaN;
  let circle: Circle = { x: points[0], y: points[1], r: 0 };
  for (let i = 2; i < points.length; i += 2) {
    if (!holds(circle, points, i)) circle = withOnePoint(points, i);
  }
  return circle.r;
}

function withOnePoint(points: Float64Array, i: number): Circle {
  let circle: Circle = { x: points[i], y: points[i + 1], r: 0 };
  for (let j = 0; j < i; j += 2) {
    if (!holds(circle, points, j)) circle = withTwoPoints(points, i, j);
  }
  return circle;
}

function withTwoPoints(points: Float64Array, i: number, j: number): Circle {
  let circle = onDiameter(points, i, j);
  for (let k = 0; k < j; k += 2) {
    if (!holds(circle, points, k)) circle = through(points, i, j, k) ?? circle;
  }
  return circle;
}

function holds(circle: Circle, points: Float64Array, i: number): boolean {
  return Math.hypot(points[i] - circle.x, points[i + 1] - circle.y) <= circle.r * (1 + SLACK);
}

function onDiameter(p: Float64Array, i: number, j: number): Circle {
  return { x: (p[i] + p[j]) / 2, y: (p[i + 1] + p[j + 1]) / 2, r: Math.hypot(p[i] - p[j], p[i + 1] - p[j + 1]) / 2 };
}

/** Nothing for points in a line: the widest pair of them is tried elsewhere. */
function through(p: Float64Array, i: number, j: number, k: number): Circle | undefined {
  const ax = p[j] - p[i];
  const ay = p[j + 1] - p[i + 1];
  const bx = p[k] - p[i];
  const by = p[k + 1] - p[i + 1];
  const twiceCross = 2 * (ax * by - ay * bx);
  if (twiceCross === 0) return undefined;
  const a2 = ax * ax + ay * ay;
  const b2 = bx * bx + by * by;
  const cx = (by * a2 - ay * b2) / twiceCross;
  const cy = (ax * b2 - bx * a2) / twiceCross;
  return { x: p[i] + cx, y: p[i + 1] + cy, r: Math.hypot(cx, cy) };
}
