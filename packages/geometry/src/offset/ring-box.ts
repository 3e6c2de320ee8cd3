import type { Ring } from '../ring.ts';

/** The box `[minX, minY, maxX, maxY]` around a ring's vertices; NaN for none. */
export function boxOf(ring: Ring): [number, number, number, number] {
  const box: [number, number, number, number] = [ring[0], ring[1], ring[0], ring[1]];
  for (let i = 2; i < ring.length; i += 2) {
    box[0] = Math.min(box[0], ring[i]);
    box[1] = Math.min(box[1], ring[i + 1]);
    box[2] = Math.max(box[2], ring[i]);
    box[3] = Math.max(box[3], ring[i + 1]);
  }
  return box;
}
