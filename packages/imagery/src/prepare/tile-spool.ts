/**
 * The compressed tiles of one level, row by row, in two parts of the store: the tiles, each with its size before it and its last
 * four bytes after it as they will lie in the file, and the list of their sizes.
 */
import type { SampleArray } from '../raster.ts';
import { unpackSamples } from '../tiff/unpack-samples.ts';
import { predictedTile, predictorOf } from '../tiff-tile.ts';
import type { PartStore } from './part-store.ts';
import type { PrepareLevel, PreparePlan } from './prepare-plan.ts';

/** RFC 1950 both ways; may work on other threads. */
export interface Zlib {
  readonly deflate: (bytes: Uint8Array) => Uint8Array | Promise<Uint8Array>;
  /** Told how many bytes to expect. */
  readonly inflate: (bytes: Uint8Array, expectedLength: number) => Uint8Array | Promise<Uint8Array>;
}

/** Bytes around a tile: 4 before it, 4 after. */
export const AROUND_TILE = 8;

export interface TileSpool {
  readonly level: PrepareLevel;
  readonly part: string;
  /** Whole rows of tiles that are there. */
  readonly rowsDone: () => number;
  /** Compresses and adds the tiles of a strip of pixels as wide as the level. */
  readonly addRow: (strips: readonly TileStrip[]) => Promise<void>;
  /** Bands of the tiles from column `first` up to `last` (not included) of a row, side by side; `null` beyond the last row. */
  readonly readRow: (row: number, first: number, last: number) => Promise<SampleArray[] | null>;
  readonly sizes: () => Uint32Array;
}

/** Part of a row of tiles: pixels from a multiple of the tile size on. */
export interface TileStrip {
  readonly width: number;
  readonly height: number;
  readonly bands: readonly SampleArray[];
}

/** Opens the spool of a level, with what an earlier run has left in it. */
export async function tileSpool(store: PartStore, plan: PreparePlan, index: number, zlib: Zlib): Promise<TileSpool> {
  const level = plan.levels[index];
  const part = `level-${index}.tiles`;
  const list = `level-${index}.sizes`;
  const { sizes, offsets } = await leftOver(store, level, part, list);
  let count = sizes.length;
  const known = { sizes: grown(sizes, level.across * level.down), offsets: grown(offsets, level.across * level.down) };
  let end = count === 0 ? 0 : known.offsets[count - 1] + known.sizes[count - 1] + AROUND_TILE;
  return {
    level,
    part,
    rowsDone: () => count / level.across,
    sizes: () => Uint32Array.from(known.sizes.subarray(0, count)),
    addRow: async (strips) => {
      const tiles = await Promise.all(strips.flatMap((strip) => compressed(strip, plan.tileSize, zlib)));
      const added = new Uint32Array(tiles.length);
      for (const [i, tile] of tiles.entries()) {
        known.sizes[count + i] = added[i] = tile.length;
        known.offsets[count + i] = end;
        end += tile.length + AROUND_TILE;
      }
      await store.append(part, framed(tiles));
      await store.append(list, new Uint8Array(added.buffer));
      count += tiles.length;
    },
    readRow: async (row, first, last) => {
      if (row >= level.down) return null;
      const from = row * level.across + first;
      const to = row * level.across + Math.min(last, level.across);
      const start = known.offsets[from];
      const bytes = await store.read(part, start, known.offsets[to - 1] + known.sizes[to - 1] + 4 - start);
      const tileBytes = plan.tileSize ** 2 * plan.roles.length * plan.samples.BYTES_PER_ELEMENT;
      const tiles = await Promise.all(
        Array.from({ length: to - from }, async (_, i) => {
          const at = known.offsets[from + i] - start + 4;
          return unpacked(await zlib.inflate(bytes.subarray(at, at + known.sizes[from + i]), tileBytes), plan);
        }),
      );
      return sideBySide(tiles, plan.tileSize);
    },
  };
}

/** Whole rows of tiles alone count; the rest of an interrupted row is cut off. */
async function leftOver(
  store: PartStore,
  level: PrepareLevel,
  part: string,
  list: string,
): Promise<{ readonly sizes: Float64Array; readonly offsets: Float64Array }> {
  const bytes = await store.read(list, 0, await store.size(list));
  const all = new Uint32Array(new Uint8Array(bytes.subarray(0, bytes.length - (bytes.length % 4))).buffer);
  const there = await store.size(part);
  const offsets: number[] = [];
  let end = 0;
  for (const size of all) {
    if (end + size + AROUND_TILE > there) break;
    offsets.push(end);
    end += size + AROUND_TILE;
  }
  const whole = offsets.length - (offsets.length % level.across);
  const cut = whole === 0 ? 0 : offsets[whole - 1] + all[whole - 1] + AROUND_TILE;
  if (there > cut) await store.truncate(part, cut);
  if (bytes.length > 4 * whole) await store.truncate(list, 4 * whole);
  return { sizes: Float64Array.from(all.subarray(0, whole)), offsets: Float64Array.from(offsets.slice(0, whole)) };
}

function grown(values: Float64Array, length: number): Float64Array {
  const out = new Float64Array(length);
  out.set(values);
  return out;
}

function compressed(strip: TileStrip, tileSize: number, { deflate }: Zlib): Promise<Uint8Array>[] {
  const tiles: Promise<Uint8Array>[] = [];
  for (let left = 0; left < strip.width; left += tileSize) {
    tiles.push(Promise.resolve(deflate(predictedTile(strip, left, 0, tileSize))));
  }
  return tiles;
}

function framed(tiles: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(tiles.reduce((sum, tile) => sum + tile.length + AROUND_TILE, 0));
  const view = new DataView(out.buffer);
  let at = 0;
  for (const tile of tiles) {
    view.setUint32(at, tile.length, true);
    out.set(tile, at + 4);
    out.set(tile.subarray(-4), at + 4 + tile.length);
    at += tile.length + AROUND_TILE;
  }
  return out;
}

function unpacked(bytes: Uint8Array, plan: PreparePlan): SampleArray[] {
  const { samples, tileSize, roles } = plan;
  const bits = 8 * samples.BYTES_PER_ELEMENT;
  const format = samples instanceof Float32Array || samples instanceof Float64Array ? 3 : isSigned(samples) ? 2 : 1;
  const encoding = { bits, format, predictor: predictorOf(samples), littleEndian: true };
  return unpackSamples(bytes, encoding, { width: tileSize, height: tileSize, together: roles.length });
}

function isSigned(samples: SampleArray): boolean {
  return samples instanceof Int8Array || samples instanceof Int16Array || samples instanceof Int32Array;
}

function sideBySide(tiles: readonly SampleArray[][], tileSize: number): SampleArray[] {
  const width = tiles.length * tileSize;
  return tiles[0].map((like, b) => {
    const out = new (like.constructor as new (length: number) => SampleArray)(width * tileSize);
    for (const [i, tile] of tiles.entries()) {
      for (let y = 0; y < tileSize; y++) {
        out.set(tile[b].subarray(y * tileSize, (y + 1) * tileSize), y * width + i * tileSize);
      }
    }
    return out;
  });
}
