/** The picture, its overviews and their masks as levels that windows can be read from. */
import type { GeoTIFFImage } from 'geotiff';
import type { BytesPort } from './source/bytes-port.ts';
import { BlockCache } from './tiff/block-cache.ts';
import { blockLayout } from './tiff/block-layout.ts';
import type { Inflate } from './tiff/decode-block.ts';
import { openOverviews, openTiff } from './tiff/open-tiff.ts';
import { type TiffLevel, tiffLevel } from './tiff/tiff-level.ts';
import type { Samples } from './window.ts';

/** Files that lie beside an image. */
export interface ImagerySidecars {
  readonly overviews?: BytesPort | undefined;
  readonly mask?: BytesPort | undefined;
  readonly worldFile?: string | undefined;
  readonly prj?: string | undefined;
}

export interface OpenLevels {
  readonly images: readonly GeoTIFFImage[];
  /** The full picture first, then from fine to coarse. */
  readonly pictures: readonly TiffLevel[];
  /** The mask of each picture, or null. */
  readonly masks: readonly (TiffLevel | null)[];
  /** Samples of a band from all over the image, some ten thousand at most. */
  readonly sampleOf: (band: number) => Promise<Samples>;
}

interface Source {
  readonly port: BytesPort;
  readonly image: GeoTIFFImage;
}

export async function openLevels(
  port: BytesPort,
  options: { readonly beside?: ImagerySidecars; readonly inflate?: Inflate },
  cacheBytes: number,
): Promise<OpenLevels> {
  const { beside = {}, inflate } = options;
  const cache = new BlockCache(cacheBytes);
  const own = await openTiff(port);
  const further = beside.overviews ? await openOverviews(beside.overviews) : { pictures: [], masks: [] };
  const masked = beside.mask ? await openTiff(beside.mask) : { pictures: [], masks: [] };
  const all = [
    ...from(port, own.pictures),
    ...(own.pictures.length > 1 || !beside.overviews ? [] : from(beside.overviews, further.pictures)),
  ];
  const masks = [
    ...from(port, own.masks),
    ...(beside.overviews ? from(beside.overviews, further.masks) : []),
    ...(beside.mask ? from(beside.mask, [...masked.pictures, ...masked.masks]) : []),
  ];
  const level = async ({ port: bytes, image }: Source, name: string) => {
    const layout = await blockLayout(image);
    const fill = image.getGDALNoData() ?? 0;
    return tiffLevel(layout, { port: bytes, cache, name, fill: Number.isFinite(fill) ? fill : 0, inflate });
  };
  const pictures = await Promise.all(all.map((source, i) => level(source, `picture ${i}`)));
  return {
    images: all.map(({ image }) => image),
    pictures,
    masks: await Promise.all(
      all.map(({ image }, i) => {
        const mask = masks.find((one) => sameSize(one.image, image));
        return mask ? level(mask, `mask ${i}`) : null;
      }),
    ),
    sampleOf: (band) => sampleOf(pictures[pictures.length - 1], band),
  };
}

function from(port: BytesPort, images: readonly GeoTIFFImage[]): Source[] {
  return images.map((image) => ({ port, image }));
}

function sameSize(a: GeoTIFFImage, b: GeoTIFFImage): boolean {
  return a.getWidth() === b.getWidth() && a.getHeight() === b.getHeight();
}

const SAMPLE_SIDE = 48;

/** Nine small windows, spread over the coarsest level. */
async function sampleOf(level: TiffLevel, band: number): Promise<Samples> {
  const { width, height } = level.layout;
  const [w, h] = [Math.min(SAMPLE_SIDE, width), Math.min(SAMPLE_SIDE, height)];
  const out: number[] = [];
  for (const down of [0.1, 0.5, 0.9]) {
    for (const across of [0.1, 0.5, 0.9]) {
      const window = {
        left: Math.round((width - w) * across),
        top: Math.round((height - h) * down),
        width: w,
        height: h,
      };
      const { bands, damaged } = await level.read(window, [band]);
      if (damaged.length === 0) out.push(...bands[0]);
    }
  }
  return Float64Array.from(out);
}
