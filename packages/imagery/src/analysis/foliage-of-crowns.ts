/** The leaves of all crowns of an image together: what sound and browned ones are told apart on. */
import type { PixelCoverage } from '@crownfall/geometry';
import { crownWindows } from '../crown/crown-windows.ts';
import type { Imagery, ReadWindow } from '../imagery.ts';
import { addCrowns, emptyFoliageHistogram, type FoliageHistogram } from './foliage-histogram.ts';
import { whiteLevel } from './foliage-scene.ts';
import type { VegetationIndex } from './vegetation-index.ts';

export interface FoliageOfCrowns {
  readonly histogram: FoliageHistogram;
  /** How many crowns lie in it. */
  readonly crowns: number;
}

export interface FoliageOptions {
  readonly index: VegetationIndex;
  /** With more crowns than this in the image, parts spread evenly over it are looked at; all when absent. */
  readonly crownsMost?: number;
  /** Told of every crown looked at. */
  readonly onCrown?: (crown: number, window: ReadWindow, cover: PixelCoverage) => void;
  /** Told how many crowns have been looked at. */
  readonly onProgress?: (crowns: number) => void;
}

/** @param regions in pixel coordinates of the full picture; those that do not lie wholly inside it are passed over */
export async function foliageOfCrowns(
  image: Imagery,
  regions: readonly (readonly Float64Array[])[],
  { index, crownsMost, onCrown, onProgress }: FoliageOptions,
): Promise<FoliageOfCrowns> {
  let histogram: FoliageHistogram | null = null;
  let crowns = 0;
  for await (const { window, crowns: inWindow, covers } of crownWindows(image, regions, crownsMost)) {
    histogram ??= emptyFoliageHistogram(index, whiteLevel(window));
    histogram = addCrowns(histogram, window, covers);
    crowns += inWindow.length;
    for (const [k, crown] of inWindow.entries()) onCrown?.(crown, window, covers[k]);
    onProgress?.(crowns);
  }
  return { histogram: histogram ?? emptyFoliageHistogram(index, 255), crowns };
}
