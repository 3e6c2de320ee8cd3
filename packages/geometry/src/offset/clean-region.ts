/**
 * A region of any rings resolved into simple rings that do not cross: the same set under the non-zero winding rule.
 */
import { enclosingFaces } from '../line/face-nesting.ts';
import { type NodedLines, nodedLines } from '../line/noding.ts';
import { type Cycles, cyclesOf, type PlanarLines, simpleRings } from '../line/planar-faces.ts';
import type { Region, Ring } from '../ring.ts';

/** Cells per metre: vertices move by at most 0.7 µm. A power of two, so that the change of unit is exact. */
const CELLS_PER_METRE = 2 ** 20;

/**
 * The set of points around which a region's rings wind a number of times other than 0, as simple rings: shells
 * counter-clockwise, holes clockwise, in contact with one another at single vertices at most. Vertices move by up to
 * 0.7 µm. Vertices that are not finite are skipped; an empty region gives an empty one.
 *
 * @example cleanRegion([Float64Array.of(0, 0, 2, 2, 2, 0, 0, 2)]) // two triangles, 1 m² each
 */
export function cleanRegion(region: Region): Region {
  const noded = nodedLines(segmentsOf(region));
  const { lines, gain } = withGains(noded);
  const cycles = cyclesOf(lines);
  const winding = windings(lines, cycles, gain);
  return boundary(lines, cycles, winding);
}

function segmentsOf(region: Region): Float64Array {
  const out: number[] = [];
  for (const ring of region) {
    const kept: number[] = [];
    for (let i = 0; i < ring.length; i += 2) {
      const x = Math.round(ring[i] * CELLS_PER_METRE);
      const y = Math.round(ring[i + 1] * CELLS_PER_METRE);
      if (Number.isFinite(x) && Number.isFinite(y)) kept.push(x, y);
    }
    for (let i = 0, j = kept.length - 2; i < kept.length; j = i, i += 2) {
      out.push(kept[j], kept[j + 1], kept[i], kept[i + 1]);
    }
  }
  return Float64Array.from(out);
}

/** Each undirected edge once, with what the winding number gains from its right to its left; edges that gain 0 vanish. */
function withGains(noded: NodedLines): { lines: PlanarLines; gain: number[] } {
  const gains = new Map<number, number>();
  const count = noded.x.length;
  for (let e = 0; e < noded.from.length; e++) {
    const a = Math.min(noded.from[e], noded.to[e]);
    const b = Math.max(noded.from[e], noded.to[e]);
    gains.set(a * count + b, (gains.get(a * count + b) ?? 0) + (noded.from[e] === a ? 1 : -1));
  }
  const kept = [...gains].filter(([, gain]) => gain !== 0);
  const lines = {
    x: noded.x,
    y: noded.y,
    from: Int32Array.from(kept, ([key]) => Math.floor(key / count)),
    to: Int32Array.from(kept, ([key]) => key % count),
  };
  return { lines, gain: kept.map(([, gain]) => gain) };
}

/** Winding number of each cycle's face, from the outside of each connected part inwards, outer parts first. */
function windings(lines: PlanarLines, cycles: Cycles, gain: readonly number[]): Int32Array {
  const winding = new Int32Array(cycles.nodes.length);
  const known = new Uint8Array(cycles.nodes.length);
  const enclosing = enclosingFaces(lines, cycles);
  const sides = sidesOfCycles(cycles, gain);
  const outsides = cycles.area
    .flatMap((area, c) => (area > 0 ? [] : [c]))
    .sort((a, b) => cycles.area[a] - cycles.area[b]);
  for (const outside of outsides) {
    if (enclosing[outside] !== -1) winding[outside] = winding[enclosing[outside]];
    known[outside] = 1;
    const reached = [outside];
    for (let c = reached.pop(); c !== undefined; c = reached.pop()) {
      for (const [beyond, change] of sides[c]) {
        if (known[beyond]) continue;
        known[beyond] = 1;
        winding[beyond] = winding[c] + change;
        reached.push(beyond);
      }
    }
  }
  return winding;
}

/** For each cycle, the cycles across its edges and what the winding number gains on going there. */
function sidesOfCycles(cycles: Cycles, gain: readonly number[]): [number, number][][] {
  const sides: [number, number][][] = cycles.nodes.map(() => []);
  for (let e = 0; e < gain.length; e++) {
    const left = cycles.of[2 * e];
    const right = cycles.of[2 * e + 1];
    sides[right].push([left, gain[e]]);
    sides[left].push([right, -gain[e]]);
  }
  return sides;
}

/** Edges between inside and outside, walked with the inside on the left. */
function boundary(lines: PlanarLines, cycles: Cycles, winding: Int32Array): Ring[] {
  const isIn = (h: number) => winding[cycles.of[h]] !== 0;
  const edges = Array.from(lines.from.keys()).filter((e) => isIn(2 * e) !== isIn(2 * e + 1));
  const border: PlanarLines = {
    x: lines.x,
    y: lines.y,
    from: Int32Array.from(edges, (e) => (isIn(2 * e) ? lines.from[e] : lines.to[e])),
    to: Int32Array.from(edges, (e) => (isIn(2 * e) ? lines.to[e] : lines.from[e])),
  };
  const borderCycles = cyclesOf(border);
  const inside = new Set(edges.map((_, e) => borderCycles.of[2 * e]));
  return [...inside].flatMap((c) => simpleRings(border, borderCycles.nodes[c]).map(inMetres));
}

function inMetres(ring: Ring): Ring {
  return ring.map((value) => value / CELLS_PER_METRE);
}
