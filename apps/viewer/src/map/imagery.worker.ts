/** Cuts web-map tiles out of the project's GeoTIFF. */
import type { ImageryFinding } from '@crownfall/imagery';
import { type ProjectPlace, readPart } from '../project/project-files.ts';
import { ImageryTiler, type TileAddress } from './imagery-tiler.ts';

export interface ImageryAsk {
  readonly id: number;
  readonly open?: { readonly place: ProjectPlace; readonly path: string };
  readonly tile?: TileAddress;
}

export type ImageryAnswer =
  | { readonly id: number; readonly bounds: readonly [number, number, number, number] }
  | { readonly id: number; readonly refused: readonly ImageryFinding[] }
  | { readonly id: number; readonly tile: ImageBitmap }
  | { readonly id: number; readonly failed: string };

let tiler: ImageryTiler | null = null;

self.addEventListener('message', async ({ data }: MessageEvent<ImageryAsk>) => {
  const { id } = data;
  try {
    if (data.open) postMessage(await opened(id, data.open));
    else if (data.tile && tiler) {
      const tile = await createImageBitmap(await tiler.tile(data.tile));
      postMessage({ id, tile } satisfies ImageryAnswer, { transfer: [tile] });
    }
  } catch (error) {
    postMessage({ id, failed: error instanceof Error ? error.message : String(error) } satisfies ImageryAnswer);
  }
});

async function opened(id: number, { place, path }: NonNullable<ImageryAsk['open']>): Promise<ImageryAnswer> {
  const read = (offset: number, length: number): Promise<Uint8Array> => readPart(place, path, offset, length);
  const made = await ImageryTiler.open({ size: null, read }, path);
  if (!(made instanceof ImageryTiler)) return { id, refused: made };
  tiler = made;
  return { id, bounds: made.bounds() };
}
