/** Reckons the overlay of a placed project, here or in several threads; the digits are the same either way. */
import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import {
  type CrownScene,
  type OverlayLedger,
  overlayJob,
  reckonInShares,
  reckonOverlay,
  type ShareWorker,
  sceneInput,
} from '@crownfall/geometry';

const WORKER = new URL('../../../bin/overlay-worker.js', import.meta.url);

/** Below this many pieces starting threads takes longer than it saves. */
const PIECES_FOR_THREADS = 2000;

/** An error in a worker ends the others and is thrown. */
export async function overlayLedger(scene: CrownScene, workers: number): Promise<OverlayLedger> {
  if (workers <= 1 || scene.pieces.length < PIECES_FOR_THREADS) return reckonOverlay(sceneInput(scene));
  const job = overlayJob(scene, true);
  const threads = Array.from({ length: workers }, () => new Worker(WORKER, { workerData: job }));
  try {
    return await reckonInShares(job, threads.map(shareWorker));
  } finally {
    await Promise.all(threads.map((thread) => thread.terminate()));
  }
}

function shareWorker(thread: Worker): ShareWorker {
  return {
    reckon: async (share) => {
      // A copy: the share is a view into the order of all pieces, which the thread has already.
      thread.postMessage(Int32Array.from(share));
      const [ledger] = await once(thread, 'message');
      return ledger as OverlayLedger;
    },
  };
}
