/**
 * The offset curve of one ring, in one pass, correct under the non-zero winding rule without any clipping.
 *
 * Why it holds (docs/methods/drift-rings.md gives the argument in full). Let the convolution curve follow every edge
 * shifted outwards by δ, and at every vertex the arc between the two normals: forwards where the ring turns left, backwards
 * where it turns right. Its winding number at x is the number of connected parts of P ∩ disc(x, δ) when P is simply
 * connected: never negative, and positive exactly on the Minkowski sum. The curve drawn here differs from it only by whole
 * loops with winding +1 that lie inside the sum (the cut-off behind a right turn) or within the tolerance of it (the tangent
 * polyline outside a left turn), so the rule still reads the sum.
 */
import type { Ring } from '../ring.ts';
import { type ArcJoins, turnPerVertex } from './arc-joins.ts';

export interface OffsetCurve {
  readonly distanceM: number;
  readonly joins: ArcJoins;
  /**
   * Whether right turns may be cut where the two shifted edges meet. Sound for shells and for the ring there-and-back along a
   * line, not for holes.
   */
  readonly trims: boolean;
}

/** Two shifted ends closer than this share of the distance are one vertex. */
const SAME_END = 1e-9;

/**
 * Offset curve of a ring to its right-hand side (outwards of a counter-clockwise shell, into a clockwise hole).
 *
 * The ring is in metres, without repeated vertices. Turns back on itself count as left turns and get a half circle.
 */
export function offsetRing(ring: Float64Array, curve: OffsetCurve): Ring {
  const edges = edgesOf(ring);
  const out: number[] = [];
  const step = turnPerVertex(curve.joins, curve.distanceM);
  const count = edges.length.length;
  for (let i = 0; i < count; i++) {
    const before = i === 0 ? count - 1 : i - 1;
    const corner = cornerAt(ring, edges, before, i);
    if (corner.turn > 0) {
      if (curve.joins.kind === 'tangent') pushTangents(out, corner, curve.distanceM, step);
      else pushChords(out, corner, curve.distanceM, step);
    } else if (curve.trims && isTrimmable(corner, edges, before, i, curve.distanceM)) {
      pushMitre(out, corner, curve.distanceM);
    } else {
      pushEnds(out, corner, curve.distanceM);
    }
  }
  return Float64Array.from(out);
}

/** Unit directions and lengths; edge i leaves vertex i. */
interface Edges {
  readonly dx: Float64Array;
  readonly dy: Float64Array;
  readonly length: Float64Array;
}

function edgesOf(ring: Float64Array): Edges {
  const count = ring.length / 2;
  const edges = { dx: new Float64Array(count), dy: new Float64Array(count), length: new Float64Array(count) };
  for (let i = 0; i < count; i++) {
    const j = i + 1 === count ? 0 : i + 1;
    const dx = ring[2 * j] - ring[2 * i];
    const dy = ring[2 * j + 1] - ring[2 * i + 1];
    const length = Math.sqrt(dx * dx + dy * dy);
    edges.dx[i] = dx / length;
    edges.dy[i] = dy / length;
    edges.length[i] = length;
  }
  return edges;
}

/** A vertex with the outward normals before and after it. */
interface Corner {
  readonly x: number;
  readonly y: number;
  readonly nx0: number;
  readonly ny0: number;
  readonly nx1: number;
  readonly ny1: number;
  /** −π < turn ≤ π, left positive. */
  readonly turn: number;
  readonly sin: number;
  readonly cos: number;
}

function cornerAt(ring: Float64Array, edges: Edges, before: number, after: number): Corner {
  const { dx, dy } = edges;
  const sin = dx[before] * dy[after] - dy[before] * dx[after];
  const cos = dx[before] * dx[after] + dy[before] * dy[after];
  const back = sin === 0 && cos < 0;
  return {
    x: ring[2 * after],
    y: ring[2 * after + 1],
    nx0: dy[before],
    ny0: -dx[before],
    nx1: dy[after],
    ny1: -dx[after],
    turn: back ? Math.PI : Math.atan2(sin, cos),
    sin,
    cos,
  };
}

/** Whether the shifted edges meet within the stretch that each of them has: by δ tan(|turn|/2) back from the vertex. */
function isTrimmable(c: Corner, edges: Edges, before: number, after: number, distanceM: number): boolean {
  if (c.cos <= -1) return false;
  const trimM = (distanceM * Math.abs(c.sin)) / (1 + c.cos);
  return trimM <= edges.length[before] && trimM <= edges.length[after];
}

/** The meeting of the two shifted edges. */
function pushMitre(out: number[], c: Corner, distanceM: number): void {
  const reach = distanceM / (1 + c.cos);
  out.push(c.x + reach * (c.nx0 + c.nx1), c.y + reach * (c.ny0 + c.ny1));
}

function pushEnds(out: number[], c: Corner, distanceM: number): void {
  out.push(c.x + distanceM * c.nx0, c.y + distanceM * c.ny0);
  if (Math.abs(c.nx1 - c.nx0) + Math.abs(c.ny1 - c.ny0) > SAME_END) {
    out.push(c.x + distanceM * c.nx1, c.y + distanceM * c.ny1);
  }
}

function pushTangents(out: number[], c: Corner, distanceM: number, step: number): void {
  const count = Math.ceil(c.turn / step);
  if (count === 1) {
    pushMitre(out, c, distanceM);
    return;
  }
  const each = c.turn / count;
  const radius = distanceM / Math.cos(each / 2);
  for (let k = 0; k < count; k++) pushTurned(out, c, radius, (k + 0.5) * each);
}

function pushChords(out: number[], c: Corner, distanceM: number, step: number): void {
  const count = Math.max(1, Math.round(c.turn / step));
  out.push(c.x + distanceM * c.nx0, c.y + distanceM * c.ny0);
  for (let k = 1; k < count; k++) pushTurned(out, c, distanceM, (k * c.turn) / count);
  out.push(c.x + distanceM * c.nx1, c.y + distanceM * c.ny1);
}

function pushTurned(out: number[], c: Corner, radius: number, angle: number): void {
  const cos = radius * Math.cos(angle);
  const sin = radius * Math.sin(angle);
  out.push(c.x + c.nx0 * cos - c.ny0 * sin, c.y + c.nx0 * sin + c.ny0 * cos);
}
