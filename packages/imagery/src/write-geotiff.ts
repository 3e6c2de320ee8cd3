/**
 * Writes a GeoTIFF that is quick to look into: tiled, deflated, with overviews, directories before pixels and coarse
 * pixels before fine ones (OGC 21-026, Cloud Optimized GeoTIFF 1.0). Bytes out; where they go is the caller's business.
 */
import { zlibSync } from 'fflate';
import { type CrsCode, georeferenceFields } from './geo-keys.ts';
import type { GeoTransform } from './georeference.ts';
import { overviewsOf } from './overviews.ts';
import { bandNameFields, GHOST, pictureFields } from './picture-fields.ts';
import { checkRaster, type Raster, sampleTypeOf } from './raster.ts';
import { directorySize, type TiffField, writeDirectory, writeHeader } from './tiff-directory.ts';
import { predictedTile } from './tiff-tile.ts';

export interface GeoTiffOptions {
  readonly transform: GeoTransform;
  readonly crs: CrsCode;
  /** Side of a tile in pixels, a multiple of 16; 256 when absent. */
  readonly tileSize?: number;
  /** False leaves the overviews out. */
  readonly overviews?: boolean;
  readonly nodata?: number;
  /** One name per band: `['red', 'green', 'blue', 'near infrared']`. */
  readonly bandNames?: readonly string[];
  /** The first three bands are red, green, blue; true when absent and there are three bands or more of 8 bits. */
  readonly rgb?: boolean;
  /** A zlib (RFC 1950) compressor to use in place of the built-in one. */
  readonly deflate?: (bytes: Uint8Array) => Uint8Array;
}

const TIFF_LIMIT = 2 ** 32 - 1;

/**
 * A raster as the bytes of a GeoTIFF file, the same bytes for the same input.
 *
 * Whole-number samples are written with horizontal differences, floating-point ones without. Pixel (0, 0) has its outer corner at the
 * transform's origin (PixelIsArea). Overviews average, leaving out `nodata`.
 * @throws RangeError for bands of wrong length, tile sizes that are no multiple of 16, names that do not match the
 * bands, or more than 4 GiB of output; TypeError for bands of different types.
 * @example writeGeoTiff({ width: 1, height: 1, bands: [Uint8Array.of(7)] },
 *   { transform: northUp(0, 0, 1), crs: { epsg: 2236, kind: 'projected' } }) // Uint8Array, starts 0x49 0x49 0x2a 0x00
 */
export function writeGeoTiff(raster: Raster, options: GeoTiffOptions): Uint8Array {
  checkRaster(raster);
  const tileSize = options.tileSize ?? 256;
  if (!Number.isInteger(tileSize) || tileSize < 16 || tileSize % 16 !== 0) {
    throw new RangeError(`writeGeoTiff: expected a tile size that is a multiple of 16, got ${tileSize}`);
  }
  const coarse = options.overviews === false ? [] : overviewsOf(raster, tileSize, options.nodata);
  const levels = [raster, ...coarse].map((level) => compressedTiles(level, tileSize, options.deflate ?? zlib));
  return assembled(levels, options, tileSize);
}

interface Level {
  readonly raster: Raster;
  readonly tiles: readonly Uint8Array[];
}

function zlib(bytes: Uint8Array): Uint8Array {
  return zlibSync(bytes, { level: 9 });
}

function compressedTiles(raster: Raster, tileSize: number, deflate: (bytes: Uint8Array) => Uint8Array): Level {
  const tiles: Uint8Array[] = [];
  for (let top = 0; top < raster.height; top += tileSize) {
    for (let left = 0; left < raster.width; left += tileSize) {
      tiles.push(deflate(predictedTile(raster, left, top, tileSize)));
    }
  }
  return { raster, tiles };
}

function assembled(levels: readonly Level[], options: GeoTiffOptions, tileSize: number): Uint8Array {
  const tiles = levels.map((level) => new Uint32Array(level.tiles.length));
  const fieldSets = levels.map((level, i) => fieldsOf(level, i, options, tileSize, tiles[i]));
  const directoryAt: number[] = [];
  let end = evenAfter(8 + GHOST.length);
  for (const fields of fieldSets) {
    directoryAt.push(end);
    end += directorySize(fields);
  }
  end = placeTiles(levels, tiles, end);

  const bytes = new Uint8Array(end);
  const view = new DataView(bytes.buffer);
  writeHeader(view, directoryAt[0], false);
  for (let i = 0; i < GHOST.length; i++) bytes[8 + i] = GHOST.charCodeAt(i);
  for (const [i, fields] of fieldSets.entries()) writeDirectory(view, directoryAt[i], fields, directoryAt[i + 1] ?? 0);
  for (const [i, level] of levels.entries()) {
    for (const [j, tile] of level.tiles.entries()) writeTile(bytes, view, tiles[i][j], tile);
  }
  return bytes;
}

/** Sets each tile's offset, coarsest level first; every tile has its size before it and its last four bytes after it. */
function placeTiles(levels: readonly Level[], offsets: readonly Uint32Array[], start: number): number {
  let end = start;
  for (let i = levels.length - 1; i >= 0; i--) {
    for (const [j, tile] of levels[i].tiles.entries()) {
      offsets[i][j] = end + 4;
      end += tile.length + 8;
      if (end > TIFF_LIMIT) throw new RangeError('writeGeoTiff: expected at most 4 GiB of compressed pixels, got more');
    }
  }
  return end;
}

function writeTile(bytes: Uint8Array, view: DataView, offset: number, tile: Uint8Array): void {
  view.setUint32(offset - 4, tile.length, true);
  bytes.set(tile, offset);
  bytes.set(tile.subarray(-4), offset + tile.length);
}

function fieldsOf(
  level: Level,
  index: number,
  options: GeoTiffOptions,
  tileSize: number,
  offsets: Uint32Array,
): readonly TiffField[] {
  const { raster, tiles } = level;
  const count = raster.bands.length;
  const type = sampleTypeOf(raster.bands[0]);
  const rgb = options.rgb ?? (count >= 3 && type.bits === 8);
  if (rgb && count < 3) throw new RangeError(`writeGeoTiff: expected three bands or more for colour, got ${count}`);
  const fields = pictureFields({
    width: raster.width,
    height: raster.height,
    tileSize,
    type,
    bandCount: count,
    photometric: rgb ? 2 : 1,
    extraSamples: Array<number>(rgb ? count - 3 : count - 1).fill(0),
    nodata: options.nodata ?? null,
    offsets,
    sizes: tiles.map((tile) => tile.length),
    overview: index > 0,
  });
  if (index > 0) return fields;
  return [...fields, ...georeferenceFields(options.crs, options.transform), ...nameFields(options, count)];
}

function nameFields({ bandNames }: GeoTiffOptions, count: number): readonly TiffField[] {
  if (bandNames === undefined) return [];
  if (bandNames.length === count) return bandNameFields(bandNames);
  throw new RangeError(`writeGeoTiff: expected ${count} band names, got ${bandNames.length}`);
}

function evenAfter(offset: number): number {
  return offset + (offset % 2);
}
