/** Cuts map tiles out of the project's GeoTIFFs, each in a worker of its own, while there is a network. */
import type { ImageryAnswer, ImageryAsk } from '../../map/imagery.worker.ts';
import type { ProjectPlace } from '../../project/project-files.ts';
import { type Box, meet } from './boxes.ts';
import { boxOfTile, type TileAddress } from './pack-tiles.ts';

export interface TileCutter {
  /** The tile as a picture, the first image listed on top; null where no image lies. */
  readonly cut: (tile: TileAddress) => Promise<Blob | null>;
  readonly close: () => void;
}

const TILE_PX = 256;

/** Opens those images that show anything of the boxes; one that cannot be laid under a map is left out. */
export async function tileCutter(
  { place, paths }: { readonly place: ProjectPlace; readonly paths: readonly string[] },
  boxes: readonly Box[],
): Promise<TileCutter> {
  const images: OpenImage[] = [];
  for (const path of paths) {
    const image = await openImage(place, path);
    if (image && boxes.some((box) => meet(box, image.bounds))) images.push(image);
    else image?.close();
  }
  return {
    cut: async (tile) => {
      const here = images.filter(({ bounds }) => meet(boxOfTile(tile), bounds));
      if (here.length === 0) return null;
      const canvas = new OffscreenCanvas(TILE_PX, TILE_PX);
      const pen = canvas.getContext('2d');
      for (const image of here.toReversed()) {
        const part = await image.tile(tile);
        pen?.drawImage(part, 0, 0);
        part.close();
      }
      return canvas.convertToBlob({ type: 'image/webp', quality: 0.75 });
    },
    close: () => {
      for (const image of images) image.close();
    },
  };
}

interface OpenImage {
  readonly bounds: Box;
  readonly tile: (tile: TileAddress) => Promise<ImageBitmap>;
  readonly close: () => void;
}

async function openImage(place: ProjectPlace, path: string): Promise<OpenImage | null> {
  const worker = new Worker(new URL('../../map/imagery.worker.ts', import.meta.url), { type: 'module' });
  let next = 0;
  const ask = (what: Omit<ImageryAsk, 'id'>): Promise<ImageryAnswer> =>
    new Promise((tell, fail) => {
      const id = next++;
      const hear = ({ data }: MessageEvent<ImageryAnswer>): void => {
        if (data.id !== id) return;
        worker.removeEventListener('message', hear);
        if ('failed' in data) fail(new Error(data.failed));
        else tell(data);
      };
      worker.addEventListener('message', hear);
      worker.postMessage({ id, ...what } satisfies ImageryAsk);
    });
  const opened = await ask({ open: { place, path } }).catch(() => null);
  if (!opened || !('bounds' in opened)) {
    worker.terminate();
    return null;
  }
  return {
    bounds: opened.bounds,
    tile: async (tile) => {
      const answer = await ask({ tile });
      if (!('tile' in answer)) throw new Error('The tile did not come.');
      return answer.tile;
    },
    close: () => worker.terminate(),
  };
}
