/**
 * Vegetation indices: how green a pixel is, from ratios of its bands, so that they hardly change with the light's
 * strength. Where a ratio has no value it is named, never a number that is not one.
 *
 * Sources (from memory): NDVI, Rouse and others 1974, NASA SP-351 1, 309–317; VARI, Gitelson and others 2002, Remote
 * Sensing of Environment 80, 76–87; ExG, Woebbecke and others 1995, Transactions of the ASAE 38, 259–269; GLI, Louhaichi
 * and others 2001, Geocarto International 16, 65–70; NGRDI, Tucker 1979, Remote Sensing of Environment 8, 127–150.
 */
import type { BandRole, Samples, Window } from '../window.ts';

export const VEGETATION_INDICES = ['NDVI', 'VARI', 'ExG', 'GLI', 'NGRDI'] as const;
export type VegetationIndex = (typeof VEGETATION_INDICES)[number];

/** One pixel's bands, in any unit that is the same for all of them. */
export interface PixelColour {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
  readonly nearInfrared?: number;
}

/** An index of one pixel. `zero-over-zero`: both parts of the ratio are 0, as for black; `pole`: only the lower is; `no-band`: a band is missing. */
export type IndexReading =
  | { readonly defined: true; readonly value: number }
  | { readonly defined: false; readonly because: 'zero-over-zero' | 'pole' | 'no-band' };

interface Ratio {
  readonly above: number;
  readonly below: number;
}

const RATIOS: Readonly<Record<VegetationIndex, (r: number, g: number, b: number, n: number) => Ratio>> = {
  NDVI: (r, _g, _b, n) => ({ above: n - r, below: n + r }),
  VARI: (r, g, b) => ({ above: g - r, below: g + r - b }),
  // 2g − r − b in chromatic coordinates r = R/(R + G + B) and so on.
  ExG: (r, g, b) => ({ above: 2 * g - r - b, below: r + g + b }),
  GLI: (r, g, b) => ({ above: 2 * g - r - b, below: 2 * g + r + b }),
  NGRDI: (r, g) => ({ above: g - r, below: g + r }),
};

/**
 * A vegetation index of one pixel.
 * @throws RangeError for an unknown index, with the valid ones.
 * @example vegetationIndex('NDVI', { red: 72, green: 121, blue: 43, nearInfrared: 190 }) // { defined: true, value: 0.4504 }
 */
export function vegetationIndex(index: VegetationIndex, pixel: PixelColour): IndexReading {
  if (!VEGETATION_INDICES.includes(index)) {
    throw new RangeError(`vegetationIndex: expected one of ${VEGETATION_INDICES.join(', ')}, got ${index}`);
  }
  const { red, green, blue, nearInfrared } = pixel;
  if (index === 'NDVI' && nearInfrared === undefined) return { defined: false, because: 'no-band' };
  const { above, below } = RATIOS[index](red, green, blue, nearInfrared ?? 0);
  if (below !== 0 && Number.isFinite(above / below)) return { defined: true, value: above / below };
  return { defined: false, because: above === 0 ? 'zero-over-zero' : 'pole' };
}

/** An index over a window; `values` holds 0 where `defined` is 0, so that no sum is ever spoiled. */
export interface IndexBand {
  readonly index: VegetationIndex;
  readonly values: Float32Array;
  /** 1 where the index has a value: data there, and no pole. */
  readonly defined: Uint8Array;
}

/**
 * An index of every pixel of a window; undefined where the window has no data.
 * @throws RangeError when the window lacks a band that the index needs.
 */
export function indexBand(index: VegetationIndex, window: Window): IndexBand {
  const { red, green, blue, nearInfrared } = colourBands(window);
  if (index === 'NDVI' && nearInfrared === null) {
    throw new RangeError('indexBand: NDVI needs a near-infrared band, and this image has none');
  }
  const ratio = RATIOS[index];
  const size = window.width * window.height;
  const values = new Float32Array(size);
  const defined = new Uint8Array(size);
  for (let i = 0; i < size; i++) {
    if (window.missing[i] === 1) continue;
    const { above, below } = ratio(red[i], green[i], blue[i], nearInfrared === null ? 0 : nearInfrared[i]);
    const value = above / below;
    if (below === 0 || !Number.isFinite(value)) continue;
    values[i] = value;
    defined[i] = 1;
  }
  return { index, values, defined };
}

/** The bands of a window by what they show; grey images and those without a colour have none to offer. */
export interface ColourBands {
  readonly red: Samples;
  readonly green: Samples;
  readonly blue: Samples;
  readonly nearInfrared: Samples | null;
}

/** @throws RangeError when red, green or blue is missing; the message names the roles found. */
export function colourBands(window: Window): ColourBands {
  return {
    red: bandOf(window, 'red'),
    green: bandOf(window, 'green'),
    blue: bandOf(window, 'blue'),
    nearInfrared: hasBand(window, 'near-infrared') ? bandOf(window, 'near-infrared') : null,
  };
}

/** Whether a window has a band of this role. */
export function hasBand(window: Window, role: BandRole): boolean {
  return window.roles.includes(role);
}

function bandOf(window: Window, role: BandRole): Samples {
  const at = window.roles.indexOf(role);
  if (at < 0) throw new RangeError(`expected a ${role} band, got ${window.roles.join(', ')}`);
  return window.bands[at];
}
