/**
 * The share of each pixel of a grid that lies inside a region, exact but for rounding: no sampling, no test of centres.
 *
 * Green's theorem, pixel by pixel, as in accumulation buffers for rendering outlines (R. Levien, "How the fastest font renderer
 * in the world works", 2016; from memory): an edge adds, in each row, the height it spans to all pixels on its right, and to the
 * pixel it passes through the part of that height to its own right. Sums from the left then give the covered shares.
 */
import { cleanRegion } from '../offset/clean-region.ts';
import { accumulateEdges } from './accumulate-edges.ts';
import { windingOf } from './ring-windings.ts';

/** Pixels `[0, width) × [0, height)`, pixel (0, 0) covering [0, 1) × [0, 1), rows downwards. */
export interface PixelGrid {
  readonly width: number;
  readonly height: number;
}

export interface PixelCoverage {
  /** Positions in the grid, `row · width + column`, ascending. */
  readonly pixels: Int32Array;
  /** Share of each of them inside the region, above 0 and at most 1. */
  readonly weights: Float64Array;
}

/** Shares nearer than this to 0 or 1 are rounding: ten thousand times the step of a double at 1. */
const ROUNDING = 1e-12;
/** Arrays that one coverage after another is reckoned in, for whoever reckons many. */
export class CoverageWorkspace {
  private changes = new Float64Array(0);
  private pixels = new Int32Array(0);
  private weights = new Float64Array(0);
  private spans = new Int32Array(0);

  /** Zeros. */
  changesOf(length: number): Float64Array {
    if (this.changes.length < length) this.changes = new Float64Array(length);
    else this.changes.fill(0, 0, length);
    return this.changes;
  }

  roomFor(length: number): { readonly pixels: Int32Array; readonly weights: Float64Array; readonly spans: Int32Array } {
    if (this.pixels.length < length) {
      this.pixels = new Int32Array(length);
      this.weights = new Float64Array(length);
      // Runs have a pixel between them: two numbers for every second pixel, and one run more.
      this.spans = new Int32Array(length + 2);
    }
    return { pixels: this.pixels, weights: this.weights, spans: this.spans };
  }
}

/** Steps per pixel that rings in contact are cleaned at: 2⁻³⁰ pixel, far below what a polygon's own vertices mean. */
const CLEANING_SCALE = 2 ** 10;
/** `cleanRegion` keeps whole numbers of 2⁻²⁰ exact up to here. */
const CLEANING_REACH = 2 ** 26;

/**
 * Covered shares of a region given in pixel coordinates (rings flat and open, either orientation), under the non-zero winding
 * rule; parts outside the grid are left out. `Σ weights` is the region's area in pixels, to 1e-12 relative for rings apart;
 * where rings cross, touch or nest so that they would count twice, their vertices first move by up to 2⁻³⁰ pixel.
 * Vertices that are not finite are skipped; an empty region, or one off the grid, gives no pixels.
 *
 * With a workspace of one's own, arrays are used again: what is returned then holds until the next call with it.
 *
 * @throws RangeError when the grid is not of whole, non-negative size
 * @example pixelCoverage([Float64Array.of(0.5, 0, 2, 0, 2, 1, 0.5, 1)], { width: 4, height: 1 })
 *   // pixels [0, 1], weights [0.5, 1]
 */
export function pixelCoverage(
  region: readonly Float64Array[],
  grid: PixelGrid,
  workspace: CoverageWorkspace = new CoverageWorkspace(),
): PixelCoverage {
  const shares = sharesOf(region, grid, workspace);
  if (!shares) return { pixels: new Int32Array(0), weights: new Float64Array(0) };
  return gathered(shares, grid.width, workspace);
}

/** Covered shares with runs of whole pixels put together; quicker to go through for large regions. */
export interface PixelSpans {
  /** Pixels that are partly covered, as in `PixelCoverage`. */
  readonly pixels: Int32Array;
  readonly weights: Float64Array;
  /** Runs of pixels that are covered wholly: `[first, end)`, `[first, end)`, … */
  readonly spans: Int32Array;
}

/** The same as `pixelCoverage`, as runs and partly covered pixels. */
export function pixelSpans(
  region: readonly Float64Array[],
  grid: PixelGrid,
  workspace: CoverageWorkspace = new CoverageWorkspace(),
): PixelSpans {
  const shares = sharesOf(region, grid, workspace);
  const none = new Int32Array(0);
  if (!shares) return { pixels: none, weights: new Float64Array(0), spans: none };
  return gatheredSpans(shares, grid.width, workspace);
}

interface Shares {
  readonly changes: Float64Array;
  /** 1 or −1: what the changes must be multiplied with. */
  readonly sign: number;
  readonly box: PixelBox;
}

function sharesOf(region: readonly Float64Array[], grid: PixelGrid, workspace: CoverageWorkspace): Shares | null {
  if (!(Number.isInteger(grid.width) && Number.isInteger(grid.height) && grid.width >= 0 && grid.height >= 0)) {
    throw new RangeError(`pixelCoverage: expected a whole width and height, got ${grid.width} × ${grid.height}`);
  }
  const box = boxInside(region, grid);
  if (!box) return null;
  const rings = region.map((ring) => moved(ring, box)).filter((ring) => ring.length >= 6);
  const winding = windingOf(rings);
  const changes = workspace.changesOf((box.width + 1) * box.height);
  accumulateEdges(winding === 0 ? cleaned(rings) : rings, box.width, box.height, changes);
  // The left side of a ring of positive area is walked with y falling.
  return { changes, sign: winding === -1 ? 1 : -1, box };
}

/** Rows and columns of the grid that the region may touch. */
interface PixelBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

function boxInside(region: readonly Float64Array[], grid: PixelGrid): PixelBox | null {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of region) {
    for (let i = 0; i < ring.length; i += 2) {
      const x = ring[i];
      const y = ring[i + 1];
      if (!Number.isFinite(x) || !Number.isFinite(y)) continue;
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
  }
  const left = Math.max(0, Math.floor(minX));
  const top = Math.max(0, Math.floor(minY));
  const width = Math.min(grid.width, Math.ceil(maxX)) - left;
  const height = Math.min(grid.height, Math.ceil(maxY)) - top;
  return width > 0 && height > 0 ? { left, top, width, height } : null;
}

/** The ring about the box's corner, without vertices that are not finite. */
function moved(ring: Float64Array, { left, top }: PixelBox): Float64Array {
  const out = new Float64Array(ring.length - (ring.length % 2));
  let n = 0;
  for (let i = 0; i < out.length; i += 2) {
    if (!Number.isFinite(ring[i]) || !Number.isFinite(ring[i + 1])) continue;
    out[n++] = ring[i] - left;
    out[n++] = ring[i + 1] - top;
  }
  return n === out.length ? out : out.subarray(0, n);
}

function cleaned(rings: readonly Float64Array[]): readonly Float64Array[] {
  let largest = 1;
  for (const ring of rings) for (const value of ring) largest = Math.max(largest, Math.abs(value));
  const scale = Math.min(CLEANING_SCALE, 2 ** Math.floor(Math.log2(CLEANING_REACH / largest)));
  const times = (factor: number) => (ring: Float64Array) => ring.map((value) => value * factor);
  return cleanRegion(rings.map(times(scale))).map(times(1 / scale));
}

function gathered({ changes, sign, box }: Shares, gridWidth: number, workspace: CoverageWorkspace): PixelCoverage {
  const { left, top, width, height } = box;
  const { pixels, weights } = workspace.roomFor(width * height);
  let n = 0;
  for (let row = 0; row < height; row++) {
    let share = 0;
    for (let column = 0, at = row * (width + 1); column < width; column++, at++) {
      share += changes[at];
      const inside = sign * share;
      if (inside < ROUNDING) continue;
      pixels[n] = (top + row) * gridWidth + left + column;
      weights[n++] = inside > 1 - ROUNDING ? 1 : inside;
    }
  }
  return { pixels: pixels.subarray(0, n), weights: weights.subarray(0, n) };
}

function gatheredSpans({ changes, sign, box }: Shares, gridWidth: number, workspace: CoverageWorkspace): PixelSpans {
  const { left, top, width, height } = box;
  const { pixels, weights, spans } = workspace.roomFor(width * height);
  let n = 0;
  let s = 0;
  for (let row = 0; row < height; row++) {
    const first = (top + row) * gridWidth + left;
    let share = 0;
    let start = -1;
    for (let column = 0, at = row * (width + 1); column < width; column++, at++) {
      share += changes[at];
      const inside = sign * share;
      if (inside > 1 - ROUNDING) {
        if (start < 0) start = column;
        continue;
      }
      if (start >= 0) {
        spans[s++] = first + start;
        spans[s++] = first + column;
        start = -1;
      }
      if (inside < ROUNDING) continue;
      pixels[n] = first + column;
      weights[n++] = inside;
    }
    if (start >= 0) {
      spans[s++] = first + start;
      spans[s++] = first + width;
    }
  }
  return { pixels: pixels.subarray(0, n), weights: weights.subarray(0, n), spans: spans.subarray(0, s) };
}
