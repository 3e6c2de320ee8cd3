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
export function pavementInView(grid: PixelGrid, { pavement, ...scene }: ViewRegions): PavementInView {
  return viewOfPavement(grid, scene)(pavement);
}

/** The same for many pieces of pavement in one scene, whose zone and crowns are laid over the grid once. */
export function viewOfPavement(
  grid: PixelGrid,
  { zone, crowns }: Omit<ViewRegions, 'pavement'>,
): (pavement: ViewRegions['pavement']) => PavementInView {
  const within = zone === null ? () => 1 : shareAt(pixelCoverage(zone, grid), grid);
  const covered = shareAt(pixelCoverage(crowns, grid), grid);
  return (pavement) => {
    const paved = pixelCoverage(pavement, grid);
    const pixels: number[] = [];
    const weights: number[] = [];
    let [pavementPixels, visiblePixels] = [0, 0];
    for (let k = 0; k < paved.pixels.length; k++) {
      const p = paved.pixels[k];
      const here = paved.weights[k] * within(p);
      if (here === 0) continue;
      const seen = here * (1 - covered(p));
      pavementPixels += here;
      if (seen <= 0) continue;
      visiblePixels += seen;
      pixels.push(p);
      weights.push(seen);
    }
    const visible = { pixels: Int32Array.from(pixels), weights: Float64Array.from(weights) };
    const visibleShare = pavementPixels > 0 ? visiblePixels / pavementPixels : 0;
    return { visible, pavementPixels, visiblePixels, visibleShare };
  };
}

/**
 * Pavement that a region does not touch: the reference of `pavementTone`, when the region reaches beyond every fallout zone. For
 * many pieces of pavement the region is laid over the grid once.
 */
export function pavementAwayFrom(
  grid: PixelGrid,
  near: readonly Float64Array[],
): (pavement: ViewRegions['pavement']) => PixelCoverage {
  const touched = shareAt(pixelCoverage(near, grid), grid);
  return (pavement) => {
    const { pixels, weights } = pixelCoverage(pavement, grid);
    const kept = Array.from(pixels.keys()).filter((k) => touched(pixels[k]) === 0);
    return { pixels: Int32Array.from(kept, (k) => pixels[k]), weights: Float64Array.from(kept, (k) => weights[k]) };
  };
}

/** A region that covers more than this part of the grid is looked up in a raster, a smaller one in a table. */
const LARGE = 1 / 64;

/** The share of a pixel that is covered. */
function shareAt({ pixels, weights }: PixelCoverage, { width, height }: PixelGrid): (p: number) => number {
  if (pixels.length > LARGE * width * height) {
    const raster = new Float32Array(width * height);
    for (let k = 0; k < pixels.length; k++) raster[pixels[k]] = Math.min(1, weights[k]);
    return (p) => raster[p];
  }
  const table = new Map(Array.from(pixels, (p, k) => [p, Math.min(1, weights[k])]));
  return (p) => table.get(p) ?? 0;
}
