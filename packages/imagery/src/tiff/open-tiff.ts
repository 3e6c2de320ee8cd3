/** The directories of a TIFF file sorted into the picture, its overviews and their masks. */
import { GeoTIFF, type GeoTIFFImage } from 'geotiff';
import { type BytesPort, copied } from '../source/bytes-port.ts';
import { pagedPort } from '../source/paged-port.ts';
import { value } from './block-layout.ts';

export interface TiffPictures {
  /** The full picture first, then its overviews from fine to coarse. */
  readonly pictures: readonly GeoTIFFImage[];
  /** Masks of one bit per pixel, of any of these sizes. */
  readonly masks: readonly GeoTIFFImage[];
}

/** `NewSubfileType` (TIFF 6.0, section 8): bit 0 a smaller version, bit 2 a mask. */
const REDUCED = 1;
const MASK = 4;

/**
 * Reads the directories, no pixels. Further pages of a file that are neither overview nor mask are left aside.
 * @throws Error when the bytes are no TIFF
 */
export async function openTiff(port: BytesPort): Promise<TiffPictures> {
  const tiff = await GeoTIFF.fromSource(sourceOn(pagedPort(port)) as never);
  const count = await tiff.getImageCount();
  const images: { image: GeoTIFFImage; kind: number }[] = [];
  for (let i = 0; i < count; i++) {
    const image = await tiff.getImage(i);
    images.push({ image, kind: Number((await value(image.fileDirectory, 'NewSubfileType')) ?? 0) });
  }
  const masks = images.filter(({ kind }) => (kind & MASK) !== 0).map(({ image }) => image);
  const plain = images.filter(({ kind }) => (kind & MASK) === 0);
  const reduced = plain.filter(({ kind }, i) => i > 0 && (kind & REDUCED) !== 0).map(({ image }) => image);
  const pictures = plain.slice(0, 1).map(({ image }) => image);
  return { pictures: [...pictures, ...fromFineToCoarse(reduced)], masks };
}

/** Overviews in a file of their own (`.ovr`): every directory that is no mask is one. */
export async function openOverviews(port: BytesPort): Promise<TiffPictures> {
  const { pictures, masks } = await openTiff(port);
  return { pictures: fromFineToCoarse(pictures), masks };
}

function fromFineToCoarse(images: readonly GeoTIFFImage[]): GeoTIFFImage[] {
  return images.toSorted((a, b) => b.getWidth() - a.getWidth());
}

interface Slice {
  readonly offset: number;
  readonly length: number;
}

/** The port in the shape that the geotiff package reads from. */
function sourceOn(port: BytesPort): object {
  const fetchSlice = async ({ offset, length }: Slice) => {
    // Copied: what the port hands over may be a view into something larger.
    const data = copied(await port.read(offset, length)).buffer;
    return { offset, length, data };
  };
  return {
    fileSize: port.size,
    fetchSlice,
    fetch: async (slices: Slice[]) => (await Promise.all(slices.map(fetchSlice))).map((slice) => slice.data),
    close: async () => {},
  };
}
