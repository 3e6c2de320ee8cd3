/** Regions of cells: filled, rid of whiskers, and kept in one piece. */

/** A window of cells with the number of the crown that owns each; 0 = nobody. */
export interface LabelRaster {
  readonly width: number;
  readonly height: number;
  readonly labels: Int32Array;
}

/**
 * Rids each label of whiskers (an opening with a square of 2r + 1 cells), keeps the piece that holds its anchor (else the
 * largest), and fills holes that no other label lies in. Works in place.
 */
export function tidyLabels(raster: LabelRaster, anchors: readonly number[], r: number): void {
  openLabels(raster, r);
  keepOnePiece(raster, anchors);
  fillHoles(raster);
}

/** Cells whose square of side 2r + 1 is of one label, and the squares around those; others are given up. */
function openLabels({ width, height, labels }: LabelRaster, r: number): void {
  if (r === 0) return;
  const core = new Uint8Array(labels.length);
  for (let row = r; row < height - r; row++) {
    for (let column = r; column < width - r; column++) {
      const p = row * width + column;
      if (labels[p] > 0 && isUniform(labels, p, width, r)) core[p] = 1;
    }
  }
  const kept = new Int32Array(labels.length);
  for (let p = 0; p < core.length; p++) {
    if (core[p] === 0) continue;
    for (let dr = -r; dr <= r; dr++) {
      for (let dc = -r; dc <= r; dc++) kept[p + dr * width + dc] = labels[p];
    }
  }
  labels.set(kept);
}

function isUniform(labels: Int32Array, p: number, width: number, r: number): boolean {
  for (let dr = -r; dr <= r; dr++) {
    for (let dc = -r; dc <= r; dc++) if (labels[p + dr * width + dc] !== labels[p]) return false;
  }
  return true;
}

function keepOnePiece({ width, height, labels }: LabelRaster, anchors: readonly number[]): void {
  const piece = new Int32Array(labels.length);
  const sizes: number[] = [0];
  const owners: number[] = [0];
  for (let start = 0; start < labels.length; start++) {
    if (labels[start] === 0 || piece[start] !== 0) continue;
    sizes.push(flood(start, { width, height }, piece, sizes.length, (p) => labels[p] === labels[start]));
    owners.push(labels[start]);
  }
  const chosen = new Map<number, number>();
  for (let i = 1; i < sizes.length; i++) {
    const best = chosen.get(owners[i]);
    if (best === undefined || sizes[i] > sizes[best]) chosen.set(owners[i], i);
  }
  anchors.forEach((anchor, i) => {
    if (anchor >= 0 && labels[anchor] === i + 1) chosen.set(i + 1, piece[anchor]);
  });
  for (let p = 0; p < labels.length; p++) if (labels[p] > 0 && chosen.get(labels[p]) !== piece[p]) labels[p] = 0;
}

/** Unowned cells that one label alone shuts in become that label's. Works in place. */
export function fillHoles({ width, height, labels }: LabelRaster): void {
  const hole = new Int32Array(labels.length);
  let count = 0;
  for (let start = 0; start < labels.length; start++) {
    if (labels[start] !== 0 || hole[start] !== 0) continue;
    count++;
    let owner = -1;
    let open = false;
    const cells: number[] = [];
    flood(
      start,
      { width, height },
      hole,
      count,
      (p) => labels[p] === 0,
      (p, column, row) => {
        cells.push(p);
        if (column === 0 || row === 0 || column === width - 1 || row === height - 1) open = true;
        for (const q of [p - 1, p + 1, p - width, p + width]) {
          const label = labels[q] ?? 0;
          if (label === 0) continue;
          if (owner === -1) owner = label;
          else if (owner !== label) open = true;
        }
      },
    );
    if (!open && owner > 0) for (const p of cells) labels[p] = owner;
  }
}

/** Marks the cells connected to `start` by sides; tells how many. */
function flood(
  start: number,
  { width, height }: { readonly width: number; readonly height: number },
  marks: Int32Array,
  mark: number,
  belongs: (p: number) => boolean,
  visit: (p: number, column: number, row: number) => void = () => {},
): number {
  const stack = [start];
  marks[start] = mark;
  let size = 0;
  for (let p = stack.pop(); p !== undefined; p = stack.pop()) {
    size++;
    const column = p % width;
    const row = (p - column) / width;
    visit(p, column, row);
    if (column > 0) reach(p - 1);
    if (column < width - 1) reach(p + 1);
    if (row > 0) reach(p - width);
    if (row < height - 1) reach(p + width);
  }
  return size;

  function reach(q: number): void {
    if (marks[q] !== 0 || !belongs(q)) return;
    marks[q] = mark;
    stack.push(q);
  }
}
