/** Whether an image can serve for browned shares at all: told per image, before any figure. */
import { BRIGHTNESS_BINS, binOf, type FoliageHistogram, forBins } from './foliage-histogram.ts';
import { greenShare } from './foliage-separation.ts';

export type QualityFlag = 'leaf-off' | 'haze' | 'overexposed';

/** (A) Limits, none of them from a source: judged on the crowns' pixels alone. */
const LIMITS = {
  leastGreen: 0.3,
  hazeDarkest: 0.22,
  hazeContrast: 0.35,
  bright: 0.97,
  overexposedShare: 0.05,
} as const;

/**
 * Flags of an image from its crowns' pixels. `leaf-off`: fewer than 30 % show living green. `haze`: even the darkest
 * hundredth is lighter than 22 % of white, and from there to the lightest hundredth it is less than 35 % (haze lifts the
 * dark and shrinks the range; after the dark-object reasoning of Chavez 1988, Remote Sensing of Environment 24, 459–479,
 * from memory; the limits are ours). `overexposed`: more than 5 % nearly white. Empty for no pixels.
 */
export function imageQuality(histogram: FoliageHistogram): readonly QualityFlag[] {
  const brightness = new Float64Array(BRIGHTNESS_BINS);
  let total = 0;
  let white = 0;
  forBins(histogram, (_index, bright, _saturation, count) => {
    brightness[binOf(bright, BRIGHTNESS_BINS)] += count;
    total += count;
    if (bright > LIMITS.bright) white += count;
  });
  if (total === 0) return [];
  const darkest = quantile(brightness, total, 0.01);
  const lightest = quantile(brightness, total, 0.99);
  const flags: QualityFlag[] = [];
  if (greenShare(histogram) < LIMITS.leastGreen) flags.push('leaf-off');
  if (darkest > LIMITS.hazeDarkest && lightest - darkest < LIMITS.hazeContrast) flags.push('haze');
  if (white > LIMITS.overexposedShare * total) flags.push('overexposed');
  return flags;
}

function quantile(bins: Float64Array, total: number, share: number): number {
  let below = 0;
  for (let i = 0; i < bins.length; i++) {
    below += bins[i];
    if (below >= share * total) return (i + 0.5) / bins.length;
  }
  return 1;
}
