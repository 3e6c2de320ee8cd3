/** One directory of a TIFF file as a picture: windows of its samples, through the block cache, in few requests. */
import type { PixelWindow } from '../raster.ts';
import type { BytesPort, Cancellation } from '../source/bytes-port.ts';
import { type ByteRange, groupedRanges, readGroup } from '../source/grouped-reads.ts';
import type { Samples } from '../window.ts';
import type { Block, BlockCache } from './block-cache.ts';
import type { BlockLayout } from './block-layout.ts';
import { type BlockDecoder, blockDecoder, type Inflate, rowsIn } from './decode-block.ts';

export interface TiffLevel {
  readonly layout: BlockLayout;
  /** Samples of `bands` in the window, which lies inside; damaged blocks leave their pixels at 0 and are named. */
  readonly read: (window: PixelWindow, bands: readonly number[], signal?: Cancellation) => Promise<LevelReading>;
}

interface LevelReading {
  readonly bands: Samples[];
  readonly damaged: readonly DamagedBlock[];
}

/** Pixels of a level that could not be read, and why. */
export interface DamagedBlock extends PixelWindow {
  readonly problem: string;
}

export interface LevelSource {
  readonly port: BytesPort;
  readonly cache: BlockCache;
  /** Tells this level's blocks from others' in the cache. */
  readonly name: string;
  readonly fill: number;
  readonly inflate?: Inflate | undefined;
}

/** Requests under way at once. */
const CONCURRENT_REQUESTS = 6;

export function tiffLevel(layout: BlockLayout, source: LevelSource): TiffLevel {
  let decoder: Promise<BlockDecoder> | undefined;
  return {
    layout,
    read: async (window, bands, signal) => {
      decoder ??= blockDecoder(layout, source.inflate);
      const reading = { layout, source, window, bands, signal, decode: await decoder };
      return readWindow(reading, await layout.ranges());
    },
  };
}

interface Reading {
  readonly layout: BlockLayout;
  readonly source: LevelSource;
  readonly window: PixelWindow;
  readonly bands: readonly number[];
  readonly signal: Cancellation | undefined;
  readonly decode: BlockDecoder;
}

async function readWindow(reading: Reading, ranges: readonly ByteRange[]): Promise<LevelReading> {
  const out = reading.bands.map(() => emptyBand(reading.layout, reading.window.width * reading.window.height));
  const damaged: DamagedBlock[] = [];
  const wanted: number[] = [];
  const place = (index: number, block: Block, problem = 'it was found damaged before') => {
    if (block === null) damaged.push({ ...extentOf(reading.layout, index), problem });
    else copyBlock(reading, index, block, out);
  };
  for (const index of blocksOf(reading)) {
    const kept = reading.source.cache.get(keyOf(reading, index));
    if (kept !== undefined) place(index, kept);
    else if (ranges[index] === undefined) place(index, null, 'the file does not say where it is');
    else if (ranges[index].length === 0) fillBlock(reading, index, out);
    else wanted.push(index);
  }
  await fetchBlocks(reading, wanted, ranges, place);
  return { bands: out, damaged };
}

type Place = (index: number, block: Block, problem?: string) => void;

async function fetchBlocks(
  reading: Reading,
  wanted: readonly number[],
  ranges: readonly ByteRange[],
  place: Place,
): Promise<void> {
  const wantedRanges = wanted.map((index) => ranges[index]);
  const groups = groupedRanges(wantedRanges).values();
  const worker = async () => {
    for (const group of groups) {
      if (reading.signal?.aborted) throw new Error('the reading was cancelled');
      const parts = await readGroup(reading.source.port, wantedRanges, group, reading.signal);
      for (const [i, bytes] of parts.entries()) {
        await decodeInto(reading, wanted[group.members[i]], bytes, wantedRanges[group.members[i]].length, place);
      }
    }
  };
  await Promise.all(Array.from({ length: CONCURRENT_REQUESTS }, worker));
}

async function decodeInto(
  reading: Reading,
  index: number,
  bytes: Uint8Array,
  length: number,
  place: Place,
): Promise<void> {
  let block: Block = null;
  let problem = `${bytes.length} of its ${length} bytes are there`;
  if (bytes.length === length) {
    try {
      block = await reading.decode(bytes, index);
    } catch (cause) {
      problem = cause instanceof Error ? cause.message : String(cause);
    }
  }
  reading.source.cache.set(keyOf(reading, index), block);
  place(index, block, problem);
}

function keyOf({ source }: Reading, index: number): string {
  return `${source.name}/${index}`;
}

/** Numbers of the blocks that the window touches: for bands apart, those of each band. */
function blocksOf({ layout, window, bands }: Reading): number[] {
  const { blockWidth, blockHeight, across, down } = layout;
  const planes = layout.interleaved ? [0] : bands;
  const out: number[] = [];
  const lastRow = Math.floor((window.top + window.height - 1) / blockHeight);
  const lastColumn = Math.floor((window.left + window.width - 1) / blockWidth);
  for (const plane of planes) {
    for (let row = Math.floor(window.top / blockHeight); row <= lastRow; row++) {
      for (let column = Math.floor(window.left / blockWidth); column <= lastColumn; column++) {
        out.push((plane * down + row) * across + column);
      }
    }
  }
  return out;
}

function extentOf(layout: BlockLayout, index: number): PixelWindow {
  const cell = index % (layout.across * layout.down);
  const left = (cell % layout.across) * layout.blockWidth;
  const top = Math.floor(cell / layout.across) * layout.blockHeight;
  const height = rowsIn(layout, cell);
  return { left, top, width: layout.blockWidth, height };
}

/** Which of the bands read the block holds: [position among those read, position in the block]. */
function bandsIn({ layout, bands }: Reading, index: number): (readonly [number, number])[] {
  if (layout.interleaved) return bands.map((band, i) => [i, band] as const);
  const plane = Math.floor(index / (layout.across * layout.down));
  return bands.flatMap((band, i) => (band === plane ? [[i, 0] as const] : []));
}

function copyBlock(reading: Reading, index: number, block: readonly Samples[], out: readonly Samples[]): void {
  const { window } = reading;
  const extent = extentOf(reading.layout, index);
  const left = Math.max(extent.left, window.left);
  const right = Math.min(extent.left + extent.width, window.left + window.width);
  const bottom = Math.min(extent.top + extent.height, window.top + window.height);
  for (const [i, b] of bandsIn(reading, index)) {
    for (let y = Math.max(extent.top, window.top); y < bottom; y++) {
      const from = (y - extent.top) * extent.width + left - extent.left;
      out[i].set(block[b].subarray(from, from + right - left), (y - window.top) * window.width + left - window.left);
    }
  }
}

/** A block that was never written holds the no-data value, or 0. */
function fillBlock(reading: Reading, index: number, out: readonly Samples[]): void {
  const { fill } = reading.source;
  if (fill === 0) return;
  const { width, height } = extentOf(reading.layout, index);
  const filled = reading.layout.interleaved ? reading.layout.bandCount : 1;
  const block = Array.from({ length: filled }, () => emptyBand(reading.layout, width * height).fill(fill));
  copyBlock(reading, index, block, out);
}

function emptyBand({ bits, format }: BlockLayout, length: number): Samples {
  if (format === 3) return bits === 64 ? new Float64Array(length) : new Float32Array(length);
  if (format === 2) {
    return bits === 8 ? new Int8Array(length) : bits === 16 ? new Int16Array(length) : new Int32Array(length);
  }
  return bits <= 8 ? new Uint8Array(length) : bits <= 16 ? new Uint16Array(length) : new Uint32Array(length);
}
