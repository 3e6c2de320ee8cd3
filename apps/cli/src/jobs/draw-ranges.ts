/** Draws the ranges of a reckoned job, here or shared out among workers; the digits are the same either way. */
import { Worker } from 'node:worker_threads';
import { type DrawnRanges, type DrawPart, type DrawWork, drawPart, gatherDraws } from '@crownfall/assessment';

export interface DrawOptions {
  readonly draws: number;
  readonly seed: number;
  /** Threads to share the draws out to. */
  readonly workers: number;
}

/** What a worker is sent. */
export interface DrawTask {
  readonly work: DrawWork;
  readonly from: number;
  readonly to: number;
}

const WORKER = new URL('../../bin/draw-worker.js', import.meta.url);

/** Ranges from `draws` draws. An error in a worker ends the others and is thrown. */
export async function drawRanges(work: DrawWork, { draws, workers }: DrawOptions): Promise<DrawnRanges> {
  if (workers <= 1) return gatherDraws(work, [drawPart(work, 0, draws)]);
  const starts = Array.from({ length: workers + 1 }, (_, i) => Math.round((i * draws) / workers));
  const running: Worker[] = [];
  const parts = starts.slice(0, -1).map((from, i) => {
    const task: DrawTask = { work, from, to: starts[i + 1] };
    const worker = new Worker(WORKER, { workerData: task });
    running.push(worker);
    return partOf(worker);
  });
  try {
    return gatherDraws(work, await Promise.all(parts));
  } finally {
    await Promise.all(running.map((worker) => worker.terminate()));
  }
}

function partOf(worker: Worker): Promise<DrawPart> {
  return new Promise((found, fail) => {
    worker.once('message', found);
    worker.once('error', fail);
    worker.once('exit', (code) => fail(new Error(`a worker ended with ${code} before its draws were done`)));
  });
}
