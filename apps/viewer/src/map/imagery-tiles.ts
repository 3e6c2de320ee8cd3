/** The project's GeoTIFF as map tiles: asked for by the map, cut and reprojected in a worker. */
import type { Finding } from '@crownfall/geometry';
import { addProtocol } from 'maplibre-gl';
import type { ProjectPlace } from '../project/project-files.ts';
import type { ImageryAnswer, ImageryAsk } from './imagery.worker.ts';

export interface OpenedImagery {
  readonly tiles: string;
  readonly bounds: readonly [number, number, number, number];
  /** What to know of an image that can be shown: that it is slow, and what to do. */
  readonly notes: readonly Finding[];
}

const SCHEME = 'crownfall-imagery';

/** Reads the file's head; findings when it cannot be laid under the map. Rejects when the file cannot be reached. */
export async function openImagery(place: ProjectPlace, path: string): Promise<OpenedImagery | readonly Finding[]> {
  const worker = new Worker(new URL('./imagery.worker.ts', import.meta.url), { type: 'module' });
  const ask = asker(worker);
  const opened = await ask({ open: { place, path } });
  if ('refused' in opened) return opened.refused;
  if (!('bounds' in opened)) throw new Error('the image has no bounds');
  addProtocol(SCHEME, async ({ url }, { signal }) => {
    const [z, x, y] = url.slice(`${SCHEME}://`.length).split('/').map(Number);
    const answer = await ask({ tile: { z, x, y } }, signal);
    // Benchmarks read these.
    performance.mark('imagery-tile');
    return { data: 'tile' in answer ? answer.tile : new ArrayBuffer(0) };
  });
  return { tiles: `${SCHEME}://{z}/{x}/{y}`, bounds: opened.bounds, notes: opened.notes };
}

type Asker = (ask: Omit<ImageryAsk, 'id'>, signal?: AbortSignal) => Promise<ImageryAnswer>;

function asker(worker: Worker): Asker {
  const waiting = new Map<number, { tell: (answer: ImageryAnswer) => void; fail: (error: Error) => void }>();
  let next = 0;
  worker.addEventListener('message', ({ data }: MessageEvent<ImageryAnswer>) => {
    const asked = waiting.get(data.id);
    waiting.delete(data.id);
    if ('failed' in data) asked?.fail(new Error(data.failed));
    else asked?.tell(data);
  });
  return (ask, signal) =>
    new Promise((tell, fail) => {
      const id = next++;
      waiting.set(id, { tell, fail });
      signal?.addEventListener('abort', () => {
        if (!waiting.delete(id)) return;
        worker.postMessage({ id, noLonger: true } satisfies ImageryAsk);
        fail(new DOMException('The tile is not wanted any more.', 'AbortError'));
      });
      worker.postMessage({ id, ...ask } satisfies ImageryAsk);
    });
}
