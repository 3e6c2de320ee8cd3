/**
 * From owned cells to rings that share their borders: neighbours have the same vertices along a common border, so that
 * they neither overlap nor gape, and stay so when the rings are simplified together.
 */
import type { LabelRaster } from './region-cells.ts';

/** Rings of vertex numbers; vertex v lies at (x[v], y[v]) in cells from the raster's top left corner. */
export interface SharedRings {
  readonly x: number[];
  readonly y: number[];
  /** By label (index 0 is unused); each ring goes once around its label, counter-clockwise with y down. */
  readonly rings: readonly (readonly number[])[];
}

/** Directions right, down, left, up, in cell corners. */
const STEP = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

/**
 * The outer ring of each label, 1 to `count`; each label is in one piece (connected by sides). Vertices are the middles of
 * the cells' sides on the border, which rounds off the staircase, and the corners where three labels meet. A label that
 * owns nothing has an empty ring.
 */
export function sharedRings(raster: LabelRaster, count: number): SharedRings {
  const { width, labels } = raster;
  const first = new Int32Array(count + 1).fill(-1);
  for (let p = labels.length - 1; p >= 0; p--) if (labels[p] > 0) first[labels[p]] = p;
  const x: number[] = [];
  const y: number[] = [];
  const known = new Map<number, number>();
  const vertex = (twiceX: number, twiceY: number): number => {
    const key = twiceY * (2 * width + 3) + twiceX;
    let v = known.get(key);
    if (v === undefined) {
      v = x.length;
      known.set(key, v);
      x.push(twiceX / 2);
      y.push(twiceY / 2);
    }
    return v;
  };
  const rings = Array.from(first, (cell, label) =>
    label === 0 || cell < 0 ? [] : ringOf(raster, label, cell, vertex),
  );
  return { x, y, rings };
}

/** Walks the border with the label on the right hand (y down: clockwise as seen), from its first cell's top side. */
function ringOf(
  raster: LabelRaster,
  label: number,
  cell: number,
  vertex: (twiceX: number, twiceY: number) => number,
): number[] {
  const startX = cell % raster.width;
  const startY = Math.floor(cell / raster.width);
  const ring: number[] = [];
  let [cx, cy, direction] = [startX, startY, 0];
  do {
    const [dx, dy] = STEP[direction];
    ring.push(vertex(2 * cx + dx, 2 * cy + dy));
    cx += dx;
    cy += dy;
    if (isMeeting(raster, cx, cy)) ring.push(vertex(2 * cx, 2 * cy));
    direction = turn(raster, label, cx, cy, direction);
  } while (cx !== startX || cy !== startY || direction !== 0);
  return ring;
}

/** The next direction at a corner: towards the own cells, so that cells touching only at a corner stay apart. */
function turn(raster: LabelRaster, label: number, cx: number, cy: number, direction: number): number {
  for (const way of [1, 0, 3]) {
    const next = (direction + way) % 4;
    if (labelRightOf(raster, cx, cy, next) === label && labelRightOf(raster, cx, cy, (next + 3) % 4) !== label)
      return next;
  }
  return (direction + 2) % 4;
}

/** The label of the cell on the right hand when leaving corner (cx, cy) in a direction. */
function labelRightOf(raster: LabelRaster, cx: number, cy: number, direction: number): number {
  if (direction === 0) return labelAt(raster, cx, cy);
  if (direction === 1) return labelAt(raster, cx - 1, cy);
  return direction === 2 ? labelAt(raster, cx - 1, cy - 1) : labelAt(raster, cx, cy - 1);
}

function labelAt({ width, height, labels }: LabelRaster, column: number, row: number): number {
  return column < 0 || row < 0 || column >= width || row >= height ? 0 : labels[row * width + column];
}

/** Three or four labels meet here; not where two cells of one label touch only by this corner, which would pinch its ring. */
function isMeeting(raster: LabelRaster, cx: number, cy: number): boolean {
  const [a, b, c, d] = [
    labelAt(raster, cx - 1, cy - 1),
    labelAt(raster, cx, cy - 1),
    labelAt(raster, cx, cy),
    labelAt(raster, cx - 1, cy),
  ];
  const pinched = (a === c && a !== b && a !== d) || (b === d && b !== a && b !== c);
  return !pinched && new Set([a, b, c, d]).size >= 3;
}
