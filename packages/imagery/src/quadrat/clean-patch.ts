/** What the pavement looks like where it is clean; refused when the marked patch cannot be that. */
import { lightnessOfLight } from '../analysis/cielab.ts';
import { coolnessOf, luminanceOf } from './cell-light.ts';
import { type Homography, inverseOf, projected } from './homography.ts';
import type { Photo, PhotoPoint } from './photo.ts';
import { type GroundCells, groundCells } from './rectify.ts';

export interface CleanPatch {
  readonly known: true;
  /** Median L* of its cells, and their spread (1.4826 × median absolute deviation). */
  readonly lightness: number;
  readonly spread: number;
  readonly luminance: number;
  readonly coolness: number;
  /** Medians of its red, green and blue light. */
  readonly colour: readonly [red: number, green: number, blue: number];
  /** ln of every cell's luminance over the median's. */
  readonly logLight: Float64Array;
  /** Share of its cells that lie in dark lines from side to side: joints. */
  readonly jointShare: number;
}

export interface PatchRefused {
  readonly known: false;
  readonly because: 'patch-outside' | 'patch-too-small' | 'patch-too-dark' | 'patch-clipped' | 'patch-varied';
}

/** (A) Fewer cells, or photo pixels, do not show the surface. */
const LEAST = { cells: 150, pixels: 600 } as const;
/** (A) Below, noise and the camera's curve rule. */
const DARKEST_L = 22;
/** (A) Shares of the patch at the end of the sensor's scale, and in dark spots that are no joints. */
const MOST = { clipped: 0.02, spots: 0.04, joints: 0.2 } as const;
/** (A) The surface's own scatter at the size of a cell. */
const MOST_SPREAD_L = 5.7;
/** More cells a side than this are not looked at: the patch is sampled more coarsely. */
const MOST_CELLS = 400;

/** Reads the patch in cells of the quadrat's own size, since texture fades as cells grow. */
export function cleanPatch(
  photo: Photo,
  map: Homography,
  ring: readonly PhotoPoint[],
  cellM: number,
): CleanPatch | PatchRefused {
  const inside = ring.every(([u, v]) => u >= 0 && v >= 0 && u <= photo.width && v <= photo.height);
  const back = inverseOf(map);
  const ground = ring.map(([u, v]) => projected(back, u, v));
  if (ring.length < 3 || !inside || ground.some(([, , w]) => !(w > 0))) return refused('patch-outside');
  if (Math.abs(areaOf(ring)) < LEAST.pixels) return refused('patch-too-small');
  const [xs, ys] = [ground.map(([x]) => x), ground.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - top].map((sideM) => Math.floor(sideM / cellM));
  if (Math.min(width, height) < 4) return refused('patch-too-small');
  if (Math.max(width, height) > MOST_CELLS) return refused('patch-outside');
  const cells = groundCells(photo, map, { width, height, left, top, cellM });
  const own = new Uint8Array(width * height);
  for (let p = 0; p < own.length; p++) {
    const [x, y] = [left + ((p % width) + 0.5) * cellM, top + (Math.floor(p / width) + 0.5) * cellM];
    if (isInside(ground, x, y) && !Number.isNaN(cells.red[p])) own[p] = 1;
  }
  return judged(cells, own);
}

function judged(cells: GroundCells, own: Uint8Array): CleanPatch | PatchRefused {
  const at = Array.from(own.keys()).filter((p) => own[p] === 1);
  if (at.length < LEAST.cells) return refused('patch-too-small');
  if (at.filter((p) => cells.clipped[p] === 1).length > MOST.clipped * at.length) return refused('patch-clipped');
  const lightnesses = cells.red.map((red, p) => lightnessOfLight(red, cells.green[p], cells.blue[p]));
  const sorted = Float64Array.from(at, (p) => lightnesses[p]).sort();
  const lightness = middle(sorted);
  const spread = 1.4826 * middle(sorted.map((value) => Math.abs(value - lightness)).sort());
  if (lightness < DARKEST_L) return refused('patch-too-dark');
  const { joints, spots } = darkParts(lightnesses, own, cells.width, lightness - Math.max(8, 3 * spread));
  const tooVaried = spread > MOST_SPREAD_L || spots > MOST.spots * at.length || joints > MOST.joints * at.length;
  if (tooVaried) return refused('patch-varied');
  const tones = at.map((p) => [cells.red[p], cells.green[p], cells.blue[p]] as const);
  const medianOf = (of: (r: number, g: number, b: number) => number): number =>
    middle(Float64Array.from(tones, ([r, g, b]) => of(r, g, b)).sort());
  const luminance = medianOf(luminanceOf);
  return {
    known: true,
    lightness,
    spread,
    luminance,
    logLight: Float64Array.from(tones, ([r, g, b]) => Math.log(luminanceOf(r, g, b) / luminance)),
    coolness: medianOf(coolnessOf),
    colour: [medianOf((r) => r), medianOf((_, g) => g), medianOf((_, __, b) => b)],
    jointShare: joints / at.length,
  };
}

/**
 * Dark cells that hang together: those that reach across most of the patch are joints between pavers, the others spots.
 */
function darkParts(
  lightnesses: Float32Array,
  own: Uint8Array,
  width: number,
  below: number,
): { joints: number; spots: number } {
  const height = own.length / width;
  const open = own.map((mine, p) => (mine === 1 && lightnesses[p] < below ? 1 : 0));
  let [joints, spots] = [0, 0];
  for (let first = 0; first < open.length; first++) {
    if (open[first] === 0) continue;
    const part = [first];
    open[first] = 0;
    let [west, east, north, south] = [width, 0, height, 0];
    for (let k = 0; k < part.length; k++) {
      const [c, r] = [part[k] % width, Math.floor(part[k] / width)];
      [west, east, north, south] = [Math.min(west, c), Math.max(east, c), Math.min(north, r), Math.max(south, r)];
      for (let j = 0; j < 9; j++) {
        const [column, row] = [c + (j % 3) - 1, r + Math.floor(j / 3) - 1];
        const p = row * width + column;
        if (column < 0 || row < 0 || column >= width || row >= height || open[p] === 0) continue;
        open[p] = 0;
        part.push(p);
      }
    }
    const reach = Math.hypot(east - west, south - north);
    if (reach >= 0.5 * Math.min(width, height)) joints += part.length;
    else spots += part.length;
  }
  return { joints, spots };
}

function isInside(ring: readonly (readonly [number, number, number])[], x: number, y: number): boolean {
  let inside = false;
  for (let k = 0; k < ring.length; k++) {
    const [[ax, ay], [bx, by]] = [ring[k], ring[(k + 1) % ring.length]];
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  }
  return inside;
}

function areaOf(ring: readonly PhotoPoint[]): number {
  return ring.reduce((sum, [x, y], k) => {
    const [nx, ny] = ring[(k + 1) % ring.length];
    return sum + (x * ny - nx * y) / 2;
  }, 0);
}

function middle(sorted: Float64Array): number {
  return sorted[(sorted.length - 1) >> 1];
}

function refused(because: PatchRefused['because']): PatchRefused {
  return { known: false, because };
}
