/** The draws of every crown's stained area as counts in narrow bins: a city has too many crowns to keep each draw. */
import type { Ranged } from '../figures.ts';
import { ranges } from './figure-samples.ts';

/** Bins of each crown between 0 and its own fallout area; one more in front holds exact zeros. */
const BINS = 256;

export interface CrownTally {
  /** `count[crown · (BINS + 1) + bin]`. */
  readonly count: Uint16Array;
  readonly least: Float64Array;
  readonly most: Float64Array;
}

/** An empty tally of so many crowns. */
export function crownTally(crowns: number): CrownTally {
  return {
    count: new Uint16Array(crowns * (BINS + 1)),
    least: new Float64Array(crowns).fill(Number.POSITIVE_INFINITY),
    most: new Float64Array(crowns),
  };
}

/** Counts one draw of all crowns, m². */
export function countCrowns(tally: CrownTally, crownM2: Float64Array, falloutM2: Float64Array): void {
  for (let crown = 0; crown < crownM2.length; crown++) {
    const areaM2 = crownM2[crown];
    const bin = areaM2 > 0 ? 1 + Math.min(BINS - 1, Math.floor((areaM2 / falloutM2[crown]) * BINS)) : 0;
    tally.count[crown * (BINS + 1) + bin]++;
    if (areaM2 < tally.least[crown]) tally.least[crown] = areaM2;
    if (areaM2 > tally.most[crown]) tally.most[crown] = areaM2;
  }
}

/** Tallies of different draws added up. */
export function joinedTallies(parts: readonly CrownTally[]): CrownTally {
  const [first, ...rest] = parts;
  for (const part of rest) {
    for (let i = 0; i < first.count.length; i++) first.count[i] += part.count[i];
    for (let i = 0; i < first.least.length; i++) {
      first.least[i] = Math.min(first.least[i], part.least[i]);
      first.most[i] = Math.max(first.most[i], part.most[i]);
    }
  }
  return first;
}

/**
 * Ranges of a crown's stained area, m². Off from the draws' own quantiles by at most a bin, 1/256 of the crown's fallout area
 * on the pavement; exact at 0 and at the ends. RangeError without draws.
 */
export function crownRanges(tally: CrownTally, crown: number, falloutM2: number): Omit<Ranged, 'value'> {
  const counts = tally.count.subarray(crown * (BINS + 1), (crown + 1) * (BINS + 1));
  const draws = counts.reduce((sum, count) => sum + count, 0);
  if (draws === 0) throw new RangeError('crown ranges: expected draws, got none');
  const [least, most] = [tally.least[crown], tally.most[crown]];
  return ranges((share) => {
    const place = share * (draws - 1);
    let before = 0;
    let bin = 0;
    while (before + counts[bin] <= place) before += counts[bin++];
    if (bin === 0) return 0;
    const within = (place - before + 0.5) / counts[bin];
    return Math.min(most, Math.max(least, ((bin - 1 + within) * falloutM2) / BINS));
  });
}
