/** What a prepared file will be: its size, bands and levels, and how what is missing is told in it. */
import type { Imagery } from '../imagery.ts';
import { type SampleArray, sameTypeArray, sampleTypeOf } from '../raster.ts';
import type { BandRole, Samples } from '../window.ts';

export interface PrepareLevel {
  readonly width: number;
  readonly height: number;
  /** Tiles side by side, and rows of them. */
  readonly across: number;
  readonly down: number;
}

export interface PreparePlan {
  readonly tileSize: number;
  /** The full picture first, then by halves until one tile holds it. */
  readonly levels: readonly PrepareLevel[];
  /** Of the bands written. */
  readonly roles: readonly BandRole[];
  /** An empty array of the type that samples are written in. */
  readonly samples: Samples;
  /** Written as the file's no-data value. */
  readonly nodata: number | null;
  /** How missing pixels are written: by a band of transparency made for them, by the no-data value, or as they come. */
  readonly missingAs: 'alpha' | 'nodata' | 'kept';
}

/**
 * The plan for an image. Missing pixels of a masked image without transparency or no-data value get a band of transparency (8 and
 * 16 bits) or a no-data value (the lowest of the type, NaN for floats).
 */
export function preparePlan(image: Imagery, samples: Samples, tileSize: number): PreparePlan {
  const { name, format } = sampleTypeOf(samples);
  const needed = image.hasMask && image.nodata === null && !image.roles.includes('alpha');
  const byAlpha = needed && (name === 'uint8' || name === 'uint16');
  const byNodata = (needed && !byAlpha) || image.nodata !== null;
  const lowest = format === 3 ? Number.NaN : format === 2 ? -(2 ** (8 * samples.BYTES_PER_ELEMENT - 1)) : 0;
  return {
    tileSize,
    levels: levelsOf(image.width, image.height, tileSize),
    roles: byAlpha ? [...image.roles, 'alpha'] : image.roles,
    samples: sameTypeArray(samples, 0),
    nodata: byNodata ? (image.nodata ?? lowest) : null,
    missingAs: byAlpha ? 'alpha' : byNodata ? 'nodata' : 'kept',
  };
}

function levelsOf(width: number, height: number, tileSize: number): PrepareLevel[] {
  const out: PrepareLevel[] = [];
  for (let [w, h] = [width, height]; ; [w, h] = [Math.ceil(w / 2), Math.ceil(h / 2)]) {
    out.push({ width: w, height: h, across: Math.ceil(w / tileSize), down: Math.ceil(h / tileSize) });
    if (w <= tileSize && h <= tileSize) return out;
  }
}

/** The bands as they are written: missing pixels told in the plan's way. */
export function writtenBands(
  plan: PreparePlan,
  bands: readonly SampleArray[],
  missing: Uint8Array,
): readonly SampleArray[] {
  if (plan.missingAs === 'kept') return bands;
  if (plan.missingAs === 'alpha') {
    const alpha = sameTypeArray(plan.samples, missing.length);
    const opaque = sampleTypeOf(plan.samples).bits === 8 ? 255 : 65535;
    for (let i = 0; i < missing.length; i++) alpha[i] = missing[i] === 0 ? opaque : 0;
    return [...bands, alpha];
  }
  const value = plan.nodata as number;
  return bands.map((band) => {
    const out = new (band.constructor as new (from: SampleArray) => SampleArray)(band);
    for (let i = 0; i < missing.length; i++) if (missing[i] !== 0) out[i] = value;
    return out;
  });
}
