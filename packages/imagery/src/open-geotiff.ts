/**
 * Opens a GeoTIFF through a port and reads windows of it, never the whole image. Rests on the geotiff package for the
 * formats (strips, tiles, compressions, BigTIFF); this room adds the georeference and its conventions.
 */
import { GeoTIFF, type GeoTIFFImage } from 'geotiff';
import { coarser, type GeoTransform, groundToPixel, pixelToGround } from './georeference.ts';
import { type PixelWindow, type Raster, type SampleArray, WINDOW_PIXELS_MAX } from './raster.ts';
import type { BytesPort } from './source/bytes-port.ts';

export interface GeoTiffLevel {
  readonly width: number;
  readonly height: number;
  readonly transform: GeoTransform;
}

export interface OpenGeoTiff {
  readonly width: number;
  readonly height: number;
  readonly bandCount: number;
  /** From the outer corner of the first pixel, whether the file says PixelIsArea or PixelIsPoint. */
  readonly transform: GeoTransform;
  /** `EPSG:2236`; null when the file names no code (a coordinate system defined by its parts, or none). */
  readonly crs: string | null;
  readonly nodata: number | null;
  /** The full image first, then its overviews from fine to coarse. */
  readonly levels: readonly GeoTiffLevel[];
  readonly pixelToGround: (column: number, row: number) => readonly [x: number, y: number];
  readonly groundToPixel: (x: number, y: number) => readonly [column: number, row: number];
  /** Reads part of a level (0 = full). Samples are as stored. */
  readonly readWindow: (window: PixelWindow, options?: ReadOptions) => Promise<Raster>;
}

export interface ReadOptions {
  readonly level?: number;
  /** Bands wanted, from 0; all when absent. */
  readonly bands?: readonly number[];
}

const USER_DEFINED = 32767;

/**
 * Opens the file and reads its directories, no pixels.
 * @throws Error with `cause` when the port fails or the bytes are no TIFF; RangeError when the file is not georeferenced.
 */
export async function openGeoTiff(port: BytesPort): Promise<OpenGeoTiff> {
  const images = await directories(port);
  const [full] = images;
  const transform = transformOf(full);
  const levels = images.map((image) => ({
    width: image.getWidth(),
    height: image.getHeight(),
    transform: coarser(transform, full.getWidth() / image.getWidth(), full.getHeight() / image.getHeight()),
  }));
  return {
    width: full.getWidth(),
    height: full.getHeight(),
    bandCount: full.getSamplesPerPixel(),
    transform,
    crs: crsOf(full),
    nodata: full.getGDALNoData(),
    levels,
    pixelToGround: (column, row) => pixelToGround(transform, column, row),
    groundToPixel: (x, y) => groundToPixel(transform, x, y),
    readWindow: (window, options = {}) => readWindow(images, window, options),
  };
}

async function directories(port: BytesPort): Promise<readonly GeoTIFFImage[]> {
  const fetchSlice = async ({ offset, length }: Slice) => {
    // Copied: what the port hands over may be a view into something larger (a Node Buffer's own slice is).
    const data = new Uint8Array(await port.read(offset, length)).buffer;
    return { offset, length, data };
  };
  const source = {
    fileSize: port.size,
    fetchSlice,
    fetch: async (slices: Slice[]) => (await Promise.all(slices.map(fetchSlice))).map((slice) => slice.data),
    close: async () => {},
  };
  try {
    const tiff = await GeoTIFF.fromSource(source);
    const count = await tiff.getImageCount();
    const images: GeoTIFFImage[] = [];
    for (let i = 0; i < count; i++) images.push(await tiff.getImage(i));
    // Bit 1 of NewSubfileType marks a reduced image, bit 4 a mask (TIFF 6.0, section 8).
    return images.filter((image, i) => i === 0 || subfileType(image) === 1);
  } catch (cause) {
    throw new Error('openGeoTiff: the bytes could not be read as a TIFF', { cause });
  }
}

interface Slice {
  readonly offset: number;
  readonly length: number;
}

function subfileType(image: GeoTIFFImage): number {
  return Number(image.fileDirectory.getValue('NewSubfileType') ?? 0);
}

function transformOf(image: GeoTIFFImage): GeoTransform {
  const directory = image.fileDirectory;
  const matrix = numbers(directory.getValue('ModelTransformation'));
  const half = image.pixelIsArea() ? 0 : 0.5;
  if (matrix !== null) {
    const [columnX, rowX, , x, columnY, rowY, , y] = matrix;
    return shifted({ originX: x, columnX, rowX, originY: y, columnY, rowY }, half);
  }
  const scale = numbers(directory.getValue('ModelPixelScale'));
  const tie = numbers(directory.getValue('ModelTiepoint'));
  if (scale === null || tie === null) {
    throw new RangeError('openGeoTiff: expected a georeferenced image, got one without tie point and pixel scale');
  }
  const [column, row, , x, y] = tie;
  const t = { originX: x, columnX: scale[0], rowX: 0, originY: y, columnY: 0, rowY: -scale[1] };
  return shifted(shiftedBy(t, column, row), half);
}

/** PixelIsPoint puts the given position into the middle of the pixel; ours is the outer corner. */
function shifted(t: GeoTransform, half: number): GeoTransform {
  return shiftedBy(t, half, half);
}

function shiftedBy(t: GeoTransform, columns: number, rows: number): GeoTransform {
  const [originX, originY] = pixelToGround(t, -columns, -rows);
  return { ...t, originX, originY };
}

function numbers(value: unknown): readonly number[] | null {
  if (value === undefined || value === null || typeof value !== 'object') return null;
  return Array.from(value as ArrayLike<number>, Number);
}

function crsOf(image: GeoTIFFImage): string | null {
  const keys = image.getGeoKeys();
  const code = Number(keys?.ProjectedCSTypeGeoKey ?? keys?.GeographicTypeGeoKey ?? USER_DEFINED);
  return Number.isInteger(code) && code > 0 && code < USER_DEFINED ? `EPSG:${code}` : null;
}

async function readWindow(images: readonly GeoTIFFImage[], window: PixelWindow, options: ReadOptions): Promise<Raster> {
  const level = options.level ?? 0;
  const image = images[level];
  if (image === undefined)
    throw new RangeError(`readWindow: expected a level of 0 to ${images.length - 1}, got ${level}`);
  checkWindow(window, image);
  const { left, top, width, height } = window;
  const wanted = options.bands ?? Array.from({ length: image.getSamplesPerPixel() }, (_, i) => i);
  const samples = [...wanted];
  try {
    const read = await image.readRasters({
      window: [left, top, left + width, top + height],
      samples,
      interleave: false,
    });
    return { width, height, bands: samples.map((_, i) => read[i] as SampleArray) };
  } catch (cause) {
    throw new Error(`readWindow: ${width} × ${height} pixels at ${left}, ${top} could not be read`, { cause });
  }
}

function checkWindow(window: PixelWindow, image: GeoTIFFImage): void {
  const { left, top, width, height } = window;
  const whole = [left, top, width, height].every(Number.isInteger);
  const inside =
    left >= 0 &&
    top >= 0 &&
    width > 0 &&
    height > 0 &&
    left + width <= image.getWidth() &&
    top + height <= image.getHeight();
  if (!whole || !inside) {
    throw new RangeError(
      `readWindow: expected whole pixels inside ${image.getWidth()} × ${image.getHeight()}, got ${width} × ${height} at ${left}, ${top}`,
    );
  }
  if (width * height > WINDOW_PIXELS_MAX) {
    throw new RangeError(`readWindow: expected at most ${WINDOW_PIXELS_MAX} pixels, got ${width * height}`);
  }
}
