/**
 * Whether rings are simple (no self-contact) and properly nested: what the offset curve's argument asks for.
 */
import { orient2d } from 'robust-predicates';
import { type Region, type Ring, signedArea } from '../ring.ts';
import { boxOf } from './ring-box.ts';

/** Vertices closer than this to the one before them carry no shape, m. */
const SAME_VERTEX_M = 1e-6;
/** A cross product smaller than this share of its parts may have the wrong sign. */
const CROSS_ERROR = 1e-15;

/**
 * A ring without repeated vertices, without spikes of no width, and without vertices that are not finite. Fewer than three
 * vertices left give an empty ring.
 */
export function trimmedRing(ring: Ring): Ring {
  const kept: number[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    if (Number.isFinite(ring[i]) && Number.isFinite(ring[i + 1])) pushTrimmed(kept, ring[i], ring[i + 1]);
  }
  let first = 0;
  while (kept.length - first >= 6 && closesBadly(kept, first)) {
    if (isSame(kept, first, kept.length - 2) || isSpike(kept, kept.length - 4, kept.length - 2, first))
      kept.length -= 2;
    else first += 2;
  }
  if (kept.length - first < 6) return new Float64Array(0);
  return kept.length === ring.length ? ring : Float64Array.from(kept.slice(first));
}

function pushTrimmed(kept: number[], x: number, y: number): void {
  kept.push(x, y);
  for (;;) {
    const last = kept.length - 2;
    if (last >= 2 && isSame(kept, last - 2, last)) kept.length -= 2;
    else if (last >= 4 && isSpike(kept, last - 4, last - 2, last)) kept.splice(last - 2, 2);
    else return;
  }
}

function closesBadly(kept: readonly number[], first: number): boolean {
  const last = kept.length - 2;
  return isSame(kept, first, last) || isSpike(kept, last - 2, last, first) || isSpike(kept, last, first, first + 2);
}

function isSame(c: readonly number[], i: number, j: number): boolean {
  return Math.abs(c[i] - c[j]) <= SAME_VERTEX_M && Math.abs(c[i + 1] - c[j + 1]) <= SAME_VERTEX_M;
}

function isSpike(c: readonly number[], i: number, j: number, k: number): boolean {
  const dot = (c[j] - c[i]) * (c[k] - c[j]) + (c[j + 1] - c[i + 1]) * (c[k + 1] - c[j + 1]);
  return dot < 0 && orient2d(c[i], c[i + 1], c[j], c[j + 1], c[k], c[k + 1]) === 0;
}

/**
 * Whether a ring runs counter-clockwise once around the mean of its vertices, every edge seen from there: it is then simple.
 * Most crowns are; the answer `false` proves nothing.
 */
export function isStarShaped(ring: Ring): boolean {
  const [cx, cy] = vertexMean(ring);
  const n = ring.length;
  let [ax, ay] = [ring[n - 2] - cx, ring[n - 1] - cy];
  let crossings = 0;
  for (let i = 0; i < n; i += 2) {
    const bx = ring[i] - cx;
    const by = ring[i + 1] - cy;
    const left = ax * by;
    const right = ay * bx;
    if (left - right <= CROSS_ERROR * (Math.abs(left) + Math.abs(right))) return false;
    if (ay < 0 !== by < 0 && ++crossings > 2) return false;
    ax = bx;
    ay = by;
  }
  return true;
}

function vertexMean(ring: Ring): [number, number] {
  const [x0, y0] = ring;
  let x = 0;
  let y = 0;
  for (let i = 0; i < ring.length; i += 2) {
    x += ring[i] - x0;
    y += ring[i + 1] - y0;
  }
  return [x0 + (2 * x) / ring.length, y0 + (2 * y) / ring.length];
}

/**
 * Whether the rings are simple, shells counter-clockwise, each hole inside a shell, and no hole in contact with another ring.
 * Shells may overlap one another. Star-shaped lone shells are answered in one pass.
 */
export function isProperRegion(rings: Region): boolean {
  const shells = rings.filter((ring) => signedArea(ring) > 0);
  const holes = rings.filter((ring) => signedArea(ring) < 0);
  if (shells.length + holes.length < rings.length) return false;
  if (!shells.every((ring) => isStarShaped(ring) || !ringsTouch(ring)) || holes.some((ring) => ringsTouch(ring)))
    return false;
  return holes.every((hole, i) => {
    const others = rings.filter((ring) => ring !== hole);
    if (others.some((ring) => ringsTouch(hole, ring))) return false;
    const inside = (ring: Ring) => isInside(ring, hole[0], hole[1]);
    return shells.filter(inside).length === 1 && !holes.some((other, j) => j !== i && inside(other));
  });
}

/** Whether a point lies inside a ring by the crossing rule; on the edge either answer. */
export function isInside(ring: Ring, x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const up = ring[i + 1] > y;
    if (up !== ring[j + 1] > y) {
      const side = orient2d(ring[j], ring[j + 1], ring[i], ring[i + 1], x, y);
      if (side > 0 !== up) inside = !inside;
    }
  }
  return inside;
}

/** Whether two rings have a point in common; with one ring, whether edges that are not neighbours have. */
function ringsTouch(a: Ring, b: Ring = a): boolean {
  const isOne = a === b;
  if (!isOne && !boxesMeet(a, b)) return false;
  const edges = edgesByX(isOne ? [a] : [a, b]);
  const countOfA = a.length / 2;
  for (let i = 0; i < edges.length; i++) {
    const e = edges[i];
    for (let j = i + 1; j < edges.length && edges[j].minX <= e.maxX; j++) {
      const f = edges[j];
      const concerns = isOne ? !areNeighbours(e.at, f.at, countOfA) : e.at < countOfA !== f.at < countOfA;
      if (concerns && edgesTouch(e, f)) return true;
    }
  }
  return false;
}

interface Edge {
  readonly at: number;
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly minX: number;
  readonly maxX: number;
}

/** Edges from west to east, numbered through all rings. */
function edgesByX(rings: Region): Edge[] {
  const edges: Edge[] = [];
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      const j = i + 2 === ring.length ? 0 : i + 2;
      const [x0, y0, x1, y1] = [ring[i], ring[i + 1], ring[j], ring[j + 1]];
      edges.push({ at: edges.length, x0, y0, x1, y1, minX: Math.min(x0, x1), maxX: Math.max(x0, x1) });
    }
  }
  return edges.sort((e, f) => e.minX - f.minX);
}

function areNeighbours(i: number, j: number, count: number): boolean {
  const apart = Math.abs(i - j);
  return apart === 1 || apart === count - 1;
}

/** For edges whose extents in x meet. */
function edgesTouch(e: Edge, f: Edge): boolean {
  if (Math.max(e.y0, e.y1) < Math.min(f.y0, f.y1) || Math.max(f.y0, f.y1) < Math.min(e.y0, e.y1)) return false;
  if (orient2d(e.x0, e.y0, e.x1, e.y1, f.x0, f.y0) * orient2d(e.x0, e.y0, e.x1, e.y1, f.x1, f.y1) > 0) return false;
  return orient2d(f.x0, f.y0, f.x1, f.y1, e.x0, e.y0) * orient2d(f.x0, f.y0, f.x1, f.y1, e.x1, e.y1) <= 0;
}

function boxesMeet(a: Ring, b: Ring): boolean {
  const [ax0, ay0, ax1, ay1] = boxOf(a);
  const [bx0, by0, bx1, by1] = boxOf(b);
  return ax0 <= bx1 && bx0 <= ax1 && ay0 <= by1 && by0 <= ay1;
}
