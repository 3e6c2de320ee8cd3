/** From the bytes of a strip or tile to its samples: decompressed, differences undone, one array per band. */
import { unzlibSync } from 'fflate';
import { getDecoder } from 'geotiff';
import { decodeJpeg, type JpegTables, jpegTables } from '../jpeg/decode-jpeg.ts';
import { copied } from '../source/bytes-port.ts';
import type { Samples } from '../window.ts';
import { type BlockLayout, value } from './block-layout.ts';
import { type BlockSize, unpackSamples } from './unpack-samples.ts';

/** A faster inflater than the built-in one, such as `zlib.inflateSync` of Node. RFC 1950 in, plain bytes out, that many. */
export type Inflate = (bytes: Uint8Array, expectedLength: number) => Uint8Array | Promise<Uint8Array>;

/** Bytes of block `index` to one array per band that stands in the block. Throws when they are damaged. */
export type BlockDecoder = (bytes: Uint8Array, index: number) => Promise<Samples[]>;

/** The decoder of a directory's blocks. */
export async function blockDecoder(
  layout: BlockLayout,
  inflate: Inflate = (bytes) => unzlibSync(bytes),
): Promise<BlockDecoder> {
  const together = layout.interleaved ? layout.bandCount : 1;
  if (layout.compression === 7) {
    const tables = jpegTables((await value(layout.directory, 'JPEGTables')) as Uint8Array | undefined);
    return async (bytes, index) => jpegBands(bytes, tables, layout, rowsIn(layout, index));
  }
  const decompress = await decompressor(layout, inflate);
  return async (bytes, index) => {
    const size = { width: layout.blockWidth, height: rowsIn(layout, index), together };
    return unpackSamples(await decompress(bytes, bytesIn(layout, size)), layout, size);
  };
}

/** Rows of block `index`: tiles are always whole, the last strip has what is left. */
export function rowsIn(layout: BlockLayout, index: number): number {
  if (layout.tiled) return layout.blockHeight;
  const top = (index % layout.down) * layout.blockHeight;
  return Math.min(layout.blockHeight, layout.height - top);
}

type Decompress = (bytes: Uint8Array, expectedLength: number) => Promise<Uint8Array> | Uint8Array;

function bytesIn({ bits }: BlockLayout, { width, height, together }: BlockSize): number {
  return Math.ceil((width * together * bits) / 8) * height;
}

async function decompressor(layout: BlockLayout, inflate: Inflate): Promise<Decompress> {
  const { compression, directory } = layout;
  // Copied: samples are changed in place, and the bytes may be part of something larger.
  if (compression === 1) return copied;
  if (compression === 8 || compression === 32946) return inflate;
  const decoder = await getDecoder(compression, {
    tileWidth: layout.blockWidth,
    tileHeight: layout.blockHeight,
    planarConfiguration: layout.interleaved ? 1 : 2,
    bitsPerSample: Array<number>(layout.bandCount).fill(layout.bits),
    predictor: 1,
    LercParameters: await value(directory, 'LercParameters'),
    samplesPerPixel: layout.bandCount,
  } as never);
  return async (bytes) => new Uint8Array((await decoder.decode(copied(bytes).buffer as ArrayBuffer)) as ArrayBuffer);
}

function jpegBands(bytes: Uint8Array, tables: JpegTables, layout: BlockLayout, rows: number): Samples[] {
  const isYCbCr = layout.photometric === 6 && layout.interleaved;
  const { width, height, bands } = decodeJpeg(bytes, tables, isYCbCr);
  const expected = layout.interleaved ? layout.bandCount : 1;
  if (width !== layout.blockWidth || height < rows || bands.length !== expected) {
    throw new Error(`a JPEG block of ${width} × ${height} with ${bands.length} bands`);
  }
  return height === rows ? bands : bands.map((band) => band.subarray(0, width * rows));
}
