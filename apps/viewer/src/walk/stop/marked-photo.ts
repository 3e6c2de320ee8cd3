/** A photo of a frame on the pavement, measured off the page's own thread. */
import type { PhotoQuadrat, QuadratRefused } from '@crownfall/imagery';
import type { PhotoAnswer, PhotoAsk } from './photo-quadrat.worker.ts';

export interface MarkedPhoto {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8ClampedArray<ArrayBuffer>;
  readonly url: string;
}

/** Longer side in pixels: plenty for a frame that fills half the picture. */
const SIDE_PX = 1800;

export async function readPhoto(file: Blob): Promise<MarkedPhoto> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
  const scale = Math.min(1, SIDE_PX / Math.max(picture.width, picture.height));
  const canvas = new OffscreenCanvas(Math.round(picture.width * scale), Math.round(picture.height * scale));
  const pen = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const { data, width, height } = pen.getImageData(0, 0, canvas.width, canvas.height);
  return { width, height, rgba: data as Uint8ClampedArray<ArrayBuffer>, url: URL.createObjectURL(file) };
}

export interface Marks {
  readonly sideM: number;
  /** Shares of the photo's width and height. */
  readonly corners: readonly (readonly [number, number])[];
  readonly patch: readonly [number, number];
  /** Half the patch's side, as a share of the photo's shorter side. */
  readonly half: number;
}

/** The stained share inside the marks; refused where the photo does not allow one. */
export function measurePhoto(photo: MarkedPhoto, marks: Marks): Promise<PhotoQuadrat | QuadratRefused> {
  const { width, height, rgba } = photo;
  const half = marks.half * Math.min(width, height);
  const [px, py] = [marks.patch[0] * width, marks.patch[1] * height];
  const ask: PhotoAsk = {
    photo: { width, height, rgba },
    corners: marks.corners.map(([x, y]): [number, number] => [x * width, y * height]),
    sideM: marks.sideM,
    patch: [
      [px - half, py - half],
      [px + half, py - half],
      [px + half, py + half],
      [px - half, py + half],
    ],
  };
  const worker = new Worker(new URL('./photo-quadrat.worker.ts', import.meta.url), { type: 'module' });
  return new Promise<PhotoQuadrat | QuadratRefused>((tell, fail) => {
    worker.addEventListener('message', ({ data }: MessageEvent<PhotoAnswer>) => tell(data));
    worker.addEventListener('error', ({ message }) => fail(new Error(message)));
    worker.postMessage(ask);
  }).finally(() => worker.terminate());
}
