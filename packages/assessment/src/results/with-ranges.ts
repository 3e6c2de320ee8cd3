/** Figures with the ranges that were drawn for them. */
import type { Ranged } from '@crownfall/stain';
import type { Ranges } from '../draws/drawn-ranges.ts';

/** The figures with the ranges of their stained area; without draws they stay as they are. */
export function withRanges<T extends { readonly stainedM2: Ranged }>(figures: T, ranges: Ranges | undefined): T {
  return ranges === undefined ? figures : { ...figures, stainedM2: { ...figures.stainedM2, ...ranges } };
}
