/**
 * Line work made planar: crossing segments are cut where they meet, on a grid of whole numbers.
 *
 * Hot-pixel snap rounding (Hobby 1999, Computational Geometry 13:199–214): every end and every crossing, rounded to the
 * grid, is a pixel, and each segment is led through the centres of the pixels it passes. No vertex moves by more than half
 * a cell's diagonal, and no two pieces cross afterwards. Side tests are exact.
 */
import Flatbush from 'flatbush';
import { orient2d } from 'robust-predicates';

/** Nodes with whole-number coordinates and directed pieces between them; pieces may repeat. */
export interface NodedLines {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
}

/** Led-through segments can, in rare cases, cross anew: the work is then done again. */
const MOST_PASSES = 12;

/**
 * Segments `[x0, y0, x1, y1, …]` with whole-number coordinates, cut so that any two pieces share a node or nothing, or are
 * the same. Segments of no length vanish. The result does not depend on the segments' order, save for the order of pieces.
 */
export function nodedLines(segments: Float64Array): NodedLines {
  let current: Float64Array = segments.filter((_, i) => hasLength(segments, i - (i % 4)));
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const crossings = properCrossings(current);
    const pixels = pixelsOf(current, crossings);
    const led = ledThroughPixels(current, pixels);
    const isPlanar = crossings.length === 0 && led.length === current.length;
    current = led;
    if (isPlanar) break;
  }
  return asNodes(current);
}

function hasLength(segments: Float64Array, i: number): boolean {
  return segments[i] !== segments[i + 2] || segments[i + 1] !== segments[i + 3];
}

function indexOfSegments(segments: Float64Array): Flatbush {
  const index = new Flatbush(segments.length / 4);
  for (let i = 0; i < segments.length; i += 4) {
    const [x0, y0, x1, y1] = segments.subarray(i, i + 4);
    index.add(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
  }
  index.finish();
  return index;
}

/** Rounded points in which two segments cross between their ends. */
function properCrossings(segments: Float64Array): number[] {
  const found: number[] = [];
  if (segments.length === 0) return found;
  const index = indexOfSegments(segments);
  for (let i = 0; i < segments.length; i += 4) {
    const [x0, y0, x1, y1] = segments.subarray(i, i + 4);
    index.search(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1), (k) => {
      if (4 * k > i) pushCrossing(found, segments, i, 4 * k);
      return false;
    });
  }
  return found;
}

function pushCrossing(found: number[], s: Float64Array, i: number, k: number): void {
  const a = orient2d(s[k], s[k + 1], s[k + 2], s[k + 3], s[i], s[i + 1]);
  const b = orient2d(s[k], s[k + 1], s[k + 2], s[k + 3], s[i + 2], s[i + 3]);
  if (!((a > 0 && b < 0) || (a < 0 && b > 0))) return;
  const c = orient2d(s[i], s[i + 1], s[i + 2], s[i + 3], s[k], s[k + 1]);
  const d = orient2d(s[i], s[i + 1], s[i + 2], s[i + 3], s[k + 2], s[k + 3]);
  if (!((c > 0 && d < 0) || (c < 0 && d > 0))) return;
  const t = a / (a - b);
  found.push(nearestCell(s, i, k, t), nearestCell(s, i + 1, k + 1, t));
}

/** Share of the coordinates' size by which a crossing reckoned in floating point may be off. */
const CROSSING_ERROR = 2 ** -46;

/**
 * The whole number nearest to one coordinate of a crossing, halves upwards: the pixel that holds the crossing. Reckoned
 * exactly where rounding could name the neighbouring pixel, since both segments must pass through the one that is named.
 */
function nearestCell(s: Float64Array, i: number, k: number, t: number): number {
  const value = s[i] + t * (s[i + 2] - s[i]);
  const slack = CROSSING_ERROR * (Math.abs(s[i]) + Math.abs(s[i + 2]));
  return Math.round(value - slack) === Math.round(value + slack) ? Math.round(value) : exactCell(s, i, k);
}

/** By whole numbers: coordinate i of segment `i`'s crossing with segment `k`. */
function exactCell(s: Float64Array, i: number, k: number): number {
  const [a, b, c, d] = [i & ~3, (i & ~3) + 2, k & ~3, (k & ~3) + 2].map((v) => [BigInt(s[v]), BigInt(s[v + 1])]);
  const side = (p: bigint[]) => (d[0] - c[0]) * (p[1] - c[1]) - (d[1] - c[1]) * (p[0] - c[0]);
  const [before, after] = [side(a), side(b)];
  const axis = i & 1;
  const twice = before < after ? -2n : 2n;
  const denominator = (before - after) * twice;
  const numerator = (a[axis] * (before - after) + before * (b[axis] - a[axis])) * twice + denominator / 2n;
  const down = numerator < 0n && numerator % denominator !== 0n ? 1n : 0n;
  return Number(numerator / denominator - down);
}

interface Pixels {
  readonly x: number[];
  readonly y: number[];
  readonly index: Flatbush;
}

function pixelsOf(segments: Float64Array, crossings: readonly number[]): Pixels | undefined {
  if (segments.length === 0) return undefined;
  const nodes = new NodeTable();
  for (let i = 0; i < segments.length; i += 2) nodes.idOf(segments[i], segments[i + 1]);
  for (let i = 0; i < crossings.length; i += 2) nodes.idOf(crossings[i], crossings[i + 1]);
  const index = new Flatbush(nodes.x.length);
  for (let i = 0; i < nodes.x.length; i++) index.add(nodes.x[i], nodes.y[i]);
  index.finish();
  return { x: nodes.x, y: nodes.y, index };
}

function ledThroughPixels(segments: Float64Array, pixels: Pixels | undefined): Float64Array {
  const out: number[] = [];
  if (!pixels) return segments;
  for (let i = 0; i < segments.length; i += 4) {
    const [x0, y0, x1, y1] = segments.subarray(i, i + 4);
    const along = (k: number) => (pixels.x[k] - x0) * (x1 - x0) + (pixels.y[k] - y0) * (y1 - y0);
    const passed = pixels.index
      .search(Math.min(x0, x1) - 0.5, Math.min(y0, y1) - 0.5, Math.max(x0, x1) + 0.5, Math.max(y0, y1) + 0.5, (k) =>
        passesPixel(segments, i, pixels.x[k], pixels.y[k]),
      )
      .sort((k, l) => along(k) - along(l) || pixels.x[k] - pixels.x[l] || pixels.y[k] - pixels.y[l]);
    const inner = passed.filter((k) => !isEnd(pixels, k, x0, y0) && !isEnd(pixels, k, x1, y1));
    let [px, py] = [x0, y0];
    for (const k of inner) {
      out.push(px, py, pixels.x[k], pixels.y[k]);
      [px, py] = [pixels.x[k], pixels.y[k]];
    }
    out.push(px, py, x1, y1);
  }
  return Float64Array.from(out);
}

function isEnd(pixels: Pixels, k: number, x: number, y: number): boolean {
  return pixels.x[k] === x && pixels.y[k] === y;
}

/**
 * Whether the segment meets the pixel of a whole-number point: the unit cell about it with its lower and left edges, without
 * the others, as rounding halves upwards has it. A segment between whole numbers can touch an edge of the cell only at a
 * corner; the box search has seen to the extents.
 */
function passesPixel(s: Float64Array, i: number, x: number, y: number): boolean {
  const side = (cx: number, cy: number) => orient2d(s[i], s[i + 1], s[i + 2], s[i + 3], x + cx, y + cy);
  const lowerLeft = side(-0.5, -0.5);
  if (lowerLeft === 0) return true;
  const others = [side(0.5, -0.5), side(0.5, 0.5), side(-0.5, 0.5)];
  return others.some((other) => other < 0 !== lowerLeft < 0 && other !== 0);
}

function asNodes(segments: Float64Array): NodedLines {
  const nodes = new NodeTable();
  const from: number[] = [];
  const to: number[] = [];
  for (let i = 0; i < segments.length; i += 4) {
    const a = nodes.idOf(segments[i], segments[i + 1]);
    const b = nodes.idOf(segments[i + 2], segments[i + 3]);
    from.push(a);
    to.push(b);
  }
  return {
    x: Float64Array.from(nodes.x),
    y: Float64Array.from(nodes.y),
    from: Int32Array.from(from),
    to: Int32Array.from(to),
  };
}

/** Numbers for points, by their exact coordinates, in order of first mention. */
class NodeTable {
  readonly x: number[] = [];
  readonly y: number[] = [];
  private readonly columns = new Map<number, Map<number, number>>();

  idOf(x: number, y: number): number {
    let column = this.columns.get(x);
    if (!column) {
      column = new Map();
      this.columns.set(x, column);
    }
    let id = column.get(y);
    if (id === undefined) {
      id = this.x.length;
      column.set(y, id);
      this.x.push(x);
      this.y.push(y);
    }
    return id;
  }
}
