/** How large a map can be drawn: the round scale that fits, and the middle of what is shown. */
import type { Region } from '@crownfall/geometry';
import type { Frame } from './drawing.ts';

/** Scales that a ruler in the field can be laid to. */
const SCALES = [
  100, 200, 250, 400, 500, 750, 1000, 1250, 1500, 2000, 2500, 3000, 4000, 5000, 7500, 10_000, 15_000, 20_000, 25_000,
  50_000, 100_000, 250_000, 500_000, 1_000_000,
];

export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The box about all rings, m. @throws RangeError when there is no vertex. */
export function boundsOf(regions: readonly Region[]): Bounds {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of regions.flat()) {
    for (let i = 0; i + 1 < ring.length; i += 2) {
      minX = Math.min(minX, ring[i]);
      maxX = Math.max(maxX, ring[i]);
      minY = Math.min(minY, ring[i + 1]);
      maxY = Math.max(maxY, ring[i + 1]);
    }
  }
  if (!(maxX >= minX)) throw new RangeError('map: expected something with an extent to draw, got nothing');
  return { minX, minY, maxX, maxY };
}

/**
 * The largest round scale at which the bounds and a margin (metres) fit into the frame; the smallest known when none does.
 * @example fittingScale({ minX: 0, minY: 0, maxX: 90, maxY: 50 }, { leftMm: 0, topMm: 0, widthMm: 200, heightMm: 200 }, 5) // 500
 */
export function fittingScale(bounds: Bounds, frame: Frame, marginM: number): number {
  const across = (bounds.maxX - bounds.minX + 2 * marginM) / (frame.widthMm / 1000);
  const up = (bounds.maxY - bounds.minY + 2 * marginM) / (frame.heightMm / 1000);
  const needed = Math.max(across, up);
  return SCALES.find((scale) => scale >= needed) ?? SCALES[SCALES.length - 1];
}

/** The largest scale to two digits at which the bounds fit into the frame with a little air: for maps that are only read. */
export function closeScale(bounds: Bounds, frame: Frame): number {
  const across = (bounds.maxX - bounds.minX) / (frame.widthMm / 1000);
  const up = (bounds.maxY - bounds.minY) / (frame.heightMm / 1000);
  const needed = Math.max(across, up) * 1.04;
  const step = 10 ** (Math.floor(Math.log10(needed)) - 1);
  return Math.ceil(needed / step) * step;
}

export function middleOf(bounds: Bounds): { readonly x: number; readonly y: number } {
  return { x: (bounds.minX + bounds.maxX) / 2, y: (bounds.minY + bounds.maxY) / 2 };
}

/** What of the ground a frame about `centre` shows, m. */
export function shownBounds(
  centre: { readonly x: number; readonly y: number },
  frame: Pick<Frame, 'widthMm' | 'heightMm'>,
  scale: number,
): Bounds {
  const halfX = (frame.widthMm * scale) / 2000;
  const halfY = (frame.heightMm * scale) / 2000;
  return { minX: centre.x - halfX, maxX: centre.x + halfX, minY: centre.y - halfY, maxY: centre.y + halfY };
}

/** Whether the box about a region has anything in common with the bounds. */
export function meets(region: Region, shown: Bounds): boolean {
  if (region.length === 0) return false;
  const own = boundsOf([region]);
  return own.minX < shown.maxX && own.maxX > shown.minX && own.minY < shown.maxY && own.maxY > shown.minY;
}
