/** Every draw of a set of figures, kept whole: for blocks and totals, of which there are few. */
import { quantileOfSorted } from '@crownfall/statistics';
import type { Ranged } from '../figures.ts';

/** The draws of `rows` figures, draw by draw; 24 bits each (1e-7 relative), as a city has tens of thousands of rows. */
export interface FigureSamples {
  readonly rows: number;
  /** `value[(draw − first draw) · rows + row]`. */
  readonly value: Float32Array;
}

/** Room for the draws of some figures; writing them is the caller's. */
export function figureSamples(rows: number, draws: number): FigureSamples {
  return { rows, value: new Float32Array(rows * draws) };
}

/** Samples of consecutive draws joined, in the order given; a single part is not copied. */
export function joinedSamples(parts: readonly FigureSamples[]): FigureSamples {
  if (parts.length === 1) return parts[0];
  const value = new Float32Array(parts.reduce((sum, part) => sum + part.value.length, 0));
  let at = 0;
  for (const part of parts) {
    value.set(part.value, at);
    at += part.value.length;
  }
  return { rows: parts[0]?.rows ?? 0, value };
}

/** 80 % and 95 % ranges of one row: quantiles of type 7 (Hyndman and Fan 1996). RangeError without draws. */
export function rangesOf({ rows, value }: FigureSamples, row: number): Omit<Ranged, 'value'> {
  const draws = value.length / rows;
  const sorted = new Float64Array(draws);
  for (let draw = 0; draw < draws; draw++) sorted[draw] = value[draw * rows + row];
  sorted.sort();
  return ranges((share) => quantileOfSorted(sorted, share));
}

/** The two ranges from a quantile function. */
export function ranges(quantile: (share: number) => number): Omit<Ranged, 'value'> {
  return { range80: [quantile(0.1), quantile(0.9)], range95: [quantile(0.025), quantile(0.975)] };
}
