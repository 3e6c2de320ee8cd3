/**
 * Writes a GeoTIFF that is quick to look into: tiled, deflated, with overviews, directories before pixels and coarse
 * pixels before fine ones (OGC 21-026, Cloud Optimized GeoTIFF 1.0). Bytes out; where they go is the caller's business.
 */
import { zlibSync } from 'fflate';
import { type CrsCode, georeferenceFields } from './geo-keys.ts';
import type { GeoTransform } from './georeference.ts';
import { overviewsOf } from './overviews.ts';
import { checkRaster, type Raster, sampleTypeOf } from './raster.ts';
import { directorySize, type TiffField, writeDirectory } from './tiff-directory.ts';
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
/** Before the first directory: says in words how the file is laid out (GDAL's COG driver page, "Header ghost area"). */
const LAYOUT_LINES =
  'LAYOUT=IFDS_BEFORE_DATA\nBLOCK_ORDER=ROW_MAJOR\nBLOCK_LEADER=SIZE_AS_UINT4\n' +
  'BLOCK_TRAILER=LAST_4_BYTES_REPEATED\nKNOWN_INCOMPATIBLE_EDITION=NO\n ';
const GHOST = `GDAL_STRUCTURAL_METADATA_SIZE=${String(LAYOUT_LINES.length).padStart(6, '0')} bytes\n${LAYOUT_LINES}`;

/**
 * A raster as the bytes of a GeoTIFF file, the same bytes for the same input.
 *
 * Samples may be uint8, uint16, int16 (horizontal predictor) or float32 (none). Pixel (0, 0) has its outer corner at the
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
  bytes.set([0x49, 0x49, 42, 0]);
  view.setUint32(4, directoryAt[0], true);
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
  const extra = rgb ? count - 3 : count - 1;
  const short = (tag: number, ...value: number[]): TiffField => ({ tag, type: 'short', value });
  const fields: TiffField[] = [
    { tag: 254, type: 'long', value: [index === 0 ? 0 : 1] },
    { tag: 256, type: 'long', value: [raster.width] },
    { tag: 257, type: 'long', value: [raster.height] },
    short(258, ...Array<number>(count).fill(type.bits)),
    short(259, 8),
    short(262, rgb ? 2 : 1),
    short(277, count),
    short(284, 1),
    short(317, type.name === 'float32' ? 1 : 2),
    short(322, tileSize),
    short(323, tileSize),
    { tag: 324, type: 'long', value: offsets },
    { tag: 325, type: 'long', value: tiles.map((tile) => tile.length) },
    short(339, ...Array<number>(count).fill(type.format)),
  ];
  if (extra > 0) fields.push(short(338, ...Array<number>(extra).fill(0)));
  if (options.nodata !== undefined) fields.push({ tag: 42113, type: 'ascii', value: nodataText(options.nodata) });
  if (index === 0) fields.push(...georeferenceFields(options.crs, options.transform), ...nameFields(options, count));
  return fields;
}

function nodataText(nodata: number): string {
  return Number.isNaN(nodata) ? 'nan' : String(nodata);
}

function nameFields(options: GeoTiffOptions, count: number): readonly TiffField[] {
  const names = options.bandNames;
  if (names === undefined) return [];
  if (names.length !== count) {
    throw new RangeError(`writeGeoTiff: expected ${count} band names, got ${names.length}`);
  }
  const items = names.map((name, i) => {
    const text = name
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll(/[^\x20-\x7e]/g, '?');
    return `<Item name="DESCRIPTION" sample="${i}" role="description">${text}</Item>`;
  });
  return [{ tag: 42112, type: 'ascii', value: `<GDALMetadata>${items.join('')}</GDALMetadata>` }];
}

function evenAfter(offset: number): number {
  return offset + (offset % 2);
}
