/**
 * Where an image lies on the ground, from what its file says: a matrix, or a tie point and a pixel size (OGC 19-008r4, GeoTIFF
 * 1.1, clause 7.3 and annex C), several tie points, or a world file beside it.
 */
import { type GeoTransform, pixelToGround } from './georeference.ts';

export interface StatedPlace {
  /** `ModelTransformation`, 16 numbers. */
  readonly matrix: readonly number[] | null;
  readonly pixelScale: readonly number[] | null;
  /** Six numbers per tie point. */
  readonly tiePoints: readonly number[] | null;
  /** `GTRasterType` 2: the position given is that of a pixel's middle. */
  readonly pixelIsPoint: boolean;
  /** The text of a `.tfw`. */
  readonly worldFile?: string | undefined;
}

/**
 * The transform from the outer corner of the first pixel; null when the file does not say. A world file counts only where the
 * image itself is silent.
 */
export function transformFrom(place: StatedPlace): GeoTransform | null {
  const half = place.pixelIsPoint ? 0.5 : 0;
  const { matrix, pixelScale, tiePoints } = place;
  if (matrix !== null && matrix.length >= 8 && matrix.some((one) => one !== 0)) {
    const [columnX, rowX, , originX, columnY, rowY, , originY] = matrix;
    return cornerAt({ originX, columnX, rowX, originY, columnY, rowY }, half, half);
  }
  if (tiePoints !== null && pixelScale !== null && tiePoints.length >= 6 && pixelScale[0] !== 0) {
    const [column, row, , originX, originY] = tiePoints;
    const t = { originX, columnX: pixelScale[0], rowX: 0, originY, columnY: 0, rowY: -pixelScale[1] };
    return cornerAt(t, column + half, row + half);
  }
  if (tiePoints !== null && tiePoints.length >= 18) return throughTiePoints(tiePoints, half);
  return place.worldFile === undefined ? null : fromWorldFile(place.worldFile);
}

/** The transform whose pixel coordinate (column, row) lies where `t` puts (0, 0). */
function cornerAt(t: GeoTransform, column: number, row: number): GeoTransform {
  if (column === 0 && row === 0) return t;
  const [originX, originY] = pixelToGround(t, -column, -row);
  return { ...t, originX, originY };
}

/**
 * The affine map through tie points, least squares; null when it misses one by more than a quarter of a pixel: such an image is
 * warped, and no transform places it.
 */
function throughTiePoints(ties: readonly number[], half: number): GeoTransform | null {
  const points = Array.from({ length: Math.floor(ties.length / 6) }, (_, i) => ties.slice(6 * i, 6 * i + 5));
  const x = planeThrough(points, 3);
  const y = planeThrough(points, 4);
  if (!x || !y) return null;
  const t = { originX: x[0], columnX: x[1], rowX: x[2], originY: y[0], columnY: y[1], rowY: y[2] };
  const pixel = Math.sqrt(Math.abs(t.columnX * t.rowY - t.rowX * t.columnY));
  const misses = points.map(([column, row, , px, py]) => {
    const [gx, gy] = pixelToGround(t, column, row);
    return Math.hypot(gx - px, gy - py);
  });
  return pixel > 0 && Math.max(...misses) <= pixel / 4 ? cornerAt(t, half, half) : null;
}

/** `[a, b, c]` of `value ≈ a + b · column + c · row` by the normal equations about the mean. */
function planeThrough(points: readonly (readonly number[])[], of: 3 | 4): [number, number, number] | null {
  const mean = (k: number) => points.reduce((sum, point) => sum + point[k], 0) / points.length;
  const [column, row, value] = [mean(0), mean(1), mean(of)];
  let [cc, cr, rr, cv, rv] = [0, 0, 0, 0, 0];
  for (const point of points) {
    const [c, r, v] = [point[0] - column, point[1] - row, point[of] - value];
    cc += c * c;
    cr += c * r;
    rr += r * r;
    cv += c * v;
    rv += r * v;
  }
  const determinant = cc * rr - cr * cr;
  if (!(determinant > 1e-12 * cc * rr)) return null;
  const b = (cv * rr - rv * cr) / determinant;
  const c = (rv * cc - cv * cr) / determinant;
  return [value - b * column - c * row, b, c];
}

/** Six lines: x per column, y per column, x per row, y per row, then the middle of the first pixel. */
function fromWorldFile(text: string): GeoTransform | null {
  const numbers = text
    .trim()
    .split(/\s+/)
    .map((word) => Number(word.replace(',', '.')));
  if (numbers.length < 6 || !numbers.slice(0, 6).every(Number.isFinite)) return null;
  const [columnX, columnY, rowX, rowY, originX, originY] = numbers;
  return cornerAt({ originX, columnX, rowX, originY, columnY, rowY }, 0.5, 0.5);
}
