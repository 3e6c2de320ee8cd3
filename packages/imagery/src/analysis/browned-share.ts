/**
 * The share of a crown that looks browned from above: a suggestion for a person to confirm, never a rating by itself.
 * Method, assumptions and accuracy: docs/methods/browned-share.md.
 */

import type { PixelCoverage } from '@crownfall/geometry';
import { type Interval, percentileBootstrap } from '@crownfall/statistics';
import type { Window } from '../window.ts';
import { saturation } from './foliage-histogram.ts';
import type { FoliageSeparation } from './foliage-separation.ts';
import { linearScore } from './marked-separation.ts';
import { type ColourBands, colourBands, vegetationIndex } from './vegetation-index.ts';

/** Fewer lit leaf pixels than this give no suggestion: the image is too coarse for the crown. */
export const LIT_PIXELS_NEEDED = 40;

/** (A) Leaves brown in clumps: pixels nearer than about this are alike, so they are resampled together. */
const CLUMP_M = 1.5;

/** What the pixels of a crown are; shares of the outline's area, adding up to 1. */
export interface CrownMakeUp {
  readonly litSound: number;
  readonly litBrowned: number;
  readonly shaded: number;
  /** Bark, or what shows through gaps. */
  readonly notLeaf: number;
  readonly noData: number;
}

export type BrownedShare = CrownShareKnown | CrownShareRefused;

interface CrownShareKnown {
  readonly suggested: true;
  /** Of the lit leaves, 0–1. */
  readonly share: number;
  /** From resampling clumps: how much the share would move with other leaves of the same crown; null below two clumps. */
  readonly interval: Interval | null;
  readonly litPixels: number;
  readonly makeUp: CrownMakeUp;
}

interface CrownShareRefused {
  readonly suggested: false;
  readonly because: 'too-coarse' | 'no-data';
  readonly litPixels: number;
  readonly makeUp: CrownMakeUp;
}

export interface BrownedShareOptions {
  /** Seed of the interval's resampling; equal seeds give equal digits. */
  readonly seed: number;
  /** Default 1,000. */
  readonly resamples?: number;
  /** Share covered, default 0.95. */
  readonly confidence?: number;
}

type Kind = 'sound' | 'browned' | 'shaded' | 'not-leaf' | 'no-data';

/**
 * Browned share of one crown: lit browned leaves over all lit leaves, by the shares of pixels inside the outline.
 * Refused below `LIT_PIXELS_NEEDED` lit leaf pixels (`too-coarse`), or when half the outline holds no data.
 */
export function brownedShare(
  window: Window,
  cover: PixelCoverage,
  separation: FoliageSeparation,
  options: BrownedShareOptions,
): BrownedShare {
  const bands = colourBands(window);
  const sums: Record<Kind, number> = { sound: 0, browned: 0, shaded: 0, 'not-leaf': 0, 'no-data': 0 };
  const clumps = new Map<number, { lit: number; browned: number }>();
  const clumpPx = Math.max(1, Math.round(CLUMP_M / (window.pixelM > 0 ? window.pixelM : CLUMP_M)));
  for (let k = 0; k < cover.pixels.length; k++) {
    const p = cover.pixels[k];
    const weight = cover.weights[k];
    const kind = window.missing[p] === 1 ? 'no-data' : kindOf(bands, p, separation);
    sums[kind] += weight;
    if (kind !== 'sound' && kind !== 'browned') continue;
    const column = Math.floor((p % window.width) / clumpPx);
    const row = Math.floor(Math.floor(p / window.width) / clumpPx);
    const key = row * window.width + column;
    const clump = clumps.get(key) ?? { lit: 0, browned: 0 };
    clump.lit += weight;
    if (kind === 'browned') clump.browned += weight;
    clumps.set(key, clump);
  }
  const total = cover.weights.reduce((sum, weight) => sum + weight, 0);
  const litPixels = sums.sound + sums.browned;
  const makeUp = makeUpOf(sums, total);
  if (total === 0 || makeUp.noData > 0.5) return { suggested: false, because: 'no-data', litPixels, makeUp };
  if (litPixels < LIT_PIXELS_NEEDED) return { suggested: false, because: 'too-coarse', litPixels, makeUp };
  const interval = intervalOf([...clumps.values()], options);
  return { suggested: true, share: sums.browned / litPixels, interval, litPixels, makeUp };
}

function makeUpOf(sums: Readonly<Record<Kind, number>>, total: number): CrownMakeUp {
  const share = (kind: Kind) => (total === 0 ? 0 : sums[kind] / total);
  return {
    litSound: share('sound'),
    litBrowned: share('browned'),
    shaded: share('shaded'),
    notLeaf: share('not-leaf'),
    noData: share('no-data'),
  };
}

function kindOf(bands: ColourBands, p: number, { rule, gate, white }: FoliageSeparation): Kind {
  const [red, green, blue] = [bands.red[p], bands.green[p], bands.blue[p]];
  const pixel = { red, green, blue, ...(bands.nearInfrared === null ? {} : { nearInfrared: bands.nearInfrared[p] }) };
  if (saturation(red, green, blue) < gate.leafSaturation) return 'not-leaf';
  let browned: boolean;
  if (rule.by === 'otsu') {
    const reading = vegetationIndex(rule.index, pixel);
    // Without a value (black, or VARI's pole) nothing is known of the leaf: as good as unlit.
    if (!reading.defined) return 'shaded';
    browned = reading.value < rule.threshold;
  } else browned = linearScore(rule, pixel) > 0;
  const brightness = (red + green + blue) / 3 / white;
  if (brightness < (browned ? gate.brownedLitFrom : gate.soundLitFrom)) return 'shaded';
  return browned ? 'browned' : 'sound';
}

/** Clumps are drawn with replacement, each with all its pixels; the share is the ratio of their sums. */
function intervalOf(
  clumps: readonly { readonly lit: number; readonly browned: number }[],
  { seed, resamples = 1000, confidence = 0.95 }: BrownedShareOptions,
): Interval | null {
  const result = percentileBootstrap(
    clumps.length,
    (drawn) => {
      let [lit, browned] = [0, 0];
      for (const i of drawn) {
        lit += clumps[i].lit;
        browned += clumps[i].browned;
      }
      return { defined: true, value: browned / lit };
    },
    { seed, resamples, confidence },
  );
  return result.defined ? result.value.interval : null;
}
