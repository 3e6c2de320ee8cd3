/**
 * Opens a GeoTIFF as counties deliver it and reads windows of it, never the whole image. The geotiff package reads directories
 * and some compressions; where pixels are, what they mean and where they lie on the ground is decided here.
 */
import {
  type CoordinateSystem,
  type CrsFinding,
  equalAreaPlane,
  isCrsFinding,
  type Place,
  resolveCrs,
  signedArea,
} from '@crownfall/geometry';
import type { GeoTIFFImage } from 'geotiff';
import { lightOrAlpha, type RoleReading, rolesByTag } from './band-roles.ts';
import { crsTextOf, type GeoKeys } from './crs-text-of.ts';
import { coarser, type GeoTransform, groundToPixel, pixelToGround } from './georeference.ts';
import { transformFrom } from './georeference-of.ts';
import type { GeoKeyTags, Imagery } from './imagery.ts';
import { type ImageryFinding, imageryFinding } from './imagery-findings.ts';
import { type ImagerySidecars, type OpenLevels, openLevels } from './open-levels.ts';
import { readWindow } from './read-window.ts';
import type { BytesPort } from './source/bytes-port.ts';
import { compressionName, type Directory, UnsupportedEncoding, value } from './tiff/block-layout.ts';
import type { Inflate } from './tiff/decode-block.ts';
import { otherFormat } from './tiff/other-format.ts';
import type { BandRole } from './window.ts';

export interface OpenImageryOptions {
  /** Name in findings. */
  readonly file?: string;
  /** Files beside the image: overviews (`.ovr`), a mask (`.msk`), the text of a world file (`.tfw`), a `.prj`. */
  readonly beside?: ImagerySidecars;
  /** The coordinate system by the user's word; outweighs what the file says. */
  readonly crs?: string;
  /** What the bands show, by the user's word; as many as there are bands. */
  readonly roles?: readonly BandRole[];
  /** Decoded blocks are kept up to this many bytes; 256 MB when absent. */
  readonly cacheBytes?: number;
  /** A zlib (RFC 1950) inflater to use in place of the built-in one. */
  readonly inflate?: Inflate;
}

export interface OpenedImagery {
  /** null when nothing can be read; `findings` then say why and what to do. */
  readonly image: Imagery | null;
  readonly findings: readonly ImageryFinding[];
}

const CACHE_BYTES = 256 * 2 ** 20;
/** Larger pictures need overviews to be looked at as a whole, and tiles to be looked into. */
const LARGE_PIXELS = 4096;

/**
 * Opens an image and reads its directories; pixels only where statistics must tell a band's role.
 *
 * An image without a coordinate system, or with one that is refused (NAD27), opens with `crs` null and the finding that says so;
 * one that nothing places has `placed` false. The findings are errors: its pixels can be looked at, not laid under a map.
 * What is no TIFF, or damaged in its directories, or stored in a way that is not read, gives `image` null.
 *
 * Reads strips and tiles, classic and BigTIFF, either byte order, bands together or apart, 1–32-bit whole numbers and 16-, 32- and
 * 64-bit floats, without compression or with LZW, deflate, PackBits, JPEG, Zstandard or LERC (WebP where the platform decodes it).
 *
 * @throws Error with `cause` when the port fails; RangeError for roles that do not match the bands
 * @example (await openImagery(bytesPort(bytes))).image?.crs?.code // 'EPSG:2236'
 */
export async function openImagery(port: BytesPort, options: OpenImageryOptions = {}): Promise<OpenedImagery> {
  const where: Place = options.file === undefined ? {} : { file: options.file };
  const head = await port.read(0, 16);
  const other = otherFormat(head);
  if (other !== null) {
    return { image: null, findings: [imageryFinding('format-unknown', where, { got: other, valid: 'GeoTIFF' })] };
  }
  let levels: OpenLevels;
  try {
    levels = await openLevels(port, options, options.cacheBytes ?? CACHE_BYTES);
  } catch (cause) {
    return { image: null, findings: [openingFinding(cause, where)] };
  }
  return opened(levels, options, where);
}

function openingFinding(cause: unknown, where: Place): ImageryFinding {
  if (isOutage(cause)) throw cause;
  const problem = cause instanceof Error ? cause.message : String(cause);
  if (cause instanceof UnsupportedEncoding) return imageryFinding('imagery-encoding-unsupported', where, { problem });
  return imageryFinding('file-damaged', where, { format: 'GeoTIFF', problem });
}

/** Errors of the port carry a cause or a system code; those of a damaged file do not. */
function isOutage(cause: unknown): boolean {
  return (
    cause instanceof Error && (cause.cause !== undefined || typeof (cause as { code?: unknown }).code === 'string')
  );
}

async function opened(levels: OpenLevels, options: OpenImageryOptions, where: Place): Promise<OpenedImagery> {
  const findings: ImageryFinding[] = [];
  const [full] = levels.images;
  const { directory, bandCount, format } = levels.pictures[0].layout;
  const place = await placeOf(full, options);
  if (!place.placed) findings.push(imageryFinding('imagery-not-placed', where));
  const crs = crsOf(full, options, where);
  if (isCrsFinding(crs)) findings.push(crs);
  const system = isCrsFinding(crs) ? null : crs;
  const nodata = await nodataOf(directory);
  const frame = {
    width: full.getWidth(),
    height: full.getHeight(),
    bandCount,
    ...place,
    crs: system,
    geoKeys: await geoKeysOf(directory),
    nodata,
    hasMask: levels.masks[0] !== null,
    colourMap: numbers(await value(directory, 'ColorMap')),
    levels: levels.pictures.map(({ layout }) => ({
      width: layout.width,
      height: layout.height,
      transform: coarser(place.transform, full.getWidth() / layout.width, full.getHeight() / layout.height),
    })),
    storage: storageOf(levels),
    pixelM: pixelMetres(full, place, system),
  };
  const roles = await rolesOf(levels, options, { where, wholeNumbers: format !== 3, findings });
  noteSlowness(levels, where, findings);
  return { image: withWays({ ...frame, roles }, levels, where), findings };
}

type Frame = Omit<Imagery, 'pixelToGround' | 'groundToPixel' | 'lonLatToPixel' | 'pixelToLonLat' | 'readWindow'>;

function withWays(frame: Frame, levels: OpenLevels, where: Place): Imagery {
  const { transform, crs } = frame;
  const mapped = (from: ArrayLike<number>, move: (x: number, y: number) => readonly [number, number]) => {
    const out = new Float64Array(from.length - (from.length % 2));
    for (let i = 0; i < out.length; i += 2) [out[i], out[i + 1]] = move(from[i], from[i + 1]);
    return out;
  };
  const nowhere = (from: ArrayLike<number>) => new Float64Array(from.length - (from.length % 2)).fill(Number.NaN);
  return {
    ...frame,
    pixelToGround: (column, row) => pixelToGround(transform, column, row),
    groundToPixel: (x, y) => groundToPixel(transform, x, y),
    lonLatToPixel: (lonLat) =>
      crs ? mapped(crs.fromLonLat(lonLat), (x, y) => groundToPixel(transform, x, y)) : nowhere(lonLat),
    pixelToLonLat: (pixels) =>
      crs ? crs.toLonLat(mapped(pixels, (c, r) => pixelToGround(transform, c, r))) : nowhere(pixels),
    readWindow: (window, options = {}) => readWindow({ levels, frame, where }, window, options),
  };
}

async function placeOf(
  full: GeoTIFFImage,
  { beside }: OpenImageryOptions,
): Promise<{ readonly transform: GeoTransform; readonly placed: boolean }> {
  const directory = full.fileDirectory;
  const stated = transformFrom({
    matrix: numbers(await value(directory, 'ModelTransformation')),
    pixelScale: numbers(await value(directory, 'ModelPixelScale')),
    tiePoints: numbers(await value(directory, 'ModelTiepoint')),
    pixelIsPoint: Number(full.getGeoKeys()?.GTRasterTypeGeoKey ?? 1) === 2,
    worldFile: beside?.worldFile,
  });
  const pixels = { originX: 0, columnX: 1, rowX: 0, originY: 0, columnY: 0, rowY: 1 };
  return { transform: stated ?? pixels, placed: stated !== null };
}

function crsOf(full: GeoTIFFImage, options: OpenImageryOptions, where: Place): CoordinateSystem | CrsFinding {
  const keys = full.getGeoKeys() as GeoKeys | null;
  const own = crsTextOf(keys);
  const crs = resolveCrs(options.crs ?? (own === '' ? options.beside?.prj : own), where);
  const fromParts = options.crs === undefined && own.startsWith('+');
  // A system made from its parts has no name but the one the file gives it.
  return fromParts && !isCrsFinding(crs) ? { ...crs, name: citation(keys) ?? crs.name } : crs;
}

function citation(keys: GeoKeys | null): string | undefined {
  const text = String(keys?.PCSCitationGeoKey ?? keys?.GTCitationGeoKey ?? '')
    .replaceAll('\0', '')
    .replace(/\|$/, '');
  return text === '' || text === 'unknown' || text === 'unnamed' ? undefined : text;
}

/** The ground area of a square of at most 16 × 16 pixels in the middle, by the equal-area plane there. */
function pixelMetres(
  full: GeoTIFFImage,
  { transform }: { transform: GeoTransform },
  crs: CoordinateSystem | null,
): number {
  if (crs === null) return Number.NaN;
  const [column, row] = [full.getWidth() / 2, full.getHeight() / 2];
  const half = Math.min(8, column, row);
  const corners = [
    [-half, -half],
    [half, -half],
    [half, half],
    [-half, half],
  ].flatMap(([x, y]) => pixelToGround(transform, column + x, row + y));
  const lonLat = crs.toLonLat(corners);
  if (!lonLat.every(Number.isFinite)) return Number.NaN;
  return Math.sqrt(Math.abs(signedArea(equalAreaPlane(lonLat).forward(lonLat)))) / (2 * half);
}

async function nodataOf(directory: Directory): Promise<number | null> {
  const text = String((await value(directory, 'GDAL_NODATA')) ?? '')
    .replaceAll('\0', '')
    .trim();
  if (text === '') return null;
  if (/^[-+]?nan$/i.test(text)) return Number.NaN;
  const nodata = Number(text.replace(/^([-+]?)inf(inity)?$/i, '$1Infinity'));
  return Number.isNaN(nodata) ? null : nodata;
}

async function geoKeysOf(directory: Directory): Promise<GeoKeyTags | null> {
  const keys = numbers(await value(directory, 'GeoKeyDirectory'));
  if (keys === null) return null;
  const doubles = numbers(await value(directory, 'GeoDoubleParams')) ?? [];
  return { directory: keys, doubles, ascii: String((await value(directory, 'GeoAsciiParams')) ?? '') };
}

async function rolesOf(
  levels: OpenLevels,
  options: OpenImageryOptions,
  { where, wholeNumbers, findings }: { where: Place; wholeNumbers: boolean; findings: ImageryFinding[] },
): Promise<readonly BandRole[]> {
  const { layout } = levels.pictures[0];
  if (options.roles) {
    if (options.roles.length === layout.bandCount) return options.roles;
    throw new RangeError(`openImagery: expected ${layout.bandCount} band roles, got ${options.roles.length}`);
  }
  const reading = rolesByTag({
    count: layout.bandCount,
    photometric: layout.photometric,
    extraSamples: numbers(await value(layout.directory, 'ExtraSamples')) ?? [],
    metadata: String((await value(layout.directory, 'GDAL_METADATA')) ?? ''),
    wholeNumbers,
  });
  return settled(reading, levels, where, findings);
}

async function settled(
  { roles, doubtful, assumed }: RoleReading,
  levels: OpenLevels,
  where: Place,
  findings: ImageryFinding[],
): Promise<readonly BandRole[]> {
  const out = [...roles];
  for (const band of doubtful) {
    const found = lightOrAlpha(await levels.sampleOf(band));
    if (roles[band] === 'alpha' && found === 'near-infrared') {
      findings.push(imageryFinding('imagery-alpha-is-infrared', where, { band: band + 1 }));
    }
    if (roles[band] === 'near-infrared' || found === 'near-infrared') out[band] = found;
  }
  if (assumed) findings.push(imageryFinding('imagery-roles-assumed', where, { read_as: out.join(', ') }));
  return out;
}

function storageOf({ pictures: [{ layout }] }: OpenLevels): Imagery['storage'] {
  const { tiled, blockWidth, blockHeight } = layout;
  return { compression: compressionName(layout) ?? '', tiled, blockWidth, blockHeight };
}

function noteSlowness({ pictures }: OpenLevels, where: Place, findings: ImageryFinding[]): void {
  const [{ layout }] = pictures;
  if (Math.max(layout.width, layout.height) <= LARGE_PIXELS) return;
  const coarsest = pictures[pictures.length - 1].layout;
  const noOverviews = Math.max(coarsest.width, coarsest.height) > LARGE_PIXELS;
  if (layout.tiled && !noOverviews) return;
  findings.push(imageryFinding('imagery-slow-to-stream', where, { reason: layout.tiled ? 'no-overviews' : 'strips' }));
}

function numbers(given: unknown): readonly number[] | null {
  if (typeof given === 'number') return [given];
  if (given === undefined || given === null || typeof given !== 'object') return null;
  return Array.from(given as ArrayLike<number>, Number);
}
