/** The logarithm of the gamma function and the regularised incomplete gamma functions. */

const HALF_LOG_TWO_PI = 0.5 * Math.log(2 * Math.PI);

/** Where Stirling's series is accurate to the last digit. */
const STIRLING_FROM = 15;

/** Stirling's series, coefficients B₂ₖ/(2k(2k−1)) of z^(1−2k): DLMF 5.11.1. */
const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156];

/** Terms after which a series or a continued fraction is called a defect; parameters up to 1e8 need fewer. */
const MOST_TERMS = 1_000_000;

/**
 * ln Γ(z) for z > 0: Stirling's series after shifting z upwards.
 *
 * Accuracy tested: 1e-14, relative above 1 and absolute below, against R's lgamma. RangeError unless z > 0.
 * Source: DLMF 5.11.1 and 5.5.1.
 *
 * Example: `logGamma(5)` gives ln 24 = 3.1780538303479458.
 */
export function logGamma(z: number): number {
  if (!(z > 0)) throw new RangeError(`logGamma: expected a positive number, got ${z}`);
  let shifted = z;
  let product = 1;
  while (shifted < STIRLING_FROM) {
    product *= shifted;
    shifted += 1;
  }
  return (shifted - 0.5) * Math.log(shifted) - shifted + HALF_LOG_TWO_PI + stirlingSeries(shifted) - Math.log(product);
}

/**
 * Stirling's correction ln Γ(z) − [(z − ½) ln z − z + ½ ln 2π], with which densities of large parameters keep their digits.
 *
 * Example: `stirlingCorrection(1)` gives 1 − ½ ln 2π = 0.0810614667953273.
 */
export function stirlingCorrection(z: number): number {
  if (z >= STIRLING_FROM) return stirlingSeries(z);
  return logGamma(z) - ((z - 0.5) * Math.log(z) - z + HALF_LOG_TWO_PI);
}

/**
 * Both regularised incomplete gamma functions, [P(a, x), Q(a, x)], P + Q = 1; a > 0, x ≥ 0. The smaller one is computed
 * directly, so small tails keep their relative accuracy.
 *
 * Accuracy tested: 1e-12 relative through the chi-square distribution against R.
 * Source: DLMF 8.11.4 (series, x < a + 1) and 8.9.2 (continued fraction, by the modified Lentz method).
 *
 * Example: `incompleteGamma(1, 2)` gives [1 − e⁻², e⁻²].
 */
export function incompleteGamma(a: number, x: number): [number, number] {
  if (x <= 0) return [0, 1];
  if (x === Number.POSITIVE_INFINITY) return [1, 0];
  const scale = gammaTerm(a, x);
  if (x < a + 1) {
    const lower = (scale / a) * lowerSeries(a, x);
    return [lower, 1 - lower];
  }
  const upper = scale * upperFraction(a, x);
  return [1 - upper, upper];
}

/** xᵃe⁻ˣ/Γ(a): the gamma density times x, kept accurate for large a. */
export function gammaTerm(a: number, x: number): number {
  const excess = (x - a) / a;
  // Far from a, x/a itself holds digits that 1 + excess has lost.
  const logRatio = Math.abs(excess) < 0.5 ? logOnePlusMinus(excess) : Math.log(x / a) - excess;
  return Math.sqrt(a / (2 * Math.PI)) * Math.exp(a * logRatio - stirlingCorrection(a));
}

/** ln(1 + t) − t without cancellation for small t. */
export function logOnePlusMinus(t: number): number {
  if (Math.abs(t) > 0.1) return Math.log1p(t) - t;
  let term = -t * t;
  let sum = 0;
  for (let k = 2; k < 30 && Math.abs(term) > 0; k++) {
    sum += term / k;
    term *= -t;
  }
  return sum;
}

function stirlingSeries(z: number): number {
  const inverseSquare = 1 / (z * z);
  let sum = 0;
  for (let k = STIRLING.length - 1; k >= 0; k--) sum = sum * inverseSquare + (STIRLING[k] as number);
  return sum / z;
}

function lowerSeries(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; k < MOST_TERMS; k++) {
    term *= x / (a + k);
    sum += term;
    if (term < sum * Number.EPSILON * 0.1) return sum;
  }
  throw new RangeError(`incompleteGamma: no convergence at a = ${a}, x = ${x}`);
}

function upperFraction(a: number, x: number): number {
  const tiny = Number.MIN_VALUE / Number.EPSILON;
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let value = d;
  for (let k = 1; k < MOST_TERMS; k++) {
    const numerator = -k * (k - a);
    b += 2;
    d = numerator * d + b;
    if (Math.abs(d) < tiny) d = tiny;
    c = b + numerator / c;
    if (Math.abs(c) < tiny) c = tiny;
    d = 1 / d;
    const factor = d * c;
    value *= factor;
    if (Math.abs(factor - 1) < Number.EPSILON) return value;
  }
  throw new RangeError(`incompleteGamma: no convergence at a = ${a}, x = ${x}`);
}
