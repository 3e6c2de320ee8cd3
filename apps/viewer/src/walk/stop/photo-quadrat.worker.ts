/** Reckons a quadrat on a photo. */
import { type Photo, type PhotoPoint, type PhotoQuadrat, photoQuadrat, type QuadratRefused } from '@crownfall/imagery';

export interface PhotoAsk {
  readonly photo: Photo;
  readonly corners: readonly PhotoPoint[];
  readonly sideM: number;
  readonly patch: readonly PhotoPoint[];
}
export type PhotoAnswer = PhotoQuadrat | QuadratRefused;

self.addEventListener('message', ({ data }: MessageEvent<PhotoAsk>) => {
  const [a, b, c, d] = data.corners;
  const frame = { corners: [a, b, c, d] as const, widthM: data.sideM, heightM: data.sideM };
  postMessage(photoQuadrat(data.photo, frame, data.patch) satisfies PhotoAnswer);
});
