/**
 * Exact Euclidean distance from every cell of a mask to the nearest cell outside it.
 * Source: Felzenszwalb and Huttenlocher 2012, Theory of Computing 8, 415–428 (from memory).
 */

/**
 * Distances in cells between middles; 0 outside the mask. What lies beyond the raster does not count as outside; a mask
 * that fills the raster has infinite distances.
 * @example distanceMap(Uint8Array.of(0, 1, 1), 3, 1) // [0, 1, 2]
 */
export function distanceMap(mask: Uint8Array, width: number, height: number): Float32Array {
  const squares = Float64Array.from(mask, (inside) => (inside === 0 ? 0 : Infinity));
  const longest = Math.max(width, height);
  const line = new Float64Array(longest);
  const parabola = { at: new Int32Array(longest), from: new Float64Array(longest + 1) };
  for (let column = 0; column < width; column++)
    lower(squares, { from: column, step: width, count: height }, line, parabola);
  for (let row = 0; row < height; row++) lower(squares, { from: row * width, step: 1, count: width }, line, parabola);
  return Float32Array.from(squares, Math.sqrt);
}

/** Lower envelope of the parabolas (x − q)² + f(q) along one line, in place. */
function lower(
  squares: Float64Array,
  { from, step, count }: { from: number; step: number; count: number },
  line: Float64Array,
  { at, from: starts }: { at: Int32Array; from: Float64Array },
): void {
  let last = -1;
  for (let q = 0; q < count; q++) {
    const f = squares[from + q * step];
    line[q] = f;
    if (f === Infinity) continue;
    let start = -Infinity;
    while (last >= 0) {
      const p = at[last];
      start = (f + q * q - line[p] - p * p) / (2 * (q - p));
      if (start > starts[last]) break;
      last--;
      start = -Infinity;
    }
    last++;
    at[last] = q;
    starts[last] = start;
  }
  if (last < 0) return;
  starts[last + 1] = Infinity;
  let k = 0;
  for (let x = 0; x < count; x++) {
    while (starts[k + 1] < x) k++;
    squares[from + x * step] = (x - at[k]) ** 2 + line[at[k]];
  }
}
