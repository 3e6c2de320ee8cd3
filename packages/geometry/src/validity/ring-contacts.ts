/**
 * Where edges of rings meet that should not: crossings and touches, found with a packed box index and exact predicates
 * (Shewchuk 1997, through robust-predicates).
 */
import Flatbush from 'flatbush';
import { orient2d } from 'robust-predicates';

export interface Contact {
  readonly x: number;
  readonly y: number;
  /** Positions in `rings`, and the edges' first vertices, counted from 0. */
  readonly ring: number;
  readonly edge: number;
  readonly otherRing: number;
  readonly otherEdge: number;
}

export interface RingContacts {
  /** The first crossing in the order of edges. Two edges cross when each has its ends strictly on both sides of the other. */
  readonly crossing: Contact | undefined;
  /** Crossings counted, at most `MOST_COUNTED`. */
  readonly crossings: number;
  /** The first place where an end lies on another edge, or edges overlap along a line. */
  readonly touch: Contact | undefined;
  /** False when the work was cut short: rings of very many long, slanting edges. */
  readonly complete: boolean;
}

export const MOST_COUNTED = 1000;
/** Pairs of edges with overlapping boxes that are looked at, per edge and in all; ordinary rings need fewer than ten. */
const PAIRS_PER_EDGE = 200;
const PAIRS_AT_LEAST = 1_000_000;

/**
 * Crossings and touches among the edges of rings (flat, open, closed by their first vertex); neighbouring edges of one ring
 * share a vertex and are not compared. Time grows as n log n for ordinary rings. Rings of fewer than two vertices have no
 * edges.
 */
export function ringContacts(rings: readonly Float64Array[]): RingContacts {
  const edges = edgesOf(rings);
  const count = edges.ring.length;
  if (count < 2) return { crossing: undefined, crossings: 0, touch: undefined, complete: true };
  const index = boxIndex(edges.ends);
  let crossing: Contact | undefined;
  let touch: Contact | undefined;
  let crossings = 0;
  let pairsLeft = Math.max(PAIRS_AT_LEAST, PAIRS_PER_EDGE * count);
  for (let i = 0; i < count && pairsLeft > 0 && crossings < MOST_COUNTED; i++) {
    const ends = edges.ends.subarray(4 * i, 4 * i + 4);
    index.collides(...boxOf(ends), (j) => {
      if (j <= i || neighbours(edges, i, j)) return false;
      const kind = meeting(ends, edges.ends.subarray(4 * j, 4 * j + 4));
      if (kind === 'cross') {
        crossings++;
        crossing ??= contact(edges, i, j);
      } else if (kind === 'touch') touch ??= contact(edges, i, j);
      return --pairsLeft <= 0 || crossings >= MOST_COUNTED;
    });
  }
  return { crossing, crossings, touch, complete: pairsLeft > 0 };
}

interface Edges {
  /** Four numbers an edge: x, y, x, y. */
  readonly ends: Float64Array;
  readonly ring: Int32Array;
  readonly edge: Int32Array;
  readonly sizes: readonly number[];
}

function edgesOf(rings: readonly Float64Array[]): Edges {
  const sizes = rings.map((ring) => (ring.length >= 4 ? ring.length / 2 : 0));
  const total = sizes.reduce((sum, size) => sum + size, 0);
  const edges = { ends: new Float64Array(4 * total), ring: new Int32Array(total), edge: new Int32Array(total), sizes };
  let at = 0;
  rings.forEach((ring, r) => {
    for (let i = 0; i < sizes[r]; i++, at++) {
      const next = (2 * i + 2) % ring.length;
      edges.ends.set([ring[2 * i], ring[2 * i + 1], ring[next], ring[next + 1]], 4 * at);
      edges.ring[at] = r;
      edges.edge[at] = i;
    }
  });
  return edges;
}

function boxIndex(ends: Float64Array): Flatbush {
  const index = new Flatbush(ends.length / 4);
  for (let i = 0; i < ends.length; i += 4) index.add(...boxOf(ends.subarray(i, i + 4)));
  index.finish();
  return index;
}

function boxOf(ends: Float64Array): [number, number, number, number] {
  const [x0, y0, x1, y1] = ends;
  return [Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1)];
}

function neighbours(edges: Edges, i: number, j: number): boolean {
  const ring = edges.ring[i];
  if (ring !== edges.ring[j]) return false;
  const apart = Math.abs(edges.edge[i] - edges.edge[j]);
  return apart === 1 || apart === edges.sizes[ring] - 1;
}

/** The boxes are known to overlap, so four zeros mean a shared stretch or a shared end. */
function meeting(a: Float64Array, b: Float64Array): 'cross' | 'touch' | 'apart' {
  const b0 = orient2d(a[0], a[1], a[2], a[3], b[0], b[1]);
  const b1 = orient2d(a[0], a[1], a[2], a[3], b[2], b[3]);
  if ((b0 > 0 && b1 > 0) || (b0 < 0 && b1 < 0)) return 'apart';
  const a0 = orient2d(b[0], b[1], b[2], b[3], a[0], a[1]);
  const a1 = orient2d(b[0], b[1], b[2], b[3], a[2], a[3]);
  if ((a0 > 0 && a1 > 0) || (a0 < 0 && a1 < 0)) return 'apart';
  return b0 !== 0 && b1 !== 0 && a0 !== 0 && a1 !== 0 ? 'cross' : 'touch';
}

function contact(edges: Edges, i: number, j: number): Contact {
  const [x0, y0, x1, y1] = edges.ends.subarray(4 * i, 4 * i + 4);
  const [u0, v0, u1, v1] = edges.ends.subarray(4 * j, 4 * j + 4);
  const denominator = (x1 - x0) * (v1 - v0) - (y1 - y0) * (u1 - u0);
  const along = denominator === 0 ? 0 : ((u0 - x0) * (v1 - v0) - (v0 - y0) * (u1 - u0)) / denominator;
  const t = Math.min(1, Math.max(0, along));
  return {
    x: x0 + t * (x1 - x0),
    y: y0 + t * (y1 - y0),
    ring: edges.ring[i],
    edge: edges.edge[i],
    otherRing: edges.ring[j],
    otherEdge: edges.edge[j],
  };
}
