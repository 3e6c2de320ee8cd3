/**
 * The projective map between a flat frame and its photo, from four corners.
 * Source: Heckbert 1989, Fundamentals of Texture Mapping and Image Warping, section 2.2.3 (square to quadrilateral),
 * from memory; checked in the tests on a camera that is built from its pose.
 */
import type { PhotoPoint, QuadratFrame } from './photo.ts';

/** Row by row, 3 × 3: (x, y, 1) on the ground in metres → (u·w, v·w, w) in photo pixels. */
export type Homography = Float64Array;

/** A quadrilateral whose sides meet at less than this is a line to the eye: sine of some 6°. */
const LEAST_SINE = 0.1;

/**
 * Ground (metres from the frame's first corner, x along the first side, y down the second as the photo shows it) to photo.
 * Null when the corners do not make a convex quadrilateral. Corners given the other way round are turned, so that the
 * rectified picture is never mirrored.
 * @example a square of 100 px, 1 m: groundToPhoto(…) maps (0.5, 0.5) to the middle of the square
 */
export function groundToPhoto({ corners, widthM, heightM }: QuadratFrame): Homography | null {
  const turn = turnOf(corners);
  if (turn === 0) return null;
  const [p0, p1, p2, p3] = turn > 0 ? corners : [corners[1], corners[0], corners[3], corners[2]];
  const [sx, sy] = [p0[0] - p1[0] + p2[0] - p3[0], p0[1] - p1[1] + p2[1] - p3[1]];
  const [ax, ay] = [p1[0] - p2[0], p1[1] - p2[1]];
  const [bx, by] = [p3[0] - p2[0], p3[1] - p2[1]];
  const determinant = ax * by - bx * ay;
  const g = (sx * by - bx * sy) / determinant;
  const h = (ax * sy - sx * ay) / determinant;
  const rows = [
    [p1[0] - p0[0] + g * p1[0], p3[0] - p0[0] + h * p3[0], p0[0]],
    [p1[1] - p0[1] + g * p1[1], p3[1] - p0[1] + h * p3[1], p0[1]],
    [g, h, 1],
  ];
  return Float64Array.from(rows.flatMap(([x, y, one]) => [x / widthM, y / heightM, one]));
}

/** The photo point of a ground point; the third number is positive before the camera. */
export function projected(map: Homography, x: number, y: number): [u: number, v: number, w: number] {
  const w = map[6] * x + map[7] * y + map[8];
  return [(map[0] * x + map[1] * y + map[2]) / w, (map[3] * x + map[4] * y + map[5]) / w, w];
}

/** The map back, by cofactors; its third number is positive for photo points before the camera. */
export function inverseOf(map: Homography): Homography {
  const [a, b, c, d, e, f, g, h, i] = map;
  const cofactors = [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
  const determinant = a * cofactors[0] + b * cofactors[3] + c * cofactors[6];
  return Float64Array.from(cofactors, (value) => value / determinant);
}

/** Photo pixels per metre at a ground point, in the directions in which they are least and most. */
export function pixelsPerMetre(
  map: Homography,
  x: number,
  y: number,
): { readonly least: number; readonly most: number } {
  const [u, v, w] = projected(map, x, y);
  const [ux, uy] = [(map[0] - u * map[6]) / w, (map[1] - u * map[7]) / w];
  const [vx, vy] = [(map[3] - v * map[6]) / w, (map[4] - v * map[7]) / w];
  // Singular values of the 2 × 2 Jacobian.
  const [sum, difference] = [Math.hypot(ux + vy, vx - uy), Math.hypot(ux - vy, vx + uy)];
  return { least: Math.abs(sum - difference) / 2, most: (sum + difference) / 2 };
}

/** +1 clockwise as seen (y down), −1 the other way, 0 when not convex. */
function turnOf(corners: readonly PhotoPoint[]): number {
  let sign = 0;
  for (let k = 0; k < 4; k++) {
    const [a, b, c] = [corners[k], corners[(k + 1) % 4], corners[(k + 2) % 4]];
    const [px, py, qx, qy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]];
    const sine = (px * qy - py * qx) / (Math.hypot(px, py) * Math.hypot(qx, qy));
    if (!(Math.abs(sine) > LEAST_SINE) || (sign !== 0 && Math.sign(sine) !== sign)) return 0;
    sign = Math.sign(sine);
  }
  return sign;
}
