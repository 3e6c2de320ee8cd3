/** From samples of any kind to the colours of a screen. */
import type { Imagery, SampleArray } from '@crownfall/imagery';

export interface Stretch {
  /** Writes one pixel's colour, opaque, at `at` of RGBA bytes. */
  readonly colour: (bands: readonly SampleArray[], from: number, out: Uint8ClampedArray, at: number) => void;
}

/** Red, green and blue when they exist; else the first band, as grey or by its palette. */
export function paintedBands({ roles }: Imagery): readonly number[] {
  const rgb = (['red', 'green', 'blue'] as const).map((role) => roles.indexOf(role));
  return rgb.every((band) => band >= 0) ? rgb : [0];
}

/** Shares of the samples that are drawn black and white, so that a few odd ones do not wash out the rest (common practice). */
const BLACK_SHARE = 0.02;
const WHITE_SHARE = 0.98;
/** Samples looked at on each side of the coarsest level. */
const LOOK = 512;

/** 8-bit colours as they are; other samples from the range that most of them fill. */
export async function stretchOf(image: Imagery, bands: readonly number[]): Promise<Stretch> {
  if (image.colourMap && image.roles[0] === 'palette') return { colour: byPalette(image.colourMap) };
  const level = image.levels.length - 1;
  const { width, height } = image.levels[level];
  const window = { left: 0, top: 0, width: Math.min(LOOK, width), height: Math.min(LOOK, height) };
  const sample = await image.readWindow(window, { level, bands });
  if (sample.bands.every((band) => band instanceof Uint8Array)) return { colour: scaled(0, 1) };
  const values = sample.bands.flatMap((band) =>
    [...band].filter((value, i) => !sample.missing[i] && !Number.isNaN(value)),
  );
  values.sort((a, b) => a - b);
  const black = values[Math.floor(BLACK_SHARE * (values.length - 1))] ?? 0;
  const white = values[Math.floor(WHITE_SHARE * (values.length - 1))] ?? 255;
  return { colour: scaled(black, 255 / Math.max(white - black, Number.MIN_VALUE)) };
}

function scaled(black: number, gain: number): Stretch['colour'] {
  return (bands, from, out, at) => {
    const [red, green = red, blue = red] = bands;
    out[at] = (red[from] - black) * gain;
    out[at + 1] = (green[from] - black) * gain;
    out[at + 2] = (blue[from] - black) * gain;
    out[at + 3] = 255;
  };
}

/** Palette entries are 16-bit, all reds first (TIFF 6.0, ColorMap). */
function byPalette(colourMap: readonly number[]): Stretch['colour'] {
  const entries = colourMap.length / 3;
  return (bands, from, out, at) => {
    const entry = bands[0][from];
    for (let channel = 0; channel < 3; channel++) out[at + channel] = colourMap[channel * entries + entry] / 257;
    out[at + 3] = 255;
  };
}
