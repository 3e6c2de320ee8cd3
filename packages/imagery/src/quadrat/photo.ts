/** A photo as a browser's canvas gives it, and what a person marks on it. */

/** 8-bit sRGB, four samples a pixel (the fourth is not used), rows from the top left; upright. */
export interface Photo {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8ClampedArray | Uint8Array;
}

/** Photo pixels from the left and from the top; pixel (0, 0) covers [0, 1) × [0, 1). */
export type PhotoPoint = readonly [x: number, y: number];

/** A frame of known size lying on the pavement. */
export interface QuadratFrame {
  /** In order round the frame, either way; the side from the first to the second is `widthM` long. */
  readonly corners: readonly [PhotoPoint, PhotoPoint, PhotoPoint, PhotoPoint];
  readonly widthM: number;
  readonly heightM: number;
}

/** @throws TypeError or RangeError when samples or sizes cannot be those of a photo and a frame. */
export function expectPhotoAndFrame({ width, height, rgba }: Photo, { widthM, heightM }: QuadratFrame): void {
  if (rgba.length !== width * height * 4) {
    throw new TypeError(`photo: expected ${width} × ${height} × 4 samples, got ${rgba.length}`);
  }
  for (const side of [widthM, heightM]) {
    if (!(side > 0 && side < 100)) throw new RangeError(`frame: expected sides of 0–100 m, got ${side}`);
  }
}
