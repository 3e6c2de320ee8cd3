/** Slow changes of light over the frame (lens, a wall, a slant of the ground): a plane through its clean cells. */

/** Clean cells that the plane must rest on, as a share of all judged. */
const CLEAN_NEEDED = 0.15;
/** (A) ln of light: further from the patch the frame's cells are not just unevenly lit. */
const MOST = 0.3;
const ROUNDS = 4;
/** A clean cell lies within so many spreads of the surface, and within so much ln of light at least. */
const CLOSE = { spreads: 1.2, least: 0.12 } as const;

/**
 * Darkness of clean ground over the cells, ln units: a + b·column + c·row by least squares through cells that lie within
 * 1.2 of the surface's `spread` of it. All 0 where too few are clean, or where the plane would leave ± 0.3.
 */
export function unevenLight(darkness: Float32Array, judged: Uint8Array, width: number, spread: number): Float32Array {
  const scatter = Math.max(CLOSE.least, CLOSE.spreads * spread);
  const height = darkness.length / width;
  const across = (p: number): number => (p % width) / width - 0.5;
  const down = (p: number): number => Math.floor(p / width) / height - 0.5;
  let plane = [0, 0, 0];
  const at = (p: number): number => plane[0] + plane[1] * across(p) + plane[2] * down(p);
  const all = judged.reduce((sum, one) => sum + one, 0);
  for (let round = 0; round < ROUNDS; round++) {
    const sums = new Float64Array(9);
    for (let p = 0; p < darkness.length; p++) {
      if (judged[p] === 0 || Math.abs(darkness[p] - at(p)) > scatter) continue;
      const [x, y, d] = [across(p), down(p), darkness[p]];
      [1, x, y, x * x, x * y, y * y, d, d * x, d * y].forEach((term, k) => {
        sums[k] += term;
      });
    }
    if (sums[0] < CLEAN_NEEDED * all) return new Float32Array(darkness.length);
    plane = solved(sums);
  }
  const corners = [-0.5, 0.5].flatMap((x) => [-0.5, 0.5].map((y) => plane[0] + plane[1] * x + plane[2] * y));
  if (!corners.every((value) => Math.abs(value) < MOST)) return new Float32Array(darkness.length);
  return darkness.map((_, p) => at(p));
}

/** Normal equations of three unknowns, by Cramer's rule. */
function solved([n, x, y, xx, xy, yy, d, dx, dy]: Float64Array): number[] {
  const rows = [
    [n, x, y],
    [x, xx, xy],
    [y, xy, yy],
  ];
  const right = [d, dx, dy];
  const determinant = det(rows);
  return [0, 1, 2].map((k) => det(rows.map((row, r) => row.map((v, c) => (c === k ? right[r] : v)))) / determinant);
}

function det([[a, b, c], [d, e, f], [g, h, i]]: number[][]): number {
  return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
}
