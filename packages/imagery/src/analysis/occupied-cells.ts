/** Cells that existing outlines take, with a margin of one cell, and points along those outlines. */
import { groundToPixel } from '../georeference.ts';
import type { Window } from '../window.ts';
import type { FoliageScene } from './foliage-scene.ts';

export interface OccupiedCells {
  /** 1 where a cell's middle lies in an outline, or a cell beside it does. */
  readonly cells: Uint8Array;
  /** Points along the outlines, in cells, not farther apart than half a cell; flat. */
  readonly borderPoints: readonly number[];
}

/** @param outlines flat open rings in the image's coordinate system */
export function occupiedCells(
  window: Window,
  scene: FoliageScene,
  outlines: readonly ArrayLike<number>[],
): OccupiedCells {
  const { width, height } = scene;
  const inside = new Uint8Array(width * height);
  const borderPoints: number[] = [];
  for (const outline of outlines) {
    const ring = cellRing(window, scene, outline);
    fillRing(ring, scene, inside);
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const steps = Math.max(1, Math.ceil(2 * Math.hypot(ring[i] - ring[j], ring[i + 1] - ring[j + 1])));
      for (let s = 0; s < steps; s++) {
        const x = ring[j] + ((ring[i] - ring[j]) * s) / steps;
        const y = ring[j + 1] + ((ring[i + 1] - ring[j + 1]) * s) / steps;
        if (x >= 0 && y >= 0 && x <= width && y <= height) borderPoints.push(x, y);
        mark(inside, scene, x, y);
      }
    }
  }
  return { cells: grown(inside, width, height), borderPoints };
}

function cellRing(window: Window, { factor }: FoliageScene, outline: ArrayLike<number>): Float64Array {
  const ring = new Float64Array(outline.length);
  for (let i = 0; i + 1 < outline.length; i += 2) {
    const [column, row] = groundToPixel(window.transform, outline[i], outline[i + 1]);
    ring[i] = column / factor;
    ring[i + 1] = row / factor;
  }
  return ring;
}

function mark(cells: Uint8Array, { width, height }: FoliageScene, x: number, y: number): void {
  const [c, r] = [Math.floor(x), Math.floor(y)];
  if (c >= 0 && r >= 0 && c < width && r < height) cells[r * width + c] = 1;
}

/** Even-odd, by the middles of cells. */
function fillRing(ring: Float64Array, { width, height }: FoliageScene, cells: Uint8Array): void {
  let [top, bottom] = [Infinity, -Infinity];
  for (let i = 1; i < ring.length; i += 2) {
    top = Math.min(top, ring[i]);
    bottom = Math.max(bottom, ring[i]);
  }
  for (let row = Math.max(0, Math.floor(top)); row <= Math.min(height - 1, bottom); row++) {
    const cuts: number[] = [];
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [y0, y1] = [ring[j + 1], ring[i + 1]];
      const y = row + 0.5;
      if (y0 > y !== y1 > y) cuts.push(ring[j] + ((ring[i] - ring[j]) * (y - y0)) / (y1 - y0));
    }
    cuts.sort((a, b) => a - b);
    for (let k = 0; k + 1 < cuts.length; k += 2) {
      const to = Math.min(width - 1, Math.ceil(cuts[k + 1] - 0.5) - 1);
      for (let column = Math.max(0, Math.ceil(cuts[k] - 0.5)); column <= to; column++) cells[row * width + column] = 1;
    }
  }
}

function grown(cells: Uint8Array, width: number, height: number): Uint8Array {
  const out = new Uint8Array(cells.length);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      if (cells[row * width + column] === 0) continue;
      for (let r = Math.max(0, row - 1); r <= Math.min(height - 1, row + 1); r++) {
        for (let c = Math.max(0, column - 1); c <= Math.min(width - 1, column + 1); c++) out[r * width + c] = 1;
      }
    }
  }
  return out;
}
