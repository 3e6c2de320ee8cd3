/** The project's GeoTIFF as the page knows it: tiles for the map and suggestions, all made in a worker. */
import type { Finding } from '@crownfall/geometry';
import { addProtocol } from 'maplibre-gl';
import type { ProjectPlace } from '../project/project-files.ts';
import type { OutlineWish, Rings, SuggestedOutline, SuggestedShare } from './crown-suggester.ts';
import type { ImageryAnswer, ImageryAsk } from './imagery.worker.ts';

export interface OpenedImagery {
  readonly tiles: string;
  readonly bounds: readonly [number, number, number, number];
  /** What to know of an image that can be shown: that it is slow, and what to do. */
  readonly notes: readonly Finding[];
}

/** The picture as one who can be asked. */
export interface Picture {
  readonly name: string;
  readonly outline: (wish: OutlineWish) => Promise<SuggestedOutline>;
  /** The first time, `all` crowns are looked at, and `told` hears how far that has come. */
  readonly browned: (
    crown: Rings,
    all: () => readonly Rings[],
    told: (share: number) => void,
  ) => Promise<SuggestedShare>;
}

const SCHEME = 'crownfall-imagery';

/** Reads the file's head; findings when it cannot be laid under the map. Rejects when the file cannot be reached. */
export async function openImagery(
  place: ProjectPlace,
  path: string,
): Promise<{ readonly shown: OpenedImagery; readonly picture: Picture } | readonly Finding[]> {
  const worker = new Worker(new URL('./imagery.worker.ts', import.meta.url), { type: 'module' });
  const ask = asker(worker);
  const opened = await ask({ open: { place, path } });
  if ('refused' in opened) return opened.refused;
  if (!('bounds' in opened)) throw new Error('the image has no bounds');
  addProtocol(SCHEME, async ({ url }, { signal }) => {
    const [z, x, y] = url.slice(`${SCHEME}://`.length).split('/').map(Number);
    const answer = await ask({ tile: { z, x, y } }, { signal });
    // Benchmarks read these.
    performance.mark('imagery-tile');
    return { data: 'tile' in answer ? answer.tile : new ArrayBuffer(0) };
  });
  const { bounds, notes } = opened;
  return { shown: { tiles: `${SCHEME}://{z}/{x}/{y}`, bounds, notes }, picture: pictureOf(path, ask) };
}

function pictureOf(name: string, ask: Asker): Picture {
  let looked: Promise<unknown> | null = null;
  return {
    name,
    outline: async (wish) => {
      const answer = await ask({ outline: wish });
      if (!('outline' in answer)) throw new Error('no outline was told of');
      // Benchmarks read these.
      performance.mark('outline-proposed', { detail: answer.ms });
      return answer.outline;
    },
    browned: async (crown, all, told) => {
      looked ??= ask({ look: all() }, { told }).catch((error) => {
        looked = null;
        throw error;
      });
      await looked;
      const answer = await ask({ browned: crown });
      if (!('browned' in answer)) throw new Error('no share was told of');
      return answer.browned;
    },
  };
}

interface Heeded {
  readonly signal?: AbortSignal;
  readonly told?: (share: number) => void;
}
type Asker = (ask: Omit<ImageryAsk, 'id'>, heeded?: Heeded) => Promise<ImageryAnswer>;

function asker(worker: Worker): Asker {
  interface Waiting extends Pick<Heeded, 'told'> {
    readonly tell: (answer: ImageryAnswer) => void;
    readonly fail: (error: Error) => void;
  }
  const waiting = new Map<number, Waiting>();
  let next = 0;
  worker.addEventListener('message', ({ data }: MessageEvent<ImageryAnswer>) => {
    const asked = waiting.get(data.id);
    if ('share' in data) return asked?.told?.(data.share);
    waiting.delete(data.id);
    if ('failed' in data) asked?.fail(new Error(data.failed));
    else asked?.tell(data);
  });
  return (ask, { signal, told } = {}) =>
    new Promise((tell, fail) => {
      const id = next++;
      waiting.set(id, { tell, fail, ...(told && { told }) });
      signal?.addEventListener('abort', () => {
        if (!waiting.delete(id)) return;
        worker.postMessage({ id, noLonger: true } satisfies ImageryAsk);
        fail(new DOMException('The tile is not wanted any more.', 'AbortError'));
      });
      worker.postMessage({ id, ...ask } satisfies ImageryAsk);
    });
}
