/**
 * What the crowns of an image look like, all together: a joint histogram of a vegetation index, brightness and
 * saturation. Gathered window by window, so an image of any size takes one pass and a few megabytes.
 */

import type { PixelCoverage } from '@crownfall/geometry';
import type { Window } from '../window.ts';
import { colourBands, indexBand, type VegetationIndex } from './vegetation-index.ts';

/** Index from −1 to 1 (beyond, which only VARI near its pole reaches, counted in the end bins). */
export const INDEX_BINS = 200;
export const BRIGHTNESS_BINS = 64;
export const SATURATION_BINS = 50;

export interface FoliageHistogram {
  readonly index: VegetationIndex;
  /** The brightness of white: 255 for 8 bits. */
  readonly white: number;
  /** Pixels (with their shares) by index, brightness, saturation; the last varies fastest. */
  readonly counts: Float64Array;
  /** Pixels without data or without a value of the index. */
  readonly undefinedPixels: number;
}

/** A histogram that holds nothing yet. */
export function emptyFoliageHistogram(index: VegetationIndex, white: number): FoliageHistogram {
  const counts = new Float64Array(INDEX_BINS * BRIGHTNESS_BINS * SATURATION_BINS);
  return { index, white, counts, undefinedPixels: 0 };
}

/** The histogram with the pixels of some crowns of a window added; the counts are added in place. */
export function addCrowns(
  histogram: FoliageHistogram,
  window: Window,
  covers: readonly PixelCoverage[],
): FoliageHistogram {
  const { values, defined } = indexBand(histogram.index, window);
  const { red, green, blue } = colourBands(window);
  let { undefinedPixels } = histogram;
  for (const { pixels, weights } of covers) {
    for (let k = 0; k < pixels.length; k++) {
      const p = pixels[k];
      if (defined[p] === 0) {
        undefinedPixels += weights[k];
        continue;
      }
      const i = binOf((values[p] + 1) / 2, INDEX_BINS);
      const j = binOf((red[p] + green[p] + blue[p]) / 3 / histogram.white, BRIGHTNESS_BINS);
      const s = binOf(saturation(red[p], green[p], blue[p]), SATURATION_BINS);
      histogram.counts[(i * BRIGHTNESS_BINS + j) * SATURATION_BINS + s] += weights[k];
    }
  }
  return { ...histogram, undefinedPixels };
}

/** How far a colour is from grey: (greatest − least) / greatest, 0–1; 0 for black. */
export function saturation(red: number, green: number, blue: number): number {
  const greatest = Math.max(red, green, blue);
  return greatest > 0 ? (greatest - Math.min(red, green, blue)) / greatest : 0;
}

/** Visits each filled bin with the middle of its index, brightness (0–1) and saturation, and what it holds. */
export function forBins(
  { counts }: FoliageHistogram,
  visit: (index: number, brightness: number, saturation: number, count: number) => void,
): void {
  for (let at = 0; at < counts.length; at++) {
    if (counts[at] === 0) continue;
    const s = at % SATURATION_BINS;
    const rest = (at - s) / SATURATION_BINS;
    const j = rest % BRIGHTNESS_BINS;
    const i = (rest - j) / BRIGHTNESS_BINS;
    visit(((i + 0.5) / INDEX_BINS) * 2 - 1, (j + 0.5) / BRIGHTNESS_BINS, (s + 0.5) / SATURATION_BINS, counts[at]);
  }
}

/** The bin of a share 0–1; what lies outside goes into the nearest. */
export function binOf(share: number, bins: number): number {
  return Math.min(bins - 1, Math.max(0, Math.floor(share * bins)));
}
