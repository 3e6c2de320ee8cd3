/** What an image shows inside one crown: its pixels by the share of each that lies inside the outline. */
import { type PixelCoverage, type PixelSpans, pixelCoverage } from '@crownfall/geometry';
import type { Samples, Window } from '../window.ts';
import { type BandStatistics, bandStatistics, byteStatistics, type StatisticsOptions } from './band-statistics.ts';

export interface CrownPixelsOptions extends StatisticsOptions {
  /** Bands or indices to look at, each as large as the window; the window's own bands when absent. */
  readonly layers?: readonly Samples[];
  /** Not 0 where a pixel lies in shadow. */
  readonly shadow?: Uint8Array;
}

export interface CrownPixels {
  /** The outline's area within the window, in pixels. */
  readonly area: number;
  /** Share of that area without data. */
  readonly missingShare: number;
  /** Share of that area in shadow, where there is data. */
  readonly shadowShare: number;
  /** One per layer, over pixels that have data and are not in shadow. */
  readonly layers: readonly BandStatistics[];
}

/**
 * Statistics of the pixels inside a region given in the window's own pixel coordinates.
 *
 * A region without area in the window gives `area` 0, shares of NaN and statistics of NaN.
 * @throws RangeError for layers or a shadow mask of another size than the window
 */
export function crownPixels(
  window: Window,
  region: readonly Float64Array[],
  options: CrownPixelsOptions = {},
): CrownPixels {
  return pixelsWithin(window, pixelCoverage(region, window), options);
}

/** The same for pixels and shares that are known already. */
export function pixelsWithin(window: Window, cover: PixelCoverage, options: CrownPixelsOptions = {}): CrownPixels {
  const layers = options.layers ?? window.bands;
  const pixels = window.width * window.height;
  for (const layer of [...layers, ...(options.shadow ? [options.shadow] : [])]) {
    if (layer.length !== pixels) {
      throw new RangeError(`crownPixels: expected a layer of ${pixels} samples, got ${layer.length}`);
    }
  }
  const { area, missing, shaded, lit } = sorted(window.missing, cover, options.shadow);
  return {
    area,
    missingShare: missing / area,
    shadowShare: shaded / area,
    layers: layers.map((layer) => bandStatistics(layer, cover.pixels, lit, options)),
  };
}

/** The same for a window without gaps or shadow, 8-bit layers and pixels as runs: by far the quickest. */
export function soundPixels(
  layers: readonly Uint8Array[],
  cover: PixelSpans,
  options: StatisticsOptions = {},
): CrownPixels {
  let area = 0;
  for (let s = 0; s < cover.spans.length; s += 2) area += cover.spans[s + 1] - cover.spans[s];
  for (let i = 0; i < cover.weights.length; i++) area += cover.weights[i];
  return {
    area,
    missingShare: 0 / area,
    shadowShare: 0 / area,
    layers: layers.map((layer) => byteStatistics(layer, cover, options)),
  };
}

interface SortedPixels {
  readonly area: number;
  readonly missing: number;
  readonly shaded: number;
  /** The weights, 0 for pixels that are missing or shaded. */
  readonly lit: Float64Array;
}

function sorted(missing: Uint8Array, { pixels, weights }: PixelCoverage, shadow: Uint8Array | undefined): SortedPixels {
  // Most crowns have neither gaps nor a shadow mask: their weights are used as they are.
  let lit = weights;
  let [area, gone, shaded] = [0, 0, 0];
  for (let i = 0; i < pixels.length; i++) {
    const weight = weights[i];
    area += weight;
    const isMissing = missing[pixels[i]] !== 0;
    if (!isMissing && (shadow === undefined || shadow[pixels[i]] === 0)) continue;
    if (isMissing) gone += weight;
    else shaded += weight;
    if (lit === weights) lit = new Float64Array(weights);
    lit[i] = 0;
  }
  return { area, missing: gone, shaded, lit };
}
