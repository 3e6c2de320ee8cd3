/** Statistics of many crowns of one image: crowns that lie together share a window, so that each part is read about once. */
import { CoverageWorkspace, type LocalPlane, pixelCoverage, pixelSpans, type Region } from '@crownfall/geometry';
import type { Imagery, ReadWindow } from '../imagery.ts';
import type { ImageryFinding } from '../imagery-findings.ts';
import { type PixelWindow, WINDOW_PIXELS_MAX } from '../raster.ts';
import type { Cancellation } from '../source/bytes-port.ts';
import type { Samples } from '../window.ts';
import type { StatisticsOptions } from './band-statistics.ts';
import { type CrownPixels, type CrownPixelsOptions, pixelsWithin, soundPixels } from './crown-pixels.ts';

export interface CrownsOptions extends StatisticsOptions {
  /** Bands to read, from 0; all when absent. */
  readonly bands?: readonly number[];
  /** Layers to look at in place of the bands read: an index, reckoned on a window at a time. */
  readonly layersOf?: (window: ReadWindow) => readonly Samples[];
  /** Not 0 where a pixel of the window lies in shadow. */
  readonly shadowOf?: (window: ReadWindow) => Uint8Array;
  readonly signal?: Cancellation;
}

export interface CrownReading {
  /** Position among the regions given. */
  readonly crown: number;
  readonly pixels: CrownPixels;
}

export interface CrownsPart {
  readonly crowns: readonly CrownReading[];
  /** Of the window that these crowns share: damaged blocks. */
  readonly findings: readonly ImageryFinding[];
}

/** Windows are about this wide and high; a multiple of usual tile sizes. */
const PART_PIXELS = 1024;

/**
 * Reads the image part by part, rows of parts from the top, and yields the crowns of each; every region comes once, those
 * without a finite vertex or beyond the image included (`area` counts what lies outside the image as missing).
 *
 * @param regions in pixel coordinates of the full picture, as `regionInPixels` gives them
 * @throws RangeError for a region larger than a window may be; what `readWindow` throws
 */
export async function* crownsOfImage(
  image: Imagery,
  regions: readonly (readonly Float64Array[])[],
  options: CrownsOptions = {},
): AsyncGenerator<CrownsPart> {
  const workspace = new CoverageWorkspace();
  for (const { window, crowns } of partsOf(regions)) {
    const read = await image.readWindow(window, {
      ...(options.bands && { bands: options.bands }),
      ...(options.signal && { signal: options.signal }),
    });
    const each = {
      ...options,
      ...(options.layersOf && { layers: options.layersOf(read) }),
      ...(options.shadowOf && { shadow: options.shadowOf(read) }),
    };
    const measure = measureOf(read, each, workspace);
    const readings = crowns.map((crown) => ({ crown, pixels: measure(within(regions[crown], window)) }));
    yield { crowns: readings, findings: read.findings };
  }
}

/** A region of the local plane in pixel coordinates of the image; vertices that the projection does not reach are NaN. */
export function regionInPixels(image: Imagery, plane: LocalPlane, region: Region): Float64Array[] {
  return region.map((ring) => image.lonLatToPixel(plane.inverse(ring)));
}

interface Part {
  readonly window: PixelWindow;
  readonly crowns: number[];
}

interface Box {
  minX: number;
  minY: number;
  maxX: number;
  maxY: number;
}

/** Crowns by the square of 1024 × 1024 pixels that their first corner lies in; the window is what they cover together. */
function partsOf(regions: readonly (readonly Float64Array[])[]): Part[] {
  const squares = new Map<string, { column: number; row: number; box: Box; crowns: number[] }>();
  for (const [crown, region] of regions.entries()) {
    const box = boxOf(region);
    const large = box.maxX - box.minX > PART_PIXELS || box.maxY - box.minY > PART_PIXELS;
    const [column, row] = [Math.floor(box.minX / PART_PIXELS), Math.floor(box.minY / PART_PIXELS)];
    const key = large ? `crown ${crown}` : `${column} ${row}`;
    const square = squares.get(key);
    if (square) {
      widen(square.box, box);
      square.crowns.push(crown);
    } else squares.set(key, { column, row, box, crowns: [crown] });
  }
  const inOrder = [...squares.values()].sort((a, b) => a.row - b.row || a.column - b.column);
  return inOrder.map(({ box, crowns }) => ({ window: windowOf(box), crowns }));
}

function boxOf(region: readonly Float64Array[]): Box {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const ring of region) {
    for (let i = 0; i < ring.length; i += 2) {
      const [x, y] = [ring[i], ring[i + 1]];
      if (Number.isFinite(x) && Number.isFinite(y)) widen(box, { minX: x, minY: y, maxX: x, maxY: y });
    }
  }
  return box.minX <= box.maxX ? box : { minX: 0, minY: 0, maxX: 1, maxY: 1 };
}

function widen(box: Box, by: Readonly<Box>): void {
  box.minX = Math.min(box.minX, by.minX);
  box.minY = Math.min(box.minY, by.minY);
  box.maxX = Math.max(box.maxX, by.maxX);
  box.maxY = Math.max(box.maxY, by.maxY);
}

function windowOf({ minX, minY, maxX, maxY }: Box): PixelWindow {
  const [left, top] = [Math.floor(minX), Math.floor(minY)];
  const [width, height] = [Math.max(1, Math.ceil(maxX) - left), Math.max(1, Math.ceil(maxY) - top)];
  if (width * height > WINDOW_PIXELS_MAX) {
    throw new RangeError(
      `crownsOfImage: expected crowns of at most ${WINDOW_PIXELS_MAX} pixels, got ${width} × ${height}`,
    );
  }
  return { left, top, width, height };
}

/** The way to measure a region of this window: by runs where nothing is missing or in shadow and samples are bytes. */
function measureOf(
  window: ReadWindow,
  options: CrownPixelsOptions,
  workspace: CoverageWorkspace,
): (region: readonly Float64Array[]) => CrownPixels {
  const layers = options.layers ?? window.bands;
  const size = window.width * window.height;
  const sound = layers.every((layer) => layer instanceof Uint8Array && layer.length === size);
  if (!sound || options.shadow !== undefined || window.missing.includes(1)) {
    return (region) => pixelsWithin(window, pixelCoverage(region, window, workspace), options);
  }
  return (region) => soundPixels(layers as readonly Uint8Array[], pixelSpans(region, window, workspace), options);
}

/** The region in the window's own pixel coordinates. */
function within(region: readonly Float64Array[], { left, top }: PixelWindow): Float64Array[] {
  return region.map((ring) => {
    const out = new Float64Array(ring.length);
    for (let i = 0; i + 1 < ring.length; i += 2) {
      out[i] = ring[i] - left;
      out[i + 1] = ring[i + 1] - top;
    }
    return out;
  });
}
