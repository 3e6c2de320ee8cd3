/**
 * How sound and browned leaves of an image are told apart: which pixels are leaves, which of them are lit, and where on a
 * vegetation index the browned ones begin. Found from the crowns' own pixels, so that haze, season and camera matter less.
 */
import {
  BRIGHTNESS_BINS,
  binOf,
  type FoliageHistogram,
  forBins,
  INDEX_BINS,
  SATURATION_BINS,
} from './foliage-histogram.ts';
import { middleOfCut, type OtsuCut, otsu } from './otsu.ts';
import type { VegetationIndex } from './vegetation-index.ts';

/** Browned when the index lies below `threshold`. */
export interface IndexRule {
  readonly by: 'otsu';
  readonly index: VegetationIndex;
  readonly threshold: number;
  /** η of the cut, and how far apart the two kinds are in their own spreads (Ashman's D). */
  readonly separability: number;
  readonly distinctness: number;
}

/** Browned when `constant + Σ weight · feature` is positive; features are r, g (and NDVI) as `markedFeatures` gives them. */
export interface LinearRule {
  readonly by: 'linear-discriminant' | 'logistic';
  readonly constant: number;
  readonly weights: readonly number[];
  /** Share of marked pixels put into the wrong class when their crown was left out; the two kinds weigh alike. */
  readonly crossValidatedError: number;
  readonly otherError: number | null;
}

/** What is no leaf and what is not lit. */
export interface LeafGate {
  /** Less saturated pixels are bark, or ground seen through gaps: neither sound nor browned. */
  readonly leafSaturation: number;
  /** Darker pixels (mean of red, green, blue; 0–1) are shaded. One limit for each kind, as browned leaves are brighter. */
  readonly soundLitFrom: number;
  readonly brownedLitFrom: number;
}

export interface FoliageSeparation {
  readonly rule: IndexRule | LinearRule;
  readonly gate: LeafGate;
  /** The brightness of white in the bands. */
  readonly white: number;
}

/** Why the crowns' own pixels do not tell the two kinds apart. */
export type NotSeparable = {
  readonly separable: false;
  readonly because: 'no-pixels' | 'one-kind' | 'leaf-off';
};

/** (A) Assumptions of the separation; every suggestion file prints them. */
export interface SeparationOptions {
  /** A pixel is a leaf when its saturation is at least this share of the sound leaves' median. */
  readonly leafSaturationShare?: number;
  /** A leaf is lit when its brightness is at least this share of its own kind's median. */
  readonly litShare?: number;
  /** Two kinds are distinct when Ashman's D exceeds this: 2 is common for a clean separation. */
  readonly distinctFrom?: number;
}

export const SEPARATION_DEFAULTS = { leafSaturationShare: 0.6, litShare: 0.5, distinctFrom: 2 } as const;

/** (A) Above this an index shows living green; below the least share of such pixels the picture is leafless. */
const GREEN_FROM: Readonly<Record<VegetationIndex, number>> = {
  NDVI: 0.1,
  VARI: 0.03,
  ExG: 0.06,
  GLI: 0.04,
  NGRDI: 0.02,
};
const LEAST_GREEN = 0.15;

/** The gate and the cut depend on each other; they settle within a few rounds. */
const ROUNDS = 8;

/**
 * Separates sound from browned leaves by Otsu's threshold on the lit leaves of all crowns.
 *
 * Gate and threshold are found in turn until they settle: leaves are as saturated as 0.6 of the sound leaves' median, lit
 * ones as bright as half their kind's median. Not separable without pixels; when hardly any pixel is green (`leaf-off`);
 * when the two classes are not distinct or both are green (`one-kind`: mark crowns instead). Ashman's D =
 * √2·|μ₁ − μ₂| / √(σ₁² + σ₂²): Ashman, Bird and Zepf 1994, Astronomical Journal 108, 2348–2361 (from memory).
 */
export function separateByOtsu(
  histogram: FoliageHistogram,
  options: SeparationOptions = {},
): ({ readonly separable: true } & FoliageSeparation) | NotSeparable {
  const { leafSaturationShare, litShare, distinctFrom } = { ...SEPARATION_DEFAULTS, ...options };
  const { index, white } = histogram;
  if (histogram.counts.every((count) => count === 0)) return { separable: false, because: 'no-pixels' };
  if (greenShare(histogram) < LEAST_GREEN) return { separable: false, because: 'leaf-off' };
  let gate: LeafGate = { leafSaturation: 0, soundLitFrom: 0, brownedLitFrom: 0 };
  let threshold = GREEN_FROM[index];
  let cut: OtsuCut | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    gate = gateOf(histogram, gate, threshold, { leafSaturationShare, litShare });
    cut = otsu(litIndex(histogram, gate, threshold));
    if (cut === null) return { separable: false, because: 'one-kind' };
    const next = ((middleOfCut(cut) + 0.5) / INDEX_BINS) * 2 - 1;
    if (next === threshold) break;
    threshold = next;
  }
  if (cut === null) return { separable: false, because: 'one-kind' };
  const distinctness = (Math.SQRT2 * (cut.upperMean - cut.lowerMean)) / Math.hypot(cut.lowerSd, cut.upperSd);
  const lowerIndex = ((cut.lowerMean + 0.5) / INDEX_BINS) * 2 - 1;
  if (!(distinctness > distinctFrom) || lowerIndex > GREEN_FROM[index])
    return { separable: false, because: 'one-kind' };
  const rule: IndexRule = { by: 'otsu', index, threshold, separability: cut.separability, distinctness };
  return { separable: true, rule, gate, white };
}

/** Share of the pixels that show living green. */
export function greenShare(histogram: FoliageHistogram): number {
  let [green, all] = [0, 0];
  forBins(histogram, (index, _brightness, _saturation, count) => {
    all += count;
    if (index > GREEN_FROM[histogram.index]) green += count;
  });
  return all === 0 ? 0 : green / all;
}

/** The middle value of a histogram, as a share of its range: the middle of the bin that holds it. */
export function medianOfBins(bins: ArrayLike<number>): number {
  let total = 0;
  for (let i = 0; i < bins.length; i++) total += bins[i];
  let below = 0;
  for (let i = 0; i < bins.length; i++) {
    below += bins[i];
    if (total > 0 && below >= total / 2) return (i + 0.5) / bins.length;
  }
  return 0;
}

function gateOf(
  histogram: FoliageHistogram,
  before: LeafGate,
  threshold: number,
  { leafSaturationShare, litShare }: Required<Pick<SeparationOptions, 'leafSaturationShare' | 'litShare'>>,
): LeafGate {
  const soundSaturation = new Float64Array(SATURATION_BINS);
  const sound = new Float64Array(BRIGHTNESS_BINS);
  const browned = new Float64Array(BRIGHTNESS_BINS);
  forBins(histogram, (index, brightness, saturation, count) => {
    const isSound = index >= threshold;
    if (isSound) soundSaturation[binOf(saturation, SATURATION_BINS)] += count;
    if (saturation < before.leafSaturation) return;
    (isSound ? sound : browned)[binOf(brightness, BRIGHTNESS_BINS)] += count;
  });
  return {
    leafSaturation: leafSaturationShare * medianOfBins(soundSaturation),
    soundLitFrom: litShare * medianOfBins(sound),
    brownedLitFrom: litShare * medianOfBins(browned),
  };
}

function litIndex(histogram: FoliageHistogram, gate: LeafGate, threshold: number): Float64Array {
  const bins = new Float64Array(INDEX_BINS);
  forBins(histogram, (index, brightness, saturation, count) => {
    const litFrom = index >= threshold ? gate.soundLitFrom : gate.brownedLitFrom;
    if (saturation < gate.leafSaturation || brightness < litFrom) return;
    bins[binOf((index + 1) / 2, INDEX_BINS)] += count;
  });
  return bins;
}
