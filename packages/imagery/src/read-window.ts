/** One window of a level: samples, roles, what is missing and where it lies. */
import type { Place } from '@crownfall/geometry';
import { type GeoTransform, pixelToGround } from './georeference.ts';
import type { Imagery, ReadWindow, WindowOptions } from './imagery.ts';
import { type ImageryFinding, imageryFinding } from './imagery-findings.ts';
import { missingPixels } from './missing-pixels.ts';
import type { OpenLevels } from './open-levels.ts';
import { type PixelWindow, WINDOW_PIXELS_MAX } from './raster.ts';
import type { DamagedBlock } from './tiff/tiff-level.ts';
import type { Samples } from './window.ts';

export interface WindowSource {
  readonly levels: OpenLevels;
  readonly frame: Pick<Imagery, 'levels' | 'roles' | 'nodata' | 'pixelM' | 'bandCount' | 'width' | 'height'>;
  readonly where: Place;
}

export async function readWindow(
  source: WindowSource,
  window: PixelWindow,
  options: WindowOptions,
): Promise<ReadWindow> {
  const { levels, frame } = source;
  const level = options.level ?? 0;
  const wanted = options.bands ?? Array.from({ length: frame.bandCount }, (_, i) => i);
  checkWindow(window, level, wanted, frame);
  const size = frame.levels[level];
  const inside = insideOf(window, size);
  const alpha = frame.roles.indexOf('alpha');
  const read = alpha < 0 || wanted.includes(alpha) ? wanted : [...wanted, alpha];
  const picture = levels.pictures[level];
  const mask = levels.masks[level];
  const [samples, hidden] = inside
    ? await Promise.all([picture.read(inside, read, options.signal), mask?.read(inside, [0], options.signal)])
    : [{ bands: [], damaged: [] }, undefined];
  const damaged = [...samples.damaged, ...(hidden?.damaged ?? [])];
  const parts = inside ? samples.bands : [];
  const missing = inside
    ? missingPixels({
        length: inside.width * inside.height,
        bands: parts.slice(0, wanted.length).filter((_, i) => wanted[i] !== alpha),
        nodata: frame.nodata,
        alpha: alpha < 0 ? undefined : parts[read.indexOf(alpha)],
        mask: hidden?.bands[0],
      })
    : new Uint8Array(0);
  if (inside) markDamaged(missing, inside, damaged);
  const whole = frameOf(window, inside);
  const fill = frame.nodata ?? 0;
  return {
    width: window.width,
    height: window.height,
    bands: wanted.map((_, i) => whole(parts[i] ?? new Float32Array(0), fill)),
    roles: wanted.map((band) => frame.roles[band]),
    missing: whole(missing, 1) as Uint8Array,
    nodata: frame.nodata,
    transform: windowTransform(size.transform, window),
    pixelM: frame.pixelM * Math.sqrt((frame.width / size.width) * (frame.height / size.height)),
    findings: findingsOf(damaged, level, source.where),
  };
}

function checkWindow(
  { left, top, width, height }: PixelWindow,
  level: number,
  bands: readonly number[],
  { levels, bandCount }: WindowSource['frame'],
): void {
  if (levels[level] === undefined) {
    throw new RangeError(`readWindow: expected a level of 0 to ${levels.length - 1}, got ${level}`);
  }
  if (![left, top, width, height].every(Number.isInteger) || width <= 0 || height <= 0) {
    throw new RangeError(`readWindow: expected whole pixels, got ${width} × ${height} at ${left}, ${top}`);
  }
  if (width * height > WINDOW_PIXELS_MAX) {
    throw new RangeError(`readWindow: expected at most ${WINDOW_PIXELS_MAX} pixels, got ${width * height}`);
  }
  const stray = bands.find((band) => !(Number.isInteger(band) && band >= 0 && band < bandCount));
  if (stray !== undefined) throw new RangeError(`readWindow: expected bands of 0 to ${bandCount - 1}, got ${stray}`);
}

function insideOf(window: PixelWindow, size: { readonly width: number; readonly height: number }): PixelWindow | null {
  const left = Math.max(0, window.left);
  const top = Math.max(0, window.top);
  const width = Math.min(size.width, window.left + window.width) - left;
  const height = Math.min(size.height, window.top + window.height) - top;
  return width > 0 && height > 0 ? { left, top, width, height } : null;
}

/** Puts what was read inside the image into the window asked for. */
function frameOf(window: PixelWindow, inside: PixelWindow | null): (part: Samples, fill: number) => Samples {
  if (inside && inside.width === window.width && inside.height === window.height) return (part) => part;
  return (part, fill) => {
    const out = new (part.constructor as new (length: number) => Samples)(window.width * window.height);
    out.fill(fill);
    for (let y = 0; inside && y < inside.height; y++) {
      const row = part.subarray(y * inside.width, (y + 1) * inside.width);
      out.set(row, (inside.top - window.top + y) * window.width + inside.left - window.left);
    }
    return out;
  };
}

function markDamaged(missing: Uint8Array, inside: PixelWindow, damaged: readonly DamagedBlock[]): void {
  for (const block of damaged) {
    const left = Math.max(block.left, inside.left) - inside.left;
    const right = Math.min(block.left + block.width, inside.left + inside.width) - inside.left;
    const bottom = Math.min(block.top + block.height, inside.top + inside.height);
    for (let y = Math.max(block.top, inside.top); y < bottom; y++) {
      const row = (y - inside.top) * inside.width;
      missing.fill(1, row + left, row + right);
    }
  }
}

function findingsOf(damaged: readonly DamagedBlock[], level: number, where: Place): ImageryFinding[] {
  if (damaged.length === 0) return [];
  const [{ left, top, problem }] = damaged;
  const blocks = new Set(damaged.map((block) => `${block.left} ${block.top}`)).size;
  return [imageryFinding('imagery-block-damaged', where, { count: blocks, level, column: left, row: top, problem })];
}

function windowTransform(t: GeoTransform, { left, top }: PixelWindow): GeoTransform {
  const [originX, originY] = pixelToGround(t, left, top);
  return { ...t, originX, originY };
}
