/**
 * Whether rings are simple (no self-contact) and properly nested: what the offset curve's argument asks for.
 */
import Flatbush from 'flatbush';
import { orient2d } from 'robust-predicates';
import type { Region, Ring } from '../ring.ts';
import { signedArea } from '../ring.ts';

/** Vertices closer than this to the one before them carry no shape, m. */
const SAME_VERTEX_M = 1e-6;
/** Up to this many vertices all pairs of edges are compared; above, a box index finds the pairs. */
const ALL_PAIRS = 64;

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

/** Whether every turn is to the left and the ring goes around once. */
export function isConvex(ring: Ring): boolean {
  const n = ring.length;
  let reversals = 0;
  let wasRight = ring[0] - ring[n - 2] > 0 || (ring[0] === ring[n - 2] && ring[1] > ring[n - 1]);
  for (let i = 0; i < n; i += 2) {
    const j = i + 2 === n ? 0 : i + 2;
    const k = j + 2 === n ? 0 : j + 2;
    const dx = ring[j] - ring[i];
    const dy = ring[j + 1] - ring[i + 1];
    if (dx * (ring[k + 1] - ring[j + 1]) - dy * (ring[k] - ring[j]) < 0) return false;
    const isRight = dx > 0 || (dx === 0 && dy > 0);
    if (isRight !== wasRight && ++reversals > 2) return false;
    wasRight = isRight;
  }
  return true;
}

/**
 * Whether the rings are simple, shells counter-clockwise, each hole inside a shell, and no hole in contact with another ring.
 * Shells may overlap one another. Convex lone shells are answered in one pass.
 */
export function isProperRegion(rings: Region): boolean {
  const shells = rings.filter((ring) => signedArea(ring) > 0);
  const holes = rings.filter((ring) => signedArea(ring) < 0);
  if (shells.length + holes.length < rings.length) return false;
  if (!shells.every((ring) => isConvex(ring) || !ringsTouch(ring)) || holes.some((ring) => ringsTouch(ring)))
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
  if (a !== b && !boxesMeet(a, b)) return false;
  if (a.length > 2 * ALL_PAIRS || b.length > 2 * ALL_PAIRS) return ringsTouchIndexed(a, b);
  const m = b.length / 2;
  for (let i = 0; i < a.length / 2; i++) {
    for (let j = a === b ? i + 2 : 0; j < m; j++) {
      if (!(a === b && i === 0 && j === m - 1) && edgesTouch(a, i, b, j)) return true;
    }
  }
  return false;
}

function boxesMeet(a: Ring, b: Ring): boolean {
  const [ax0, ay0, ax1, ay1] = boxOf(a);
  const [bx0, by0, bx1, by1] = boxOf(b);
  return ax0 <= bx1 && bx0 <= ax1 && ay0 <= by1 && by0 <= ay1;
}

function boxOf(ring: Ring): [number, number, number, number] {
  const box: [number, number, number, number] = [ring[0], ring[1], ring[0], ring[1]];
  for (let i = 2; i < ring.length; i += 2) {
    box[0] = Math.min(box[0], ring[i]);
    box[1] = Math.min(box[1], ring[i + 1]);
    box[2] = Math.max(box[2], ring[i]);
    box[3] = Math.max(box[3], ring[i + 1]);
  }
  return box;
}

function ringsTouchIndexed(a: Ring, b: Ring): boolean {
  const m = b.length / 2;
  const index = new Flatbush(m);
  for (let j = 0; j < m; j++) {
    const [x0, y0, x1, y1] = edgeOf(b, j);
    index.add(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
  }
  index.finish();
  for (let i = 0; i < a.length / 2; i++) {
    const [x0, y0, x1, y1] = edgeOf(a, i);
    const box = [Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1)] as const;
    const touching = (j: number) => !(a === b && areNeighbours(i, j, m)) && edgesTouch(a, i, b, j);
    if (index.search(...box, touching).length > 0) return true;
  }
  return false;
}

function areNeighbours(i: number, j: number, count: number): boolean {
  const apart = Math.abs(i - j);
  return apart <= 1 || apart === count - 1;
}

function edgeOf(ring: Ring, i: number): [number, number, number, number] {
  const j = 2 * i + 2 === ring.length ? 0 : 2 * i + 2;
  return [ring[2 * i], ring[2 * i + 1], ring[j], ring[j + 1]];
}

function edgesTouch(a: Ring, i: number, b: Ring, j: number): boolean {
  const ia = 2 * i;
  const ib = ia + 2 === a.length ? 0 : ia + 2;
  const ja = 2 * j;
  const jb = ja + 2 === b.length ? 0 : ja + 2;
  const [x0, y0, x1, y1] = [a[ia], a[ia + 1], a[ib], a[ib + 1]];
  const [u0, v0, u1, v1] = [b[ja], b[ja + 1], b[jb], b[jb + 1]];
  if (Math.max(x0, x1) < Math.min(u0, u1) || Math.max(u0, u1) < Math.min(x0, x1)) return false;
  if (Math.max(y0, y1) < Math.min(v0, v1) || Math.max(v0, v1) < Math.min(y0, y1)) return false;
  if (orient2d(x0, y0, x1, y1, u0, v0) * orient2d(x0, y0, x1, y1, u1, v1) > 0) return false;
  return orient2d(u0, v0, u1, v1, x0, y0) * orient2d(u0, v0, u1, v1, x1, y1) <= 0;
}
