/** Begins a job in the browser: a large overlay is shared out among workers, to the very digits that one alone gives. */
import { type Begun, isStopped, type Progress, placeProject, sceneOf } from '@crownfall/assessment';
import { type OverlayJob, type OverlayLedger, overlayJob, reckonInShares, type ShareWorker } from '@crownfall/geometry';
import type { ProjectInput } from '@crownfall/survey';

/** Without memory in common each worker holds the whole scene for itself. */
const THREADS_MOST = { shared: 8, apart: 2 };

/** Undefined when the records stop the job: whoever reckons it says why. */
export async function begunInThreads(input: ProjectInput, progress: Progress): Promise<Begun | undefined> {
  const placed = placeProject(input, progress);
  if (isStopped(placed)) return undefined;
  const scene = sceneOf(placed);
  const most = crossOriginIsolated ? THREADS_MOST.shared : THREADS_MOST.apart;
  const threads = Math.min(navigator.hardwareConcurrency, most);
  if (threads < 2) return { placed };
  const job = overlayJob(scene, crossOriginIsolated);
  const workers = Array.from({ length: threads }, () => startWorker(job));
  try {
    const overlay = await reckonInShares(job, workers, (done, total) => progress('overlay', done, total));
    return { placed, overlay };
  } finally {
    for (const worker of workers) worker.end();
  }
}

function startWorker(job: OverlayJob): ShareWorker & { readonly end: () => void } {
  const worker = new Worker(new URL('./overlay.worker.ts', import.meta.url), { type: 'module' });
  worker.postMessage(job);
  return {
    // A share is a view into the order of all pieces: a copy of it alone is sent.
    reckon: (share) =>
      new Promise<OverlayLedger>((told, failed) => {
        worker.onmessage = ({ data }: MessageEvent<OverlayLedger>) => told(data);
        worker.onerror = ({ message }) => failed(new Error(message || 'A part of the reckoning stopped unexpectedly.'));
        worker.postMessage(Int32Array.from(share));
      }),
    end: () => worker.terminate(),
  };
}
