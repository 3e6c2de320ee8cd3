/**
 * Which bounded face each connected part of the line work lies in.
 */
import Flatbush from 'flatbush';
import { boxOf } from '../offset/ring-box.ts';
import { isInside } from '../offset/simple-rings.ts';
import type { Ring } from '../ring.ts';
import type { Cycles, PlanarLines } from './planar-faces.ts';

/**
 * For each cycle: of an outside, the cycle of the bounded face around it, or −1 when it lies in none; of a bounded face,
 * itself.
 */
export function enclosingFaces(lines: PlanarLines, cycles: Cycles): Int32Array {
  const rings = cycles.nodes.map((walked) => ringOf(lines, walked));
  const bounded = cycles.area.flatMap((area, c) => (area > 0 ? [c] : []));
  const enclosing = Int32Array.from(cycles.area, (area, c) => (area > 0 ? c : -1));
  if (bounded.length === 0) return enclosing;
  const partOf = connectedParts(lines, cycles);
  const index = new Flatbush(bounded.length);
  for (const c of bounded) index.add(...boxOf(rings[c]));
  index.finish();
  for (let c = 0; c < enclosing.length; c++) {
    if (cycles.area[c] > 0) continue;
    const [x, y] = rings[c];
    const around = index
      .search(x, y, x, y)
      .map((k) => bounded[k])
      .filter((face) => partOf[face] !== partOf[c] && isInside(rings[face], x, y));
    enclosing[c] = around.reduce((best, f) => (best === -1 || cycles.area[f] < cycles.area[best] ? f : best), -1);
  }
  return enclosing;
}

/** The connected part of each cycle: cycles that share an edge or a node are of one part. */
function connectedParts(lines: PlanarLines, cycles: Cycles): Int32Array {
  const parent = Int32Array.from(lines.x.keys());
  const root = (node: number): number => {
    let top = node;
    while (parent[top] !== top) {
      parent[top] = parent[parent[top]];
      top = parent[top];
    }
    return top;
  };
  for (let e = 0; e < lines.from.length; e++) parent[root(lines.from[e])] = root(lines.to[e]);
  return Int32Array.from(cycles.nodes, (walked) => root(walked[0]));
}

function ringOf(lines: PlanarLines, walked: readonly number[]): Ring {
  return Float64Array.from(walked.flatMap((node) => [lines.x[node], lines.y[node]]));
}
