/** Windows of an image with the crowns that lie in each: neighbours share a window, so that each part is read about once. */
import { type PixelCoverage, pixelCoverage } from '@crownfall/geometry';
import type { Imagery, ReadWindow } from '../imagery.ts';
import type { PixelWindow } from '../raster.ts';

export interface CrownsInWindow {
  readonly window: ReadWindow;
  /** Positions among the regions given, and the pixels of each. */
  readonly crowns: readonly number[];
  readonly covers: readonly PixelCoverage[];
}

type Region = readonly Float64Array[];

/** Windows are about this wide and high. */
const PART_PIXELS = 1024;

/**
 * @param regions in pixel coordinates of the full picture; those that do not lie wholly inside it are passed over
 * @param crownsMost with more crowns than about this many, windows spread evenly over the image are left out
 */
export async function* crownWindows(
  image: Imagery,
  regions: readonly Region[],
  crownsMost = Infinity,
): AsyncGenerator<CrownsInWindow> {
  for (const { box, crowns } of evenly(parts(image, regions), crownsMost)) {
    const window = await image.readWindow(box);
    const covers = crowns.map((crown) =>
      pixelCoverage(
        regions[crown].map((ring) => ring.map((value, i) => value - (i % 2 === 0 ? box.left : box.top))),
        window,
      ),
    );
    yield { window, crowns, covers };
  }
}

/** Whether every vertex lies in the picture. */
function liesInside({ width, height }: Pick<Imagery, 'width' | 'height'>, region: Region): boolean {
  return (
    region.length > 0 && region.every((ring) => ring.every((v, i) => v >= 0 && v <= (i % 2 === 0 ? width : height)))
  );
}

interface Part {
  readonly box: PixelWindow;
  readonly crowns: readonly number[];
}

function parts(image: Imagery, regions: readonly Region[]): readonly Part[] {
  const groups = new Map<string, number[]>();
  regions.forEach((region, i) => {
    if (!liesInside(image, region)) return;
    const key = `${Math.floor(region[0][1] / PART_PIXELS)} ${Math.floor(region[0][0] / PART_PIXELS)}`;
    const group = groups.get(key);
    if (group) group.push(i);
    else groups.set(key, [i]);
  });
  return [...groups.values()].map((crowns) => ({ crowns, box: boxOf(crowns.map((i) => regions[i])) }));
}

/** So many parts, from one end to the other, that their crowns are about as many as wanted. */
function evenly(all: readonly Part[], crownsMost: number): readonly Part[] {
  const share = crownsMost / all.reduce((sum, { crowns }) => sum + crowns.length, 0);
  return share >= 1 ? all : all.filter((_, i) => Math.floor((i + 1) * share) > Math.floor(i * share));
}

function boxOf(regions: readonly Region[]): PixelWindow {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of regions.flat()) {
    for (let i = 0; i < ring.length; i += 2) {
      left = Math.min(left, Math.floor(ring[i]));
      right = Math.max(right, Math.ceil(ring[i]));
      top = Math.min(top, Math.floor(ring[i + 1]));
      bottom = Math.max(bottom, Math.ceil(ring[i + 1]));
    }
  }
  return { left, top, width: Math.max(1, right - left), height: Math.max(1, bottom - top) };
}
