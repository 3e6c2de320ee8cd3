/**
 * How the pixels of one directory of a TIFF file lie in it: strips and tiles are both blocks here, a strip being a block as wide
 * as the image (TIFF 6.0, sections 3 and 15). Read with the geotiff package, which knows classic and BigTIFF.
 */
import type { GeoTIFFImage } from 'geotiff';
import type { ByteRange } from '../source/grouped-reads.ts';

export type Directory = GeoTIFFImage['fileDirectory'];

export interface BlockLayout {
  readonly width: number;
  readonly height: number;
  readonly blockWidth: number;
  /** Of all blocks but those of a last row of strips, which may be lower. */
  readonly blockHeight: number;
  readonly across: number;
  readonly down: number;
  readonly tiled: boolean;
  readonly bandCount: number;
  /** Samples of a pixel stand together; false: each band has blocks of its own, band by band. */
  readonly interleaved: boolean;
  readonly bits: number;
  /** `SampleFormat`: 1 whole numbers, 2 with sign, 3 floating point. */
  readonly format: number;
  readonly compression: number;
  readonly photometric: number;
  readonly predictor: number;
  readonly littleEndian: boolean;
  readonly directory: Directory;
  /** Where each block is; a length of 0 is a block that was never written. */
  readonly ranges: () => Promise<readonly ByteRange[]>;
}

/** Tells why a directory cannot be read: `12-bit JPEG`. */
export class UnsupportedEncoding extends Error {}

const COMPRESSIONS: Readonly<Record<number, string>> = {
  1: 'none',
  5: 'LZW',
  7: 'JPEG',
  8: 'deflate',
  32773: 'PackBits',
  32946: 'deflate',
  34887: 'LERC',
  50000: 'Zstandard',
  50001: 'WebP',
};

/** The compression's usual name; undefined when it cannot be read. */
export function compressionName(layout: { readonly compression: number }): string | undefined {
  return COMPRESSIONS[layout.compression];
}

/**
 * The layout of a directory.
 * @throws UnsupportedEncoding when its samples are stored in a way that is not read here
 */
export async function blockLayout(image: GeoTIFFImage): Promise<BlockLayout> {
  const directory = image.fileDirectory;
  const number = async (tag: string, otherwise: number) => Number((await value(directory, tag)) ?? otherwise);
  const tiled = !directory.hasTag('StripOffsets');
  const width = await number('ImageWidth', 0);
  const height = await number('ImageLength', 0);
  const blockWidth = tiled ? await number('TileWidth', 0) : width;
  const blockHeight = tiled ? await number('TileLength', 0) : Math.min(height, await number('RowsPerStrip', height));
  const bandCount = await number('SamplesPerPixel', 1);
  const layout = {
    width,
    height,
    blockWidth,
    blockHeight,
    across: Math.ceil(width / blockWidth),
    down: Math.ceil(height / blockHeight),
    tiled,
    bandCount,
    interleaved: (await number('PlanarConfiguration', 1)) === 1,
    bits: await shared(directory, 'BitsPerSample', 1),
    format: await shared(directory, 'SampleFormat', 1),
    compression: await number('Compression', 1),
    photometric: await number('PhotometricInterpretation', 1),
    predictor: await number('Predictor', 1),
    littleEndian: image.littleEndian,
    directory,
    ranges: rangesOf(directory, tiled ? 'Tile' : 'Strip'),
  };
  refuse(layout, await number('FillOrder', 1));
  return layout;
}

/** A tag's value, wherever in the file it stands; undefined when the directory lacks it. */
export async function value(directory: Directory, tag: string | number): Promise<unknown> {
  return directory.hasTag(tag as never) ? await directory.loadValue(tag as never) : undefined;
}

/** A tag with a value per band that must be the same for all. */
async function shared(directory: Directory, tag: string, otherwise: number): Promise<number> {
  const given = await value(directory, tag);
  if (given === undefined) return otherwise;
  const all = typeof given === 'number' ? [given] : Array.from(given as ArrayLike<number>, Number);
  if (all.some((one) => one !== all[0])) throw new UnsupportedEncoding(`bands of different kinds (${tag} ${all})`);
  return all[0];
}

function refuse(layout: BlockLayout, fillOrder: number): void {
  const { bits, format, compression, photometric, bandCount } = layout;
  const refused = (why: string) => {
    throw new UnsupportedEncoding(why);
  };
  if (!(layout.across > 0 && layout.down > 0 && bandCount > 0)) throw new Error('a directory without pixels');
  if (compressionName(layout) === undefined) refused(`compression number ${compression}`);
  if (format === 4 && bits <= 32) return;
  if (format > 3) refused(format === 4 ? 'samples of no known type' : 'complex samples');
  if (format === 3 ? ![16, 32, 64].includes(bits) : bits > 32 || (bits > 16 && bits < 32)) {
    refused(`${bits}-bit samples (SampleFormat ${format})`);
  }
  if (format === 2 && bits % 8 !== 0) refused(`${bits}-bit samples with a sign`);
  if (compression === 7 && bits !== 8) refused(`${bits}-bit JPEG`);
  if (photometric === 6 && compression !== 7 && bandCount === 3 && subsampled(layout)) {
    refused('brightness and colour stored apart (YCbCr) without JPEG');
  }
  if (fillOrder === 2 && compression !== 7) refused('bits in reverse order (FillOrder 2)');
}

function subsampled({ directory }: BlockLayout): boolean {
  return directory.hasTag('YCbCrSubSampling');
}

function rangesOf(directory: Directory, kind: 'Tile' | 'Strip'): () => Promise<readonly ByteRange[]> {
  let ranges: Promise<readonly ByteRange[]> | undefined;
  const read = async () => {
    const offsets = list(await value(directory, `${kind}Offsets`));
    const lengths = list(await value(directory, `${kind}ByteCounts`));
    return offsets.map((offset, i) => ({ offset, length: offset === 0 ? 0 : (lengths[i] ?? 0) }));
  };
  return () => {
    ranges ??= read();
    return ranges;
  };
}

function list(given: unknown): number[] {
  if (given === undefined) return [];
  if (typeof given === 'number' || typeof given === 'bigint') return [Number(given)];
  return Array.from(given as ArrayLike<number | bigint>, Number);
}
