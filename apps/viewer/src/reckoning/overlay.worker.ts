/** One of several workers on an overlay: is sent the job, then share after share, and hands the ledgers back without copying. */
import { type OverlayJob, ShareReckoner } from '@crownfall/geometry';

let reckoner: ShareReckoner | null = null;

self.addEventListener('message', ({ data }: MessageEvent<OverlayJob | Int32Array>) => {
  if (!(data instanceof Int32Array)) {
    reckoner = new ShareReckoner(data);
    return;
  }
  if (!reckoner) throw new Error('A share came before its job.');
  const ledger = reckoner.reckon(data);
  const { piece, block, areaM2, coverStart, zone, layer } = ledger;
  const arrays = [piece, block, areaM2, coverStart, zone, layer];
  postMessage(ledger, { transfer: arrays.map(({ buffer }) => buffer as ArrayBuffer) });
});
