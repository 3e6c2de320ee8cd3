/**
 * The inverse discrete cosine transform of JPEG in whole numbers: C. Loeffler, A. Ligtenberg and G. Moschytz, "Practical fast 1-D
 * DCT algorithms with 11 multiplications" (ICASSP 1989), with 13-bit constants and 2 bits kept between the passes, the
 * rounding that libjpeg's "slow integer" method has, so that samples come out as other readers give them.
 */

/** Constants of the method times 2¹³. */
const C_0_298 = 2446;
const C_0_390 = 3196;
const C_0_541 = 4433;
const C_0_765 = 6270;
const C_0_899 = 7373;
const C_1_175 = 9633;
const C_1_501 = 12299;
const C_1_847 = 15137;
const C_1_961 = 16069;
const C_2_053 = 16819;
const C_2_562 = 20995;
const C_3_072 = 25172;

const FIRST_SHIFT = 11;
const SECOND_SHIFT = 18;

/**
 * One block of 8 × 8 coefficients (in natural order, times their quantisation) to samples of 0–255 in `out`, whose rows are
 * `stride` apart, from `at` on. `work` holds 64 whole numbers.
 */
export function inverseDct(
  coefficients: Int16Array,
  from: number,
  quantisation: Uint16Array,
  work: Int32Array,
  out: Uint8Array,
  at: number,
  stride: number,
): void {
  for (let i = 0; i < 64; i++) work[i] = coefficients[from + i] * quantisation[i];
  for (let column = 0; column < 8; column++) pass(work, column, 8, FIRST_SHIFT);
  for (let row = 0; row < 64; row += 8) {
    pass(work, row, 1, SECOND_SHIFT);
    const start = at + (row >> 3) * stride;
    for (let i = 0; i < 8; i++) {
      const sample = work[row + i] + 128;
      out[start + i] = Math.max(0, Math.min(sample, 255));
    }
  }
}

/** Eight values, `step` apart, transformed in place and divided by 2^`shift`, halves upwards. */
function pass(v: Int32Array, at: number, step: number, shift: number): void {
  const half = 1 << (shift - 1);
  const i1 = at + step;
  const i2 = i1 + step;
  const i3 = i2 + step;
  const i4 = i3 + step;
  const i5 = i4 + step;
  const i6 = i5 + step;
  const i7 = i6 + step;

  const even = (v[i2] + v[i6]) * C_0_541;
  const e2 = even - v[i6] * C_1_847;
  const e3 = even + v[i2] * C_0_765;
  const e0 = (v[at] + v[i4]) * 8192;
  const e1 = (v[at] - v[i4]) * 8192;
  const s0 = e0 + e3;
  const s3 = e0 - e3;
  const s1 = e1 + e2;
  const s2 = e1 - e2;

  const z5 = (v[i7] + v[i3] + v[i5] + v[i1]) * C_1_175;
  const z1 = -(v[i7] + v[i1]) * C_0_899;
  const z2 = -(v[i5] + v[i3]) * C_2_562;
  const z3 = z5 - (v[i7] + v[i3]) * C_1_961;
  const z4 = z5 - (v[i5] + v[i1]) * C_0_390;
  const o0 = v[i7] * C_0_298 + z1 + z3;
  const o1 = v[i5] * C_2_053 + z2 + z4;
  const o2 = v[i3] * C_3_072 + z2 + z3;
  const o3 = v[i1] * C_1_501 + z1 + z4;

  v[at] = (s0 + o3 + half) >> shift;
  v[i7] = (s0 - o3 + half) >> shift;
  v[i1] = (s1 + o2 + half) >> shift;
  v[i6] = (s1 - o2 + half) >> shift;
  v[i2] = (s2 + o1 + half) >> shift;
  v[i5] = (s2 - o1 + half) >> shift;
  v[i3] = (s3 + o0 + half) >> shift;
  v[i4] = (s3 - o0 + half) >> shift;
}
