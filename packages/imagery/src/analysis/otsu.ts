/**
 * Otsu's threshold: the cut of a histogram into two classes whose means differ most, weighed by their sizes.
 * Source: Otsu 1979, IEEE Transactions on Systems, Man, and Cybernetics 9, 62–66 (from memory).
 */

export interface OtsuCut {
  /** Levels up to and including this one are the lower class. */
  readonly level: number;
  /** Last level that does equally well; greater than `level` when levels between the classes are empty. */
  readonly lastLevel: number;
  readonly betweenVariance: number;
  readonly totalVariance: number;
  /** η = between / total, 0–1: how much of the spread lies between the classes. */
  readonly separability: number;
  readonly lowerMean: number;
  readonly upperMean: number;
  readonly lowerShare: number;
  /** Standard deviations within each class, levels. */
  readonly lowerSd: number;
  readonly upperSd: number;
}

/** Between-class variances this close to the greatest, relatively, tie with it: sums round differently level by level. */
const TIE = 1e-12;

/**
 * Cuts a histogram of levels 0, 1, 2, …; weights need not be whole. Of tied levels `level` is the first (the published
 * method leaves it open) and `lastLevel` the last; a threshold between the classes is best put half-way (`middleOfCut`).
 * Null when fewer than two levels hold anything.
 * @throws RangeError for negative or unbounded weights.
 * @example otsu([8, 7, 2, 6, 9, 4]).level // 2
 */
export function otsu(histogram: ArrayLike<number>): OtsuCut | null {
  const { total, sum, squares, filled } = moments(histogram, 0, histogram.length);
  if (filled < 2) return null;
  const mean = sum / total;
  const between = new Float64Array(histogram.length);
  let weight = 0;
  let below = 0;
  for (let level = 0; level < histogram.length; level++) {
    weight += histogram[level];
    below += level * histogram[level];
    const rest = total - weight;
    if (weight > 0 && rest > 0) between[level] = (mean * weight - below) ** 2 / (weight * rest);
  }
  const greatest = between.reduce((a, b) => Math.max(a, b), 0);
  const ties = (value: number): boolean => value >= greatest * (1 - TIE);
  const level = between.findIndex(ties);
  const totalVariance = squares / total - mean * mean;
  const lower = moments(histogram, 0, level + 1);
  const upper = moments(histogram, level + 1, histogram.length);
  return {
    level,
    lastLevel: between.findLastIndex(ties),
    betweenVariance: greatest,
    totalVariance,
    separability: greatest / totalVariance,
    lowerMean: lower.sum / lower.total,
    upperMean: upper.sum / upper.total,
    lowerShare: lower.total / total,
    lowerSd: deviation(lower),
    upperSd: deviation(upper),
  };
}

/** The threshold in the middle of all tied cuts, between levels: `(level + lastLevel + 1) / 2`. */
export function middleOfCut(cut: OtsuCut): number {
  return (cut.level + cut.lastLevel + 1) / 2;
}

interface Moments {
  readonly total: number;
  readonly sum: number;
  readonly squares: number;
  readonly filled: number;
}

function moments(histogram: ArrayLike<number>, from: number, to: number): Moments {
  let [total, sum, squares, filled] = [0, 0, 0, 0];
  for (let level = from; level < to; level++) {
    const weight = histogram[level];
    if (!(weight >= 0 && weight < Infinity)) {
      throw new RangeError(`otsu: expected weights from 0 up, got ${weight} at level ${level}`);
    }
    total += weight;
    sum += level * weight;
    squares += level * level * weight;
    if (weight > 0) filled++;
  }
  return { total, sum, squares, filled };
}

function deviation({ total, sum, squares }: Moments): number {
  return Math.sqrt(Math.max(0, squares / total - (sum / total) ** 2));
}
