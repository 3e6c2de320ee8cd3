/**
 * Whether detail of the size of a few cells is there at all. Blurred pictures change evenly: the mean squared difference
 * of cells grows with the square of their distance (a variogram with exponent 2), while edges give an exponent of 1 and
 * grain about 0. Noise adds the same to all distances and falls out.
 */

/** (A) Exponents above this are blur. */
const SMOOTH_EXPONENT = 1.6;
/** (A) Less growth than this, in L*², is no detail to judge by: evenly clean ground passes. */
const LEAST_GROWTH = 1;

/** Judges by the cells 1, 2 and 4 apart, along rows and columns, of those that `judged` marks with 1. */
export function isBlurred(lightness: Float32Array, judged: Uint8Array, width: number): boolean {
  const [one, two, four] = [1, 2, 4].map((apart) => meanSquaredDifference(lightness, judged, width, apart));
  return four - one > LEAST_GROWTH && Math.log2((four - two) / (two - one)) > SMOOTH_EXPONENT;
}

function meanSquaredDifference(values: Float32Array, judged: Uint8Array, width: number, apart: number): number {
  let [sum, count] = [0, 0];
  for (let p = 0; p < values.length; p++) {
    if (judged[p] === 0) continue;
    for (const [next, fits] of [
      [p + apart, (p % width) + apart < width],
      [p + apart * width, p + apart * width < values.length],
    ] as const) {
      if (!fits || judged[next] === 0) continue;
      sum += (values[p] - values[next]) ** 2;
      count++;
    }
  }
  return count === 0 ? 0 : sum / count;
}
