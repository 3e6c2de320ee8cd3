/** The pavement seen from straight above: square cells on the ground, each the mean light of the photo pixels below it. */
import { linearLight } from '../analysis/cielab.ts';
import { type Homography, pixelsPerMetre, projected } from './homography.ts';
import type { Photo } from './photo.ts';

/** Cells row by row; light is linear, 0–1 of the sensor's white. */
export interface GroundCells {
  readonly width: number;
  readonly height: number;
  readonly red: Float32Array;
  readonly green: Float32Array;
  readonly blue: Float32Array;
  /** 1 where a pixel below the cell is at the end of its scale, so that its light is not known. */
  readonly clipped: Uint8Array;
}

/** Where cells lie on the ground: the upper left corner and the side of a cell, metres. */
export interface CellGrid {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
  readonly cellM: number;
}

/** From here on a sample may have been more: cameras round the shoulder of their curve. */
const CLIPPED_FROM = 253;
/** Samples a side of a cell at most: with each reaching one pixel round, 8 cover a cell of 16 pixels. */
const MOST_SAMPLES = 8;

const LINEAR = Float32Array.from({ length: 256 }, (_, level) => linearLight(level / 255));

/**
 * Averages n × n bilinear samples a cell in linear light, one for each photo pixel that the cell spans (64 at most):
 * a cell half covered has half the light, and no pattern finer than a cell turns into a coarse one.
 * Cells beyond the photo's edge hold NaN.
 */
export function groundCells(photo: Photo, map: Homography, grid: CellGrid): GroundCells {
  const { width, height, left, top, cellM } = grid;
  const bands = [0, 1, 2].map(() => new Float32Array(width * height));
  const clipped = new Uint8Array(width * height);
  const sum = new Float64Array(4);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const [x, y] = [left + column * cellM, top + row * cellM];
      const { most } = pixelsPerMetre(map, x + cellM / 2, y + cellM / 2);
      const n = Math.min(MOST_SAMPLES, Math.max(2, Math.ceil(most * cellM)));
      sum.fill(0);
      for (let k = 0; k < n * n; k++) {
        const [u, v] = projected(map, x + (((k % n) + 0.5) / n) * cellM, y + ((Math.floor(k / n) + 0.5) / n) * cellM);
        addSample(photo, u - 0.5, v - 0.5, sum);
      }
      const cell = row * width + column;
      for (let b = 0; b < 3; b++) bands[b][cell] = sum[b] / (n * n);
      clipped[cell] = sum[3] > 0 ? 1 : 0;
    }
  }
  return { width, height, red: bands[0], green: bands[1], blue: bands[2], clipped };
}

/** Adds the light at a point between pixel middles; NaN beyond half a pixel outside the photo. */
function addSample({ width, height, rgba }: Photo, u: number, v: number, sum: Float64Array): void {
  if (!(u >= -0.5 && v >= -0.5 && u <= width - 0.5 && v <= height - 0.5)) {
    sum[0] = sum[1] = sum[2] = Number.NaN;
    return;
  }
  const c0 = Math.min(Math.max(0, Math.floor(u)), width - 1);
  const r0 = Math.min(Math.max(0, Math.floor(v)), height - 1);
  const right = Math.min(Math.max(0, u - c0), 1);
  const down = Math.min(Math.max(0, v - r0), 1);
  const at = (r0 * width + c0) * 4;
  const across = c0 + 1 < width ? 4 : 0;
  const below = r0 + 1 < height ? width * 4 : 0;
  for (let b = 0; b < 3; b++) {
    const [p, q, r, s] = [rgba[at + b], rgba[at + across + b], rgba[at + below + b], rgba[at + below + across + b]];
    const upper = LINEAR[p] * (1 - right) + LINEAR[q] * right;
    sum[b] += upper * (1 - down) + (LINEAR[r] * (1 - right) + LINEAR[s] * right) * down;
    if (p >= CLIPPED_FROM) sum[3]++;
  }
}
