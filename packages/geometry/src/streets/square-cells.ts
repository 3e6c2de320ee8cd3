/**
 * Square cells in place of blocks, where there are no streets.
 */
import type { Region } from '../ring.ts';

/** A box of the plane, metres. */
export interface Extent {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** More cells than this are a mistake in the extent or the side, not a wish. */
const MOST_CELLS = 4_000_000;

/**
 * Square cells of `sideM` that cover an extent, row by row from the south-west. Their corners are whole multiples of the
 * side from the plane's origin, so a larger extent leaves the cells it shares unchanged; a point on a border between two
 * cells lies in both. An extent without width or height gets the cells that hold it; one with maximum below minimum (nothing
 * to cover) gives none.
 *
 * @throws RangeError for a side not above 0, an extent not finite, or more than 4 million cells
 * @example squareCells({ minX: 5, minY: 5, maxX: 150, maxY: 60 }, 100).length // 2
 */
export function squareCells(extent: Extent, sideM: number): Region[] {
  if (!(sideM > 0 && Number.isFinite(sideM))) throw new RangeError(`expected a side above 0 m, got ${sideM}`);
  if (extent.maxX < extent.minX || extent.maxY < extent.minY) return [];
  const [firstColumn, lastColumn] = cellRange(extent.minX, extent.maxX, sideM);
  const [firstRow, lastRow] = cellRange(extent.minY, extent.maxY, sideM);
  const count = (lastColumn - firstColumn) * (lastRow - firstRow);
  if (!(count <= MOST_CELLS)) throw new RangeError(`expected at most ${MOST_CELLS} cells, got ${count}`);
  const cells: Region[] = [];
  for (let row = firstRow; row < lastRow; row++) {
    for (let column = firstColumn; column < lastColumn; column++) {
      const [x0, y0, x1, y1] = [column, row, column + 1, row + 1].map((n) => n * sideM);
      cells.push([Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1)]);
    }
  }
  return cells;
}

function cellRange(low: number, high: number, sideM: number): [number, number] {
  const first = Math.floor(low / sideM);
  return [first, Math.max(first + 1, Math.ceil(high / sideM))];
}
