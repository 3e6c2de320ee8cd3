/**
 * Statistics of samples, each counted by the share of its pixel that lies inside a shape. Method, with a worked example:
 * docs/methods/pixel-coverage.md.
 */
import type { PixelSpans } from '@crownfall/geometry';
import type { Samples } from '../window.ts';

export interface StatisticsOptions {
  /** Shares of the distribution, 0–1; the median alone when absent. */
  readonly quantiles?: readonly number[];
  /** Bins of equal width from `from` to `to`; what is outside goes to the first or last bin. */
  readonly histogram?: HistogramBins;
}

export interface HistogramBins {
  readonly from: number;
  readonly to: number;
  readonly bins: number;
}

export interface BandStatistics {
  /** Sum of the shares of the pixels that counted, in pixels. */
  readonly weight: number;
  /** `Σ w x / Σ w`; NaN, as all that follow, when no pixel counted. */
  readonly mean: number;
  /** `√(Σ w (x − mean)² / Σ w)`: the spread of these pixels, not an estimate for others. */
  readonly sd: number;
  readonly min: number;
  readonly max: number;
  /** For each share q the smallest sample x such that samples up to x weigh at least q of the whole. */
  readonly quantiles: Float64Array;
  /** Weight in each bin, in pixels; null when not asked for. */
  readonly histogram: Float64Array | null;
}

/**
 * Statistics of one band. Pixels of weight 0 and samples of NaN do not count.
 *
 * @param pixels positions in `samples`
 * @param weights of each of them, 0–1
 * @throws RangeError for shares outside 0–1 or bins that are none
 * @example bandStatistics(Uint8Array.of(10, 20), Int32Array.of(0, 1), Float64Array.of(1, 0.5)).mean // 13.33
 */
export function bandStatistics(
  samples: Samples,
  pixels: Int32Array,
  weights: Float64Array,
  options: StatisticsOptions = {},
): BandStatistics {
  checkOptions(options);
  const distribution =
    samples instanceof Uint8Array
      ? byteDistribution(samples, pixels, weights)
      : anyDistribution(samples, pixels, weights);
  return summary(distribution, options);
}

/** The same for samples of 8 bits and pixels as runs. */
export function byteStatistics(
  samples: Uint8Array,
  cover: PixelSpans,
  options: StatisticsOptions = {},
): BandStatistics {
  checkOptions(options);
  const { pixels, weights, spans } = cover;
  const wholes = new Int32Array(256);
  for (let s = 0; s < spans.length; s += 2) {
    const end = spans[s + 1];
    for (let i = spans[s]; i < end; i++) wholes[samples[i]]++;
  }
  const sums = Float64Array.from(wholes);
  for (let i = 0; i < pixels.length; i++) sums[samples[pixels[i]]] += weights[i];
  return summary({ values: BYTE_VALUES, weights: sums }, options);
}

/** Samples in ascending order with the weight of each. */
interface Distribution {
  readonly values: ArrayLike<number>;
  readonly weights: Float64Array;
}

const BYTE_VALUES = Uint8Array.from({ length: 256 }, (_, i) => i);

function byteDistribution(samples: Uint8Array, pixels: Int32Array, weights: Float64Array): Distribution {
  const sums = new Float64Array(256);
  for (let i = 0; i < pixels.length; i++) sums[samples[pixels[i]]] += weights[i];
  return { values: BYTE_VALUES, weights: sums };
}

function anyDistribution(samples: Samples, pixels: Int32Array, weights: Float64Array): Distribution {
  const found = new Float64Array(pixels.length);
  const shares = new Float64Array(pixels.length);
  let n = 0;
  for (let i = 0; i < pixels.length; i++) {
    const sample = samples[pixels[i]];
    if (weights[i] === 0 || Number.isNaN(sample)) continue;
    found[n] = sample;
    shares[n++] = weights[i];
  }
  const order = Int32Array.from({ length: n }, (_, i) => i).sort((a, b) => found[a] - found[b]);
  return { values: Float64Array.from(order, (i) => found[i]), weights: Float64Array.from(order, (i) => shares[i]) };
}

function summary({ values, weights }: Distribution, options: StatisticsOptions): BandStatistics {
  let weight = 0;
  let first = -1;
  let last = -1;
  for (let i = 0; i < weights.length; i++) {
    if (weights[i] === 0) continue;
    weight += weights[i];
    if (first < 0) first = i;
    last = i;
  }
  const histogram = options.histogram ? histogramOf(values, weights, options.histogram) : null;
  const shares = options.quantiles ?? [0.5];
  if (first < 0) {
    const none = new Float64Array(shares.length).fill(Number.NaN);
    return {
      weight: 0,
      mean: Number.NaN,
      sd: Number.NaN,
      min: Number.NaN,
      max: Number.NaN,
      quantiles: none,
      histogram,
    };
  }
  const origin = values[first];
  let sum = 0;
  for (let i = first; i <= last; i++) sum += weights[i] * (values[i] - origin);
  const mean = origin + sum / weight;
  let squares = 0;
  for (let i = first; i <= last; i++) squares += weights[i] * (values[i] - mean) ** 2;
  return {
    weight,
    mean,
    sd: Math.sqrt(squares / weight),
    min: values[first],
    max: values[last],
    quantiles: Float64Array.from(shares, (share) => quantile(values, weights, share * weight, [first, last])),
    histogram,
  };
}

/** Rounding of summed weights, relative: the median of two equal halves is the lower one whatever the last digit says. */
const WEIGHT_ROUNDING = 1e-12;

function quantile(
  values: ArrayLike<number>,
  weights: Float64Array,
  wanted: number,
  [first, last]: readonly [number, number],
): number {
  let below = 0;
  for (let i = first; i < last; i++) {
    below += weights[i];
    if (below > 0 && below >= wanted * (1 - WEIGHT_ROUNDING)) return values[i];
  }
  return values[last];
}

function histogramOf(
  values: ArrayLike<number>,
  weights: Float64Array,
  { from, to, bins }: HistogramBins,
): Float64Array {
  const out = new Float64Array(bins);
  const perUnit = bins / (to - from);
  for (let i = 0; i < weights.length; i++) {
    if (weights[i] === 0) continue;
    out[Math.min(bins - 1, Math.max(0, Math.floor((values[i] - from) * perUnit)))] += weights[i];
  }
  return out;
}

function checkOptions({ quantiles = [], histogram }: StatisticsOptions): void {
  const stray = quantiles.find((share) => !(share >= 0 && share <= 1));
  if (stray !== undefined) throw new RangeError(`bandStatistics: expected quantiles of 0 to 1, got ${stray}`);
  if (histogram && !(histogram.to > histogram.from && Number.isInteger(histogram.bins) && histogram.bins > 0)) {
    throw new RangeError(
      `bandStatistics: expected bins between two bounds, got ${histogram.bins} from ${histogram.from} to ${histogram.to}`,
    );
  }
}
