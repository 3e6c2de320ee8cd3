import type { LonLatBox } from '../../store/project-store.ts';
import { quoted } from './sql-names.ts';
import type { Connection } from './sqlite-module.ts';

const CELL_BYTES = 8 + 4 * 4;

/**
 * The extent of an R-tree from its root node alone, in a time that does not grow with the table. A node is depth, number
 * of cells (16 bit each), then per cell a 64-bit id and min x, max x, min y, max y in single precision, all big-endian,
 * rounded outwards (SQLite, rtree.c, "on-disk format"). Null when empty.
 */
export function rtreeExtent(db: Connection, rtree: string): LonLatBox | null {
  const root = db
    .prepare(`SELECT data FROM ${quoted(`${rtree}_node`)} WHERE nodeno = 1`)
    .pluck()
    .get() as Uint8Array;
  const view = new DataView(root.buffer, root.byteOffset, root.byteLength);
  const cells = view.getUint16(2);
  if (cells === 0) return null;
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let cell = 0; cell < cells; cell++) {
    const at = 4 + cell * CELL_BYTES + 8;
    const [minX, maxX, minY, maxY] = [0, 4, 8, 12].map((offset) => view.getFloat32(at + offset));
    box[0] = Math.min(box[0], minX);
    box[1] = Math.min(box[1], minY);
    box[2] = Math.max(box[2], maxX);
    box[3] = Math.max(box[3], maxY);
  }
  return box;
}
