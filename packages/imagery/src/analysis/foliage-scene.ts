/** A window reduced to what an outline needs: where leaves are, and how bright (or high) they are, on cells of useful size. */
import type { Window } from '../window.ts';
import { saturation } from './foliage-histogram.ts';
import { medianOfBins } from './foliage-separation.ts';
import { middleOfCut, otsu } from './otsu.ts';
import { colourBands, hasBand, indexBand, type VegetationIndex } from './vegetation-index.ts';

/** What counts as leaves in an image; found once per image so that its windows agree. */
export interface OutlineThresholds {
  readonly index: VegetationIndex;
  /** Green leaves are at or above this. */
  readonly greenFrom: number;
  /** Browned leaves are at least as saturated as this. */
  readonly leafSaturation: number;
  readonly white: number;
}

/** (A) Otsu's cut is held inside these: a window of nothing but lawn, or of nothing but roofs, has two classes too. */
const GREEN_BETWEEN: Readonly<Partial<Record<VegetationIndex, readonly [number, number]>>> = {
  NDVI: [0.06, 0.25],
  ExG: [0.02, 0.2],
};
const BROWN_SATURATION_SHARE = 0.6;

/** Cells are not smaller than this, m: finer pixels are averaged, which also keeps a window quick. */
const CELL_M = 0.2;
/** Browned pixels are leaves where at least this share of the pixels within `NEAR_M` is green. */
const GREEN_NEARBY = 0.15;
const NEAR_M = 1.25;

export interface FoliageScene {
  readonly width: number;
  readonly height: number;
  /** Pixels a cell spans, and its side in metres. */
  readonly factor: number;
  readonly cellM: number;
  /** 1 where most of the cell is leaves. */
  readonly foliage: Uint8Array;
  /** Smoothed brightness 0–1, or smoothed height in units of 10 m when a height raster is given. */
  readonly surface: Float32Array;
}

/**
 * Thresholds of an image from one window or a coarse overview of it: Otsu's cut of NDVI (of ExG without near infrared).
 * White is 255 for 8 bits, else the greatest sample found.
 */
export function outlineThresholds(window: Window): OutlineThresholds {
  const index: VegetationIndex = hasBand(window, 'near-infrared') ? 'NDVI' : 'ExG';
  const { values, defined } = indexBand(index, window);
  const bins = new Float64Array(400);
  values.forEach((value, i) => {
    if (defined[i] === 1) bins[Math.min(399, Math.max(0, Math.floor((value + 1) * 200)))]++;
  });
  const cut = otsu(bins);
  const [least, most] = GREEN_BETWEEN[index] ?? [0, 1];
  const threshold = cut === null ? least : (middleOfCut(cut) + 0.5) / 200 - 1;
  const greenFrom = Math.min(most, Math.max(least, threshold));
  const { red, green, blue } = colourBands(window);
  const saturations = new Float64Array(100);
  values.forEach((value, i) => {
    if (defined[i] === 0 || value < greenFrom) return;
    saturations[Math.min(99, Math.floor(saturation(red[i], green[i], blue[i]) * 100))]++;
  });
  const leafSaturation = BROWN_SATURATION_SHARE * medianOfBins(saturations);
  return { index, greenFrom, leafSaturation, white: whiteLevel(window) };
}

/** The brightness of white in a window's bands: 255 for 8 bits, else the greatest sample of its colours (1 when all are 0). */
export function whiteLevel(window: Window): number {
  const { red, green, blue } = colourBands(window);
  if (red instanceof Uint8Array) return 255;
  let greatest = 0;
  for (const band of [red, green, blue]) {
    for (let i = 0; i < band.length; i++) if (window.missing[i] === 0 && band[i] > greatest) greatest = band[i];
  }
  return greatest > 0 ? greatest : 1;
}

/**
 * The scene of a window. With a height raster (m above ground, one value per pixel; NaN = unknown) leaves lower than
 * `leafFromM` do not count and the surface is the height.
 */
export function foliageScene(
  window: Window,
  thresholds: OutlineThresholds,
  heights: Float32Array | null,
  leafFromM: number,
): FoliageScene {
  const factor = Math.max(1, Math.floor(CELL_M / window.pixelM + 1e-9));
  const cellM = factor * window.pixelM;
  const width = Math.floor(window.width / factor);
  const height = Math.floor(window.height / factor);
  const green = new Float32Array(width * height);
  const brown = new Float32Array(width * height);
  const surface = new Float32Array(width * height);
  const { values, defined } = indexBand(thresholds.index, window);
  const bands = colourBands(window);
  const share = 1 / (factor * factor);
  for (let row = 0; row < height * factor; row++) {
    for (let column = 0; column < width * factor; column++) {
      const p = row * window.width + column;
      if (defined[p] === 0) continue;
      const cell = Math.floor(row / factor) * width + Math.floor(column / factor);
      const [red, greenBand, blue] = [bands.red[p], bands.green[p], bands.blue[p]];
      const high = heights === null ? 0 : Number.isNaN(heights[p]) ? 0 : heights[p];
      surface[cell] += (heights === null ? (red + greenBand + blue) / 3 / thresholds.white : high / 10) * share;
      if (heights !== null && high < leafFromM) continue;
      if (values[p] >= thresholds.greenFrom) green[cell] += share;
      else if (isBrowned(red, greenBand, blue, thresholds.leafSaturation)) brown[cell] += share;
    }
  }
  const nearPx = Math.max(1, Math.round(NEAR_M / cellM));
  const nearby = blurred(green, width, height, nearPx);
  const leaves = green.map((share, i) => (nearby[i] >= GREEN_NEARBY ? share + brown[i] : share));
  const evened = blurred(leaves, width, height, Math.max(0, Math.round(0.25 / cellM)));
  const foliage = Uint8Array.from(evened, (share) => (share >= 0.5 ? 1 : 0));
  const smooth = Math.max(1, Math.round(0.5 / cellM));
  const twice = blurred(blurred(surface, width, height, smooth), width, height, smooth);
  return { width, height, factor, cellM, foliage, surface: twice };
}

/** Reddish to yellowish, as dry leaves are: red above green above blue. */
function isBrowned(red: number, green: number, blue: number, leafSaturation: number): boolean {
  return red >= green && green > blue && saturation(red, green, blue) >= leafSaturation;
}

/** Mean over a square of side 2r + 1, of what lies inside the raster. */
function blurred(values: Float32Array, width: number, height: number, r: number): Float32Array {
  if (r === 0) return values;
  const across = new Float32Array(values.length);
  for (let row = 0; row < height; row++) slide(values, across, { from: row * width, step: 1, count: width, r });
  const out = new Float32Array(values.length);
  for (let column = 0; column < width; column++) slide(across, out, { from: column, step: width, count: height, r });
  return out;
}

interface Line {
  readonly from: number;
  readonly step: number;
  readonly count: number;
  readonly r: number;
}

function slide(values: Float32Array, out: Float32Array, { from, step, count, r }: Line): void {
  let sum = 0;
  let inside = 0;
  for (let i = -r; i < count; i++) {
    if (i + r < count) {
      sum += values[from + (i + r) * step];
      inside++;
    }
    if (i - r - 1 >= 0) {
      sum -= values[from + (i - r - 1) * step];
      inside--;
    }
    if (i >= 0) out[from + i * step] = sum / inside;
  }
}
