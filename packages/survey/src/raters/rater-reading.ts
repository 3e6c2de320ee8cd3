/**
 * How ratings stray from the truth: a rater's bias and scatter, largest at half severity and none at 0 and 100 %, where
 * nobody misjudges a crown. The shape 2·√(s(1 − s)) is that of a share judged from patches (A: common practice, no source).
 */
import type { Settings } from '../settings.ts';

/** A share with its limits, 0–1. */
interface Reading {
  readonly share: number;
  readonly lo: number;
  readonly hi: number;
}

/** Part of the mid-scale bias and scatter that applies at a share 0–1: 1 at one half, 0 at both ends. */
export function strayAt(share: number): number {
  return 2 * Math.sqrt(Math.max(0, share * (1 - share)));
}

/**
 * A figure with the rater's known bias taken off, limit by limit, kept between 0 and 1; a rater of whom nothing is known
 * leaves it as it is.
 * @example withoutBias({ share: 0.5, lo: 0.5, hi: 0.5 }, 'B', { B: { bias_pct: 8, … } }) // all 0.42
 */
export function withoutBias(figure: Reading, rater: string, raters: Settings['raters']): Reading {
  const bias = Object.hasOwn(raters, rater) ? raters[rater].bias_pct / 100 : 0;
  if (bias === 0) return figure;
  const corrected = (share: number): number => Math.min(1, Math.max(0, share - bias * strayAt(share)));
  return { share: corrected(figure.share), lo: corrected(figure.lo), hi: corrected(figure.hi) };
}
