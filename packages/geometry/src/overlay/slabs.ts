/**
 * The plain twin of the sweep: cut the neighbourhood into vertical slabs at every vertex and crossing, sort the edges in
 * each, and sum trapezoids. Every slab is judged by itself, so no mistake can spread; the price is time that grows with
 * slabs × edges. The sweep falls back on it when its own certificate fails, and the tests compare both.
 */
import { CoverStates } from './cover-states.ts';
import type { Neighbourhood } from './neighbourhood.ts';

interface Edge {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly slope: number;
  readonly layer: number;
  readonly sign: number;
}

/**
 * Area of every cover state inside the neighbourhood's box, m², indexed by state (state 0, outside everything, stays 0).
 * Exact up to rounding: in a slab without crossings the area between two edges is their distance at mid-slab × width.
 */
export function areaByStateInSlabs(neighbourhood: Neighbourhood, states: CoverStates): Float64Array {
  const byStart = edgesOf(neighbourhood).sort((a, b) => a.x0 - b.x0);
  const cuts = cutsOf(byStart);
  const areas: number[] = [];
  let active: Edge[] = [];
  let next = 0;
  for (let i = 0; i + 1 < cuts.length; i++) {
    const middle = (cuts[i] + cuts[i + 1]) / 2;
    active = active.filter((edge) => edge.x1 > middle);
    for (; next < byStart.length && byStart[next].x0 < middle; next++) {
      if (byStart[next].x1 > middle) {
        active.push(byStart[next]);
      }
    }
    addSlab(active, middle, cuts[i + 1] - cuts[i], states, areas);
  }
  return Float64Array.from(areas, (area) => area ?? 0);
}

function addSlab(active: readonly Edge[], middle: number, width: number, states: CoverStates, areas: number[]): void {
  const crossed = active
    .map((edge) => ({ edge, y: edge.y0 + edge.slope * (middle - edge.x0) }))
    .sort((a, b) => a.y - b.y);
  let state = CoverStates.NOWHERE;
  for (let k = 0; k + 1 < crossed.length; k++) {
    state = states.across(state, crossed[k].edge.layer, crossed[k].edge.sign);
    if (state !== CoverStates.NOWHERE) {
      areas[state] = (areas[state] ?? 0) + (crossed[k + 1].y - crossed[k].y) * width;
    }
  }
}

/** All edges, cut to the box in x. */
function edgesOf({ partCount, firstVertex, layer, sign, xy, width }: Neighbourhood): Edge[] {
  const edges: Edge[] = [];
  for (let part = 0; part < partCount; part++) {
    for (let v = firstVertex[part]; v < firstVertex[part + 1] - 1; v++) {
      const ax = xy[2 * v];
      const bx = xy[2 * v + 2];
      const x0 = Math.max(ax, 0);
      const x1 = Math.min(bx, width);
      if (x0 < x1) {
        const slope = (xy[2 * v + 3] - xy[2 * v + 1]) / (bx - ax);
        edges.push({ x0, x1, y0: xy[2 * v + 1] + slope * (x0 - ax), slope, layer: layer[part], sign: sign[part] });
      }
    }
  }
  return edges;
}

/** Sorted x of all edge ends and crossings; `edges` come sorted by x0. */
function cutsOf(edges: readonly Edge[]): number[] {
  const cuts: number[] = [];
  for (let i = 0; i < edges.length; i++) {
    const a = edges[i];
    cuts.push(a.x0, a.x1);
    for (let j = i + 1; j < edges.length && edges[j].x0 < a.x1; j++) {
      const b = edges[j];
      const from = b.x0;
      const to = Math.min(a.x1, b.x1);
      if (from < to) {
        const before = a.y0 + a.slope * (from - a.x0) - b.y0 - b.slope * (from - b.x0);
        const after = a.y0 + a.slope * (to - a.x0) - b.y0 - b.slope * (to - b.x0);
        if (before < 0 !== after < 0) {
          cuts.push(Math.min(to, Math.max(from, from + ((to - from) * before) / (before - after))));
        }
      }
    }
  }
  return [...new Set(cuts)].sort((a, b) => a - b);
}
