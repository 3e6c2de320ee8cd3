/** Cuts web-map tiles out of the project's GeoTIFF. */
import type { ImageryFinding } from '@crownfall/imagery';
import { type ProjectPlace, readPart } from '../project/project-files.ts';
import { ImageryTiler, type TileAddress } from './imagery-tiler.ts';

export interface ImageryAsk {
  readonly id: number;
  readonly open?: { readonly place: ProjectPlace; readonly path: string };
  readonly tile?: TileAddress;
  /** The tile of this number is not wanted any more. */
  readonly noLonger?: true;
}

export type ImageryAnswer =
  | {
      readonly id: number;
      readonly bounds: readonly [number, number, number, number];
      readonly notes: readonly ImageryFinding[];
    }
  | { readonly id: number; readonly refused: readonly ImageryFinding[] }
  | { readonly id: number; readonly tile: ImageBitmap }
  | { readonly id: number; readonly failed: string };

let tiler: ImageryTiler | null = null;
/** One after the other: neighbouring tiles share blocks, which are then read once. */
let before: Promise<void> = Promise.resolve();
const given = new Set<number>();

self.addEventListener('message', ({ data }: MessageEvent<ImageryAsk>) => {
  if (data.noLonger) given.delete(data.id);
  else {
    given.add(data.id);
    before = before.then(() => answer(data));
  }
});

async function answer(ask: ImageryAsk): Promise<void> {
  const { id } = ask;
  // The map has moved on from tiles that it took back.
  if (!given.delete(id)) return;
  try {
    if (ask.open) postMessage(await opened(id, ask.open));
    else if (ask.tile && tiler) {
      const tile = await createImageBitmap(await tiler.tile(ask.tile));
      postMessage({ id, tile } satisfies ImageryAnswer, { transfer: [tile] });
    }
  } catch (error) {
    postMessage({ id, failed: error instanceof Error ? error.message : String(error) } satisfies ImageryAnswer);
  }
}

async function opened(id: number, { place, path }: NonNullable<ImageryAsk['open']>): Promise<ImageryAnswer> {
  const read = (offset: number, length: number): Promise<Uint8Array> => readPart(place, path, offset, length);
  const made = await ImageryTiler.open({ size: null, read }, path);
  if (!(made instanceof ImageryTiler)) return { id, refused: made };
  tiler = made;
  return { id, bounds: made.bounds(), notes: made.notes };
}
