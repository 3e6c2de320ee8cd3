/** Imagery of the packed blocks: map tiles, cut once while there is a network, kept as pictures. */
import type { ImageryAnswer, ImageryAsk } from '../../map/imagery.worker.ts';
import type { ProjectPlace } from '../../project/project-files.ts';
import type { Box } from './block-pack.ts';

/** 0.3 to 0.07 m a pixel at 28° of latitude: kerbs and trunks show. */
const ZOOMS = [17, 18, 19, 20] as const;

export interface TileAddress {
  readonly z: number;
  readonly x: number;
  readonly y: number;
}

/** The tiles that cover boxes, each once, coarse ones first. */
export function tilesOver(boxes: readonly Box[]): readonly TileAddress[] {
  const found = new Map<string, TileAddress>();
  for (const z of ZOOMS)
    for (const [west, south, east, north] of boxes)
      for (let x = column(west, z); x <= column(east, z); x++)
        for (let y = row(north, z); y <= row(south, z); y++) found.set(tileName({ z, x, y }), { z, x, y });
  return [...found.values()];
}

export const tileName = ({ z, x, y }: TileAddress): string => `${z}/${x}/${y}`;

const column = (lon: number, z: number): number => Math.floor(((lon + 180) / 360) * 2 ** z);

function row(lat: number, z: number): number {
  const angle = (lat * Math.PI) / 180;
  return Math.floor(((1 - Math.asinh(Math.tan(angle)) / Math.PI) / 2) * 2 ** z);
}

/** Cuts tiles out of the project's GeoTIFF, one after the other; tells how many are done. Null: the image cannot be laid under a map. */
export async function tileCutter(
  place: ProjectPlace,
  path: string,
): Promise<{ readonly cut: (tile: TileAddress) => Promise<Blob>; readonly close: () => void } | null> {
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
    cut: async (tile) => {
      const answer = await ask({ tile });
      if (!('tile' in answer)) throw new Error('The tile did not come.');
      const canvas = new OffscreenCanvas(answer.tile.width, answer.tile.height);
      canvas.getContext('2d')?.drawImage(answer.tile, 0, 0);
      answer.tile.close();
      return canvas.convertToBlob({ type: 'image/webp', quality: 0.75 });
    },
    close: () => worker.terminate(),
  };
}
