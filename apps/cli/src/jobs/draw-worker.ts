/** A worker's side of the draws: makes its part and hands it back without copying. */
import { parentPort, workerData } from 'node:worker_threads';
import { drawPart } from '@crownfall/assessment';
import type { DrawTask } from './draw-ranges.ts';

export function drawInWorker(): void {
  const { work, from, to } = workerData as DrawTask;
  const part = drawPart(work, from, to);
  const { total, blocks, kinds, crowns, top } = part;
  const arrays = [total.value, blocks.value, kinds.value, crowns.count, crowns.least, crowns.most, top];
  parentPort?.postMessage(
    part,
    arrays.map((array) => array.buffer as ArrayBuffer),
  );
}
