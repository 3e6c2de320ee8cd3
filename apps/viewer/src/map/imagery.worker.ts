/** Holds the project's GeoTIFF: cuts web-map tiles out of it, and suggests outlines and browned shares of crowns. */
import type { ImageryFinding } from '@crownfall/imagery';
import { type ProjectPlace, readPart } from '../project/project-files.ts';
import {
  CrownSuggester,
  type OutlineWish,
  type Rings,
  type SuggestedOutline,
  type SuggestedShare,
} from './crown-suggester.ts';
import { ImageryTiler, type TileAddress } from './imagery-tiler.ts';

export interface ImageryAsk {
  readonly id: number;
  readonly open?: { readonly place: ProjectPlace; readonly path: string };
  readonly tile?: TileAddress;
  readonly outline?: OutlineWish;
  /** All crowns, to be looked at before a browned share is asked for. */
  readonly look?: readonly Rings[];
  readonly browned?: Rings;
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
  /** With how long it was reckoned once the pixels were there. */
  | { readonly id: number; readonly outline: SuggestedOutline; readonly ms: number }
  | { readonly id: number; readonly looked: true }
  | { readonly id: number; readonly browned: SuggestedShare }
  /** Not the last word on what was asked. */
  | { readonly id: number; readonly share: number }
  | { readonly id: number; readonly failed: string };

let opened: { readonly tiler: ImageryTiler; readonly suggester: CrownSuggester } | null = null;
/** One after the other: neighbouring tiles share blocks, which are then read once. */
let before: Promise<void> = Promise.resolve();
const given = new Set<number>();

self.addEventListener('message', ({ data }: MessageEvent<ImageryAsk>) => {
  if (data.noLonger) given.delete(data.id);
  else if (data.open || data.tile) {
    given.add(data.id);
    before = before.then(() => answer(data, drawn));
  } else {
    // A person waits for it: not behind tiles.
    void answer(data, suggested);
  }
});

async function answer(ask: ImageryAsk, by: (ask: ImageryAsk) => Promise<void>): Promise<void> {
  try {
    await by(ask);
  } catch (error) {
    tell({ id: ask.id, failed: error instanceof Error ? error.message : String(error) });
  }
}

const tell = (answer: ImageryAnswer, transfer: Transferable[] = []): void => postMessage(answer, { transfer });

async function drawn({ id, open, tile }: ImageryAsk): Promise<void> {
  // The map has moved on from tiles that it took back.
  if (!given.delete(id)) return;
  if (open) return tell(await opening(id, open));
  if (!tile || !opened) return;
  const picture = await createImageBitmap(await opened.tiler.tile(tile));
  tell({ id, tile: picture }, [picture]);
}

async function suggested({ id, outline, look, browned }: ImageryAsk): Promise<void> {
  if (!opened) throw new Error('No picture is open.');
  const { suggester } = opened;
  let ms = 0;
  if (outline) {
    const found = await suggester.outline(outline, (took) => {
      ms = took;
    });
    tell({ id, outline: found, ms });
  } else if (look) {
    await suggester.look(look, (share) => tell({ id, share }));
    tell({ id, looked: true });
  } else if (browned) tell({ id, browned: await suggester.browned(browned) });
}

async function opening(id: number, { place, path }: NonNullable<ImageryAsk['open']>): Promise<ImageryAnswer> {
  const read = (offset: number, length: number): Promise<Uint8Array> => readPart(place, path, offset, length);
  const tiler = await ImageryTiler.open({ size: null, read }, path);
  if (!(tiler instanceof ImageryTiler)) return { id, refused: tiler };
  opened = { tiler, suggester: new CrownSuggester(tiler.image) };
  return { id, bounds: tiler.bounds(), notes: tiler.notes };
}
