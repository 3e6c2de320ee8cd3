/** Which part of a fallout zone's pavement an aerial image can show at all: what no crown covers. */

import type { PixelGrid } from '@crownfall/geometry';
import { type PixelCoverage, pixelCoverage } from '@crownfall/geometry';

export interface PavementInView {
  /** Pavement of the zone under no crown. */
  readonly visible: PixelCoverage;
  /** All pavement of the zone, pixels. */
  readonly pavementPixels: number;
  readonly visiblePixels: number;
  /** Visible over all, 0–1; 0 without pavement. */
  readonly visibleShare: number;
}

/** Regions in pixel coordinates of the window, flat rings as `pixelCoverage` takes them. */
export interface ViewRegions {
  readonly pavement: readonly Float64Array[];
  /** The fallout zone; null stands for everywhere. */
  readonly zone: readonly Float64Array[] | null;
  /** Every crown's outline, not only that of the zone's own tree. */
  readonly crowns: readonly Float64Array[];
}

/**
 * The pavement of a zone and what of it is in view. Shares of pixels are multiplied (pavement · zone · (1 − crowns)), which
 * is exact but in pixels that two of the outlines cross.
 */
export function pavementInView(grid: PixelGrid, { pavement, zone, crowns }: ViewRegions): PavementInView {
  const paved = pixelCoverage(pavement, grid);
  const within = zone === null ? null : shareByPixel(pixelCoverage(zone, grid));
  const covered = shareByPixel(pixelCoverage(crowns, grid));
  const pixels: number[] = [];
  const weights: number[] = [];
  let [pavementPixels, visiblePixels] = [0, 0];
  for (let k = 0; k < paved.pixels.length; k++) {
    const p = paved.pixels[k];
    const here = paved.weights[k] * (within === null ? 1 : (within.get(p) ?? 0));
    if (here === 0) continue;
    const seen = here * (1 - (covered.get(p) ?? 0));
    pavementPixels += here;
    if (seen <= 0) continue;
    visiblePixels += seen;
    pixels.push(p);
    weights.push(seen);
  }
  const visible = { pixels: Int32Array.from(pixels), weights: Float64Array.from(weights) };
  return {
    visible,
    pavementPixels,
    visiblePixels,
    visibleShare: pavementPixels > 0 ? visiblePixels / pavementPixels : 0,
  };
}

function shareByPixel({ pixels, weights }: PixelCoverage): ReadonlyMap<number, number> {
  return new Map(Array.from(pixels, (p, k) => [p, Math.min(1, weights[k])]));
}
