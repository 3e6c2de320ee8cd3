import { equalAreaPlane } from '@crownfall/geometry';

/** Metres between two positions of one town, over its local plane. */
export function metresBetween(a: readonly [number, number], b: readonly [number, number]): number {
  const plane = equalAreaPlane([Float64Array.from(a), Float64Array.from(b)]);
  const [[ax, ay], [bx, by]] = [plane.forward(Float64Array.from(a)), plane.forward(Float64Array.from(b))];
  return Math.hypot(bx - ax, by - ay);
}
