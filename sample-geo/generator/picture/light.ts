/** Sun and shade: how much direct light each cell gets, from the slope of its surface and what stands towards the sun. */
import { type Canvas, CELL_M } from './canvas.ts';

/** Towards the sun: bearing clockwise from north, and height above the horizon. */
const SUN = { bearingDeg: 138, heightDeg: 50 } as const;

const BEARING = (SUN.bearingDeg * Math.PI) / 180;
const HEIGHT = (SUN.heightDeg * Math.PI) / 180;
const TOWARDS = { x: Math.sin(BEARING), y: Math.cos(BEARING) };

/** Direct light by cell: 0 in shade, 100 on level ground in the sun, up to 150 on slopes that face it. */
export function directLight(canvas: Canvas): Uint8Array {
  const highest = canvas.heightM.reduce((a, b) => Math.max(a, b), 0);
  const light = new Uint8Array(canvas.width * canvas.height);
  for (let row = 0; row < canvas.height; row++) {
    for (let column = 0; column < canvas.width; column++) {
      const shade = shaded(canvas, column, row, highest);
      light[row * canvas.width + column] = shade ? 0 : facing(canvas, column, row);
    }
  }
  return light;
}

function shaded(canvas: Canvas, column: number, row: number, highest: number): boolean {
  const { width, height, heightM } = canvas;
  const rise = Math.tan(HEIGHT) * CELL_M;
  const own = heightM[row * width + column] + 0.25;
  const step = 1.5;
  for (let way = 2; ; way += step) {
    const needed = own + way * rise;
    if (needed > highest) return false;
    const c = Math.round(column + TOWARDS.x * way);
    const r = Math.round(row - TOWARDS.y * way);
    if (c < 0 || r < 0 || c >= width || r >= height) return false;
    if (heightM[r * width + c] > needed) return true;
  }
}

/** Lambert's cosine, relative to level ground. */
function facing(canvas: Canvas, column: number, row: number): number {
  const { width, height, heightM } = canvas;
  const at = row * width + column;
  const own = heightM[at];
  if (own < 0.5) return 100;
  const east = heightM[at + (column + 2 < width ? 2 : 0)];
  const west = heightM[at - (column >= 2 ? 2 : 0)];
  const north = heightM[at - (row >= 2 ? 2 * width : 0)];
  const south = heightM[at + (row + 2 < height ? 2 * width : 0)];
  // A drop of more than two metres is an edge, not a slope.
  const slope = (a: number, b: number) => (Math.abs(a - own) > 2 || Math.abs(b - own) > 2 ? 0 : (a - b) / (4 * CELL_M));
  const sx = Math.max(-1.6, Math.min(1.6, slope(east, west)));
  const sy = Math.max(-1.6, Math.min(1.6, slope(north, south)));
  const cosine = (-sx * TOWARDS.x - sy * TOWARDS.y) * Math.cos(HEIGHT) + Math.sin(HEIGHT);
  const lit = cosine / Math.sqrt(1 + sx * sx + sy * sy) / Math.sin(HEIGHT);
  return Math.round(100 * Math.max(0, Math.min(1.5, lit)));
}
