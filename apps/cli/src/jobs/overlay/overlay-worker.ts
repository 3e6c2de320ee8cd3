/** A thread's side of the overlay: reckons the shares it is sent and hands the ledgers back without copying. */
import { parentPort, workerData } from 'node:worker_threads';
import { type OverlayJob, ShareReckoner } from '@crownfall/geometry';

export function answerShares(): void {
  const reckoner = new ShareReckoner(workerData as OverlayJob);
  parentPort?.on('message', (share: Int32Array) => {
    const ledger = reckoner.reckon(share);
    const { piece, block, areaM2, coverStart, zone, layer } = ledger;
    const arrays = [piece, block, areaM2, coverStart, zone, layer];
    parentPort?.postMessage(
      ledger,
      arrays.map((array) => array.buffer as ArrayBuffer),
    );
  });
}
