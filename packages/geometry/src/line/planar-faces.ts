/**
 * Faces of planar line work, by walking half-edges with the face on the left.
 *
 * Half-edge `2e` runs along edge e from `from[e]` to `to[e]`, `2e + 1` back. At each node the half-edges that leave are
 * ordered by exact angle; the walk goes on with the next one clockwise from the way it came.
 */
import { orient2d } from 'robust-predicates';
import type { Ring } from '../ring.ts';
import { signedArea } from '../ring.ts';

/** Nodes and undirected edges, none twice, none crossing another. */
export interface PlanarLines {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
}

export interface Cycles {
  /** The half-edge that follows each, along the same face. */
  readonly next: Int32Array;
  /** Cycle to the left of each half-edge. */
  readonly of: Int32Array;
  /** Nodes of each cycle, in walking order. */
  readonly nodes: readonly (readonly number[])[];
  /** Signed area of each cycle: positive for the outline of a bounded face, else the outside of a connected part. */
  readonly area: readonly number[];
}

/** All cycles of the line work. */
export function cyclesOf(lines: PlanarLines): Cycles {
  const next = nextHalfEdges(lines);
  const of = new Int32Array(next.length).fill(-1);
  const nodes: number[][] = [];
  for (let h = 0; h < next.length; h++) {
    if (of[h] !== -1) continue;
    const walked: number[] = [];
    for (let g = h; of[g] === -1; g = next[g]) {
      of[g] = nodes.length;
      walked.push(tailOf(lines, g));
    }
    nodes.push(walked);
  }
  return { next, of, nodes, area: nodes.map((walked) => signedArea(ringThrough(lines, walked))) };
}

/** The line work without dangling ends and without bridges between loops: every edge left has two different faces. */
export function withoutDeadEnds(lines: PlanarLines): PlanarLines {
  const pruned = withoutDangles(lines);
  const { of } = cyclesOf(pruned);
  return keptEdges(pruned, (e) => of[2 * e] !== of[2 * e + 1]);
}

/** A cycle cut wherever it passes a node again, so that each piece is a simple ring. */
export function simpleRings(lines: PlanarLines, walked: readonly number[]): Ring[] {
  const rings: Ring[] = [];
  const path: number[] = [];
  const placeOf = new Map<number, number>();
  for (const node of walked) {
    const place = placeOf.get(node);
    if (place !== undefined) {
      const loop = path.splice(place);
      for (const left of loop) placeOf.delete(left);
      if (loop.length > 2) rings.push(ringThrough(lines, loop));
    }
    placeOf.set(node, path.length);
    path.push(node);
  }
  if (path.length > 2) rings.push(ringThrough(lines, path));
  return rings;
}

function ringThrough(lines: PlanarLines, nodes: readonly number[]): Ring {
  const ring = new Float64Array(2 * nodes.length);
  for (let i = 0; i < nodes.length; i++) {
    ring[2 * i] = lines.x[nodes[i]];
    ring[2 * i + 1] = lines.y[nodes[i]];
  }
  return ring;
}

function tailOf(lines: PlanarLines, h: number): number {
  return h % 2 === 0 ? lines.from[h >> 1] : lines.to[h >> 1];
}

function nextHalfEdges(lines: PlanarLines): Int32Array {
  const next = new Int32Array(2 * lines.from.length);
  for (const leaving of halfEdgesAtNodes(lines)) {
    leaving.sort((a, b) => compareAngles(lines, a, b));
    for (let i = 0; i < leaving.length; i++) {
      const before = leaving[i === 0 ? leaving.length - 1 : i - 1];
      next[leaving[i] ^ 1] = before;
    }
  }
  return next;
}

function halfEdgesAtNodes(lines: PlanarLines): number[][] {
  const leaving: number[][] = Array.from(lines.x, () => []);
  for (let h = 0; h < 2 * lines.from.length; h++) leaving[tailOf(lines, h)].push(h);
  return leaving;
}

/** Counter-clockwise from east. */
function compareAngles(lines: PlanarLines, a: number, b: number): number {
  const at = tailOf(lines, a);
  const p = tailOf(lines, a ^ 1);
  const q = tailOf(lines, b ^ 1);
  const { x, y } = lines;
  const halfA = y[p] > y[at] || (y[p] === y[at] && x[p] > x[at]) ? 0 : 1;
  const halfB = y[q] > y[at] || (y[q] === y[at] && x[q] > x[at]) ? 0 : 1;
  return halfA - halfB || orient2d(x[at], y[at], x[p], y[p], x[q], y[q]);
}

function withoutDangles(lines: PlanarLines): PlanarLines {
  const leaving = halfEdgesAtNodes(lines);
  const degree = leaving.map((halfEdges) => halfEdges.length);
  const gone = new Uint8Array(lines.from.length);
  const ends = degree.flatMap((d, node) => (d === 1 ? [node] : []));
  for (let node = ends.pop(); node !== undefined; node = ends.pop()) {
    const h = leaving[node].find((g) => gone[g >> 1] === 0);
    if (h === undefined) continue;
    gone[h >> 1] = 1;
    const far = tailOf(lines, h ^ 1);
    if (--degree[far] === 1) ends.push(far);
  }
  return keptEdges(lines, (e) => gone[e] === 0);
}

function keptEdges(lines: PlanarLines, keeps: (e: number) => boolean): PlanarLines {
  const kept = Array.from(lines.from.keys()).filter(keeps);
  return {
    x: lines.x,
    y: lines.y,
    from: Int32Array.from(kept, (e) => lines.from[e]),
    to: Int32Array.from(kept, (e) => lines.to[e]),
  };
}
