/** A quadrat counted by a person: points of a grid, stained or not. */
import { type Defined, defined, type Interval, wilsonInterval } from '@crownfall/statistics';
import { groundToPhoto, projected } from './homography.ts';
import type { PhotoPoint, QuadratFrame } from './photo.ts';

/**
 * Where to look: the middles of `columns` × `rows` equal parts of the frame, in photo pixels, row by row. Empty when the
 * corners do not make a convex quadrilateral.
 * @throws RangeError for less than one column or row, or more than 100.
 */
export function gridPoints(frame: QuadratFrame, columns: number, rows: number): PhotoPoint[] {
  for (const count of [columns, rows]) {
    if (!Number.isInteger(count) || count < 1 || count > 100)
      throw new RangeError(`expected 1–100 points a side, got ${count}`);
  }
  const map = groundToPhoto(frame);
  if (map === null) return [];
  return Array.from({ length: columns * rows }, (_, k) => {
    const x = (((k % columns) + 0.5) / columns) * frame.widthM;
    const y = ((Math.floor(k / columns) + 0.5) / rows) * frame.heightM;
    const [u, v] = projected(map, x, y);
    return [u, v];
  });
}

/**
 * Share of the points that lie on stain, with Wilson's 95 % interval; the points of a grid lie apart, so the interval of
 * independent points is on the safe side. Undefined without points; RangeError unless 0 ≤ stained ≤ points.
 * Source: Wilson 1927 (`wilsonInterval`).
 * @example countedShare(3, 10) // share 0.3, 0.108 to 0.603
 */
export function countedShare(
  stained: number,
  points: number,
): Defined<{ readonly share: number; readonly interval: Interval }> {
  const interval = wilsonInterval(stained, points);
  return interval.defined ? defined({ share: stained / points, interval: interval.value }) : interval;
}
