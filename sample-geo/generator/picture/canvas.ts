/** The painted plan: cells of half a pixel, north up, each with what lies there, how high it reaches, and whose crown it is. */
import type { Point } from '../town/loop.ts';
import { boundsOf, type Ring } from '../town/shapes.ts';

export const CELL_M = 0.125;

export interface Canvas {
  readonly width: number;
  readonly height: number;
  /** Plan position of the outer corner of the first cell. */
  readonly left: number;
  readonly top: number;
  readonly material: Uint8Array;
  /** Above the ground, m. */
  readonly heightM: Float32Array;
  /** Number of the crown on top, from 1; 0 where there is none; `YARD_TREE` for one that no inventory holds. */
  readonly crown: Int16Array;
  readonly browned: Uint8Array;
  /** Brightness of the surface's own grain, 128 = 1. */
  readonly grain: Uint8Array;
}

export const YARD_TREE = -1;

export function blankCanvas([left, bottom]: Point, [widthM, heightM]: Point): Canvas {
  const width = Math.round(widthM / CELL_M);
  const height = Math.round(heightM / CELL_M);
  const cells = width * height;
  return {
    width,
    height,
    left,
    top: bottom + height * CELL_M,
    material: new Uint8Array(cells),
    heightM: new Float32Array(cells),
    crown: new Int16Array(cells),
    browned: new Uint8Array(cells),
    grain: new Uint8Array(cells).fill(128),
  };
}

/** Calls `paint` with the index of every cell whose middle lies inside the rings (even-odd) and its plan position. */
export function fill(
  canvas: Canvas,
  rings: readonly Ring[],
  paint: (cell: number, x: number, y: number) => void,
): void {
  const bounds = rings.map(boundsOf);
  const lowest = Math.min(...bounds.map((b) => b[1]));
  const highest = Math.max(...bounds.map((b) => b[3]));
  const rowFrom = Math.max(0, Math.floor((canvas.top - highest) / CELL_M));
  const rowTo = Math.min(canvas.height - 1, Math.ceil((canvas.top - lowest) / CELL_M));
  for (let row = rowFrom; row <= rowTo; row++) {
    const y = canvas.top - (row + 0.5) * CELL_M;
    const cuts = rings.flatMap((ring) => cutsAt(ring, y)).toSorted((a, b) => a - b);
    for (let k = 0; k + 1 < cuts.length; k += 2) {
      const from = Math.max(0, Math.ceil((cuts[k] - canvas.left) / CELL_M - 0.5));
      const to = Math.min(canvas.width - 1, Math.floor((cuts[k + 1] - canvas.left) / CELL_M - 0.5));
      for (let column = from; column <= to; column++) {
        paint(row * canvas.width + column, canvas.left + (column + 0.5) * CELL_M, y);
      }
    }
  }
}

/** Paints one material at one height. */
export function cover(canvas: Canvas, rings: readonly Ring[], material: number, heightM = 0): void {
  fill(canvas, rings, (cell) => {
    canvas.material[cell] = material;
    canvas.heightM[cell] = heightM;
  });
}

function cutsAt(ring: Ring, y: number): number[] {
  const cuts: number[] = [];
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [x0, y0] = ring[j];
    const [x1, y1] = ring[i];
    if (y0 > y !== y1 > y) cuts.push(x0 + ((x1 - x0) * (y - y0)) / (y1 - y0));
  }
  return cuts;
}
