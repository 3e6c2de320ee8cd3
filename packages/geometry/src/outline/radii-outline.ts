/**
 * The closed smooth outline through n radii.
 *
 * The square of the radius, ρ = r², is interpolated over the bearing by a periodic piecewise cubic with the slopes of
 * Fritsch & Butland 1984 (SIAM J. Sci. Stat. Comput. 5:300–304): between two radii it rises or falls and nothing else, so
 * the outline passes through every radius, never overshoots the larger nor undercuts the smaller of two neighbours, and is
 * never negative. Its area ½∫ρ dθ is π/n · Σ r² exactly, because the slope terms of equal steps cancel around the circle:
 * the published area of the quadratic mean radius.
 */
import type { Ring } from '../ring.ts';
import { crownAreaFromRadii } from './crown-measures.ts';
import { regionArea } from './region-measures.ts';

/** Halvings of the step between two radii at which refinement stops, whatever the tolerance. */
const MOST_STEPS = 512;

export interface RadiiOutline {
  readonly x: number;
  readonly y: number;
  readonly radiiM: readonly number[];
  readonly firstBearingDeg: number;
}

/**
 * The outline as a counter-clockwise ring in which no chord is farther than `chordToleranceM` from the smooth curve, then
 * scaled about the trunk to the curve's exact area. Steps between two radii are equal in bearing.
 */
export function radiiRing(outline: RadiiOutline, chordToleranceM: number): Ring {
  const { radiiM } = outline;
  const curve = squaredRadius(radiiM);
  const fractions: number[] = [];
  for (let i = 0; i < radiiM.length; i++) {
    const steps = stepsBetween(curve, i, radiiM.length, chordToleranceM);
    const barren = radiiM[i] === 0 && radiiM[(i + 1) % radiiM.length] === 0;
    for (let k = 0; k < (barren ? 1 : steps); k++) fractions.push(i + k / steps);
  }
  const ring = traced(outline, fractions, 1);
  const exact = crownAreaFromRadii(radiiM, 'quadratic_mean');
  return traced(outline, fractions, Math.sqrt(exact / regionArea([ring])));
}

/** The outline as `segments` vertices at equal steps of bearing on the smooth curve, not scaled. */
export function radiiRingOfSegments(outline: RadiiOutline, segments: number): Ring {
  const n = outline.radiiM.length;
  return traced(
    outline,
    Array.from({ length: segments }, (_, k) => (k * n) / segments),
    1,
  );
}

/** Radius of the smooth outline at `u` steps clockwise from the first radius (`u` = n is once around). */
export function radiusAt(radiiM: readonly number[], u: number): number {
  return Math.sqrt(squaredRadius(radiiM)(u));
}

function squaredRadius(radiiM: readonly number[]): (u: number) => number {
  const n = radiiM.length;
  const rho = radiiM.map((r) => r * r);
  const rise = rho.map((value, i) => rho[(i + 1) % n] - value);
  const slope = rise.map((ahead, i) => harmonicMean(rise[(i + n - 1) % n], ahead));
  return (u) => {
    const i = Math.min(Math.floor(u), n - 1);
    const j = (i + 1) % n;
    const t = u - i;
    const turn = t * (1 - t) * ((1 - t) * (slope[i] - rise[i]) - t * (slope[j] - rise[i]));
    return Math.max(0, rho[i] + t * rise[i] + turn);
  };
}

/** 0 where the rises differ in sign: the node is an extreme of the outline. */
function harmonicMean(a: number, b: number): number {
  return a * b > 0 ? (2 * a * b) / (a + b) : 0;
}

function stepsBetween(curve: (u: number) => number, i: number, n: number, chordToleranceM: number): number {
  let steps = Math.max(1, Math.ceil(8 / n));
  while (steps < MOST_STEPS && !chordsHold(curve, { i, n, steps, chordToleranceM })) {
    steps = steps < 8 ? steps + 1 : Math.ceil(steps * 1.25);
  }
  return steps;
}

function chordsHold(
  curve: (u: number) => number,
  at: { i: number; n: number; steps: number; chordToleranceM: number },
): boolean {
  const angle = (2 * Math.PI) / (at.n * at.steps);
  for (let k = 0; k < at.steps; k++) {
    const u = at.i + k / at.steps;
    const a = Math.sqrt(curve(u));
    const b = Math.sqrt(curve(u + 1 / at.steps));
    for (const share of [0.25, 0.5, 0.75]) {
      const r = Math.sqrt(curve(u + share / at.steps));
      if (distanceToChord({ r, at: share * angle }, a, b, angle) > at.chordToleranceM) return false;
    }
  }
  return true;
}

/** Distance from the point (r, at) to the chord between (a, 0) and (b, angle), all polar about the trunk. */
function distanceToChord(point: { r: number; at: number }, a: number, b: number, angle: number): number {
  const dx = b * Math.cos(angle) - a;
  const dy = b * Math.sin(angle);
  const length = Math.hypot(dx, dy);
  const px = point.r * Math.cos(point.at) - a;
  const py = point.r * Math.sin(point.at);
  return length === 0 ? Math.hypot(px, py) : Math.abs(dx * py - dy * px) / length;
}

/** Vertices run counter-clockwise, so against the bearings. */
function traced(outline: RadiiOutline, fractions: readonly number[], scale: number): Ring {
  const curve = squaredRadius(outline.radiiM);
  const first = (outline.firstBearingDeg * Math.PI) / 180;
  const step = (2 * Math.PI) / outline.radiiM.length;
  const ring = new Float64Array(2 * fractions.length);
  for (let k = 0; k < fractions.length; k++) {
    const u = fractions[(fractions.length - k) % fractions.length];
    const r = scale * Math.sqrt(curve(u));
    const bearing = first + step * u;
    ring[2 * k] = outline.x + r * Math.sin(bearing);
    ring[2 * k + 1] = outline.y + r * Math.cos(bearing);
  }
  return ring;
}
