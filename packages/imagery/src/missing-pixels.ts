/** Which pixels of a window hold no data: by a mask, by transparency, by a no-data value, or NaN. */
import type { Samples } from './window.ts';

export interface MissingFrom {
  readonly length: number;
  /** Those read, without bands of transparency. */
  readonly bands: readonly Samples[];
  readonly nodata: number | null;
  readonly alpha: Samples | undefined;
  /** The file's own mask: 0 hides. */
  readonly mask: Samples | undefined;
}

/** 1 where there is no data; see `Window.missing`. */
export function missingPixels({ length, bands, nodata, alpha, mask }: MissingFrom): Uint8Array {
  const missing = new Uint8Array(length);
  if (bands.length > 0) markNoData(missing, bands, nodata);
  if (alpha) {
    const half = opaqueValue(alpha) / 2;
    for (let i = 0; i < length; i++) if (alpha[i] < half) missing[i] = 1;
  }
  if (mask) for (let i = 0; i < length; i++) if (mask[i] === 0) missing[i] = 1;
  return missing;
}

/** The value of full opacity. Alpha of 0–255 in 16 bits is common, so samples that never exceed 255 are read so. */
function opaqueValue(alpha: Samples): number {
  if (alpha instanceof Float32Array || alpha instanceof Float64Array) return 1;
  if (alpha.BYTES_PER_ELEMENT === 1) return 255;
  for (const sample of alpha) if (sample > 255) return 65535;
  return 255;
}

/** Only pixels that are without data in every band count: a black red sample alone may be a deep shadow. */
function markNoData(missing: Uint8Array, bands: readonly Samples[], nodata: number | null): void {
  const values = bands.map((band) => storedAs(band, nodata));
  const [band, value] = [bands[0], values[0]];
  if (value === null && !isFloat(band)) return;
  for (let i = 0; i < missing.length; i++) {
    const sample = band[i];
    if (sample !== value && !Number.isNaN(sample)) continue;
    let all = true;
    for (let b = 1; b < bands.length && all; b++) {
      const other = bands[b][i];
      all = other === values[b] || Number.isNaN(other);
    }
    if (all) missing[i] = 1;
  }
}

/** A no-data value as samples of the band's type hold it; null when they cannot. */
function storedAs(band: Samples, nodata: number | null): number | null {
  if (nodata === null || Number.isNaN(nodata)) return null;
  if (band instanceof Float32Array) return Math.fround(nodata);
  if (band instanceof Float64Array) return nodata;
  const one = new (band.constructor as new (length: number) => Samples)(1);
  one[0] = nodata;
  return one[0] === nodata ? nodata : null;
}

function isFloat(band: Samples): boolean {
  return band instanceof Float32Array || band instanceof Float64Array;
}
