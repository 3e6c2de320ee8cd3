/**
 * How dark visible pavement is against the same surface away from crowns, without taking shadow for stain: sky light is
 * bluer than sunlight, so shaded pavement shifts to blue as it darkens, and stained pavement does not.
 * Method, assumptions and accuracy: docs/methods/pavement-darkness.md.
 */
import type { PixelCoverage } from '@crownfall/geometry';
import type { Window } from '../window.ts';
import { ciede2000 } from './ciede2000.ts';
import { type Lab, srgbToLab } from './cielab.ts';
import { saturation } from './foliage-histogram.ts';
import { middleOfCut, otsu } from './otsu.ts';
import { type ColourBands, colourBands } from './vegetation-index.ts';

/** What clean, lit pavement of one surface looks like in an image, and how its shade differs. */
export interface PavementTone {
  /** Median L* of lit pixels, and their spread (1.4826 × median absolute deviation). */
  readonly lightness: number;
  readonly spread: number;
  /** Mean colour of lit pixels. */
  readonly lab: Lab;
  /** Median of ln(blue / red) of lit pixels, and how much greater it is in shade. */
  readonly blueness: number;
  readonly shadeBluer: number;
  readonly litPixels: number;
  readonly white: number;
}

export interface DarknessRefused {
  readonly known: false;
  /** `shade-not-told`: the image's shade is not bluer than its light, so a dark pixel could be either. */
  readonly because: 'too-few-pixels' | 'shade-not-told';
  readonly litPixels: number;
}

export interface PavementDarkness {
  readonly known: true;
  /** Reference L* less the mean L* of the lit pixels: 0 = as clean, L* counts 0–100. */
  readonly lightnessDrop: number;
  /** CIEDE2000 between the two mean colours. */
  readonly difference: number;
  /** Share of the lit pixels that are darker than the reference's own scatter (2.5 spreads). */
  readonly darkShare: number;
  /** Lit, judged pixels over visible ones: shade, its edges, vehicles and leaves are left out. */
  readonly litShare: number;
  readonly litPixels: number;
}

/** Fewer pixels than this say nothing. */
const PIXELS_NEEDED = 40;
/** (A) Darker than this many spreads, and at least this many L*, is darker than scatter. */
const DARK = { spreads: 2.5, leastL: 5 } as const;
/** (A) Shade must be at least this much bluer, ln(blue/red), to be told from stain; a clear sky gives some 0.1 to 0.4. */
const SHADE_BLUER = 0.06;
/** (A) Dark pixels that shift to blue by less than this part of shade's shift are stain; between, they are left out. */
const STAIN_BELOW = 0.25;
/** (A) More saturated is paint, a vehicle or a leaf. */
const PAVEMENT_SATURATION = 0.5;

/**
 * The tone of one surface from pixels away from crowns (beyond every fallout zone). Pixels partly outside are not used.
 * Where the reference has both, light and shade are told apart by Otsu's cut of L*; where all is lit, shade is taken to
 * be as much bluer as the least that is accepted. White is 255 for 8 bits.
 */
export function pavementTone(window: Window, reference: PixelCoverage, white: number): PavementTone | DarknessRefused {
  const bands = colourBands(window);
  const pixels = Array.from(reference.pixels).filter(
    (p, k) => reference.weights[k] > 0.999 && window.missing[p] === 0 && isPavement(bands, p),
  );
  if (pixels.length < PIXELS_NEEDED) return { known: false, because: 'too-few-pixels', litPixels: pixels.length };
  const labs = new Map(pixels.map((p) => [p, labOf(bands, p, white)]));
  const bins = new Float64Array(101);
  for (const [lightness] of labs.values()) bins[Math.round(lightness)]++;
  const cut = otsu(bins);
  // Two kinds of light differ far more than pavement scatters: Ashman's D above 3.
  const distinct =
    cut !== null && (Math.SQRT2 * (cut.upperMean - cut.lowerMean)) / Math.hypot(cut.lowerSd, cut.upperSd) > 3;
  const litFrom = distinct ? middleOfCut(cut) : -1;
  const lit = pixels.filter((p) => lightnessIn(labs, p) > litFrom);
  const shade = pixels.filter((p) => lightnessIn(labs, p) <= litFrom);
  const lightness = median(lit.map((p) => lightnessIn(labs, p)));
  const spread = 1.4826 * median(lit.map((p) => Math.abs(lightnessIn(labs, p) - lightness)));
  const blueness = median(lit.map((p) => bluenessOf(bands, p)));
  const shadeBluer =
    shade.length >= PIXELS_NEEDED ? median(shade.map((p) => bluenessOf(bands, p))) - blueness : SHADE_BLUER;
  if (shadeBluer < SHADE_BLUER) return { known: false, because: 'shade-not-told', litPixels: lit.length };
  const lab = meanLab(lit.map((p) => labs.get(p) as Lab));
  return { lightness, spread, lab, blueness, shadeBluer, litPixels: lit.length, white };
}

/**
 * Darkness of visible pavement against a tone of the same surface. Each visible pixel counts by its share.
 * Refused below 40 lit pixels.
 */
export function pavementDarkness(
  window: Window,
  visible: PixelCoverage,
  tone: PavementTone,
): PavementDarkness | DarknessRefused {
  const bands = colourBands(window);
  const kinds = kindsOf(window, bands, tone);
  let [seen, lit, dark] = [0, 0, 0];
  const sum = [0, 0, 0];
  for (let k = 0; k < visible.pixels.length; k++) {
    const p = visible.pixels[k];
    const weight = visible.weights[k];
    seen += weight;
    const kind = kinds(p);
    if (kind === 'shade' || kind === 'other' || isBesideAnother(kinds, p, window)) continue;
    lit += weight;
    if (kind === 'dark') dark += weight;
    labOf(bands, p, tone.white).forEach((value, i) => {
      sum[i] += weight * value;
    });
  }
  if (lit < PIXELS_NEEDED) return { known: false, because: 'too-few-pixels', litPixels: lit };
  const lab: Lab = [sum[0] / lit, sum[1] / lit, sum[2] / lit];
  return {
    known: true,
    lightnessDrop: tone.lab[0] - lab[0],
    difference: ciede2000(tone.lab, lab),
    darkShare: dark / lit,
    litShare: lit / seen,
    litPixels: lit,
  };
}

type Kind = 'lit' | 'dark' | 'shade' | 'other';

/** The kind of any pixel of the window, reckoned when first asked for. */
function kindsOf(window: Window, bands: ColourBands, tone: PavementTone): (p: number) => Kind {
  const known = new Map<number, Kind>();
  return (p) => {
    let kind = known.get(p);
    if (kind === undefined) {
      kind = window.missing[p] === 1 ? 'other' : kindOf(bands, p, tone);
      known.set(p, kind);
    }
    return kind;
  };
}

function kindOf(bands: ColourBands, p: number, tone: PavementTone): Kind {
  if (!isPavement(bands, p)) return 'other';
  const [lightness] = labOf(bands, p, tone.white);
  if (lightness >= tone.lightness - Math.max(DARK.leastL, DARK.spreads * tone.spread)) return 'lit';
  const bluer = bluenessOf(bands, p) - tone.blueness;
  return bluer < STAIN_BELOW * tone.shadeBluer ? 'dark' : 'shade';
}

/** The edge of a shadow is half light, and beside a leaf or a vehicle a pixel is half that: such pixels do not count. */
function isBesideAnother(kinds: (p: number) => Kind, p: number, { width, height }: Window): boolean {
  const [column, row] = [p % width, Math.floor(p / width)];
  for (let r = Math.max(0, row - 1); r <= Math.min(height - 1, row + 1); r++) {
    for (let c = Math.max(0, column - 1); c <= Math.min(width - 1, column + 1); c++) {
      const kind = kinds(r * width + c);
      if (kind === 'shade' || kind === 'other') return true;
    }
  }
  return false;
}

/** Grey to warm and not green: what is green is a leaf. */
function isPavement({ red, green, blue }: ColourBands, p: number): boolean {
  const [r, g, b] = [red[p], green[p], blue[p]];
  return r > 0 && b > 0 && saturation(r, g, b) < PAVEMENT_SATURATION && 2 * g - r - b <= 0.06 * (r + g + b);
}

function labOf({ red, green, blue }: ColourBands, p: number, white: number): Lab {
  return srgbToLab(red[p], green[p], blue[p], white);
}

function bluenessOf({ red, blue }: ColourBands, p: number): number {
  return Math.log(blue[p] / red[p]);
}

function lightnessIn(labs: ReadonlyMap<number, Lab>, p: number): number {
  return (labs.get(p) as Lab)[0];
}

function meanLab(labs: readonly Lab[]): Lab {
  const sum = [0, 0, 0];
  for (const lab of labs) for (let i = 0; i < 3; i++) sum[i] += lab[i];
  return [sum[0] / labs.length, sum[1] / labs.length, sum[2] / labs.length];
}

/** The lower middle value; NaN for none. */
function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? Number.NaN;
}
