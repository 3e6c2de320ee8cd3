/**
 * Pixels in memory: one array per band, row-major from the top left. Pixel (0, 0) covers [0, 1) × [0, 1).
 */
import type { Samples } from './window.ts';

export type SampleArray = Samples;

export interface Raster {
  readonly width: number;
  readonly height: number;
  /** Each of `width · height` samples, all of one type. */
  readonly bands: readonly SampleArray[];
}

/** A rectangle of pixels: columns `[left, left + width)`, rows `[top, top + height)`. */
export interface PixelWindow {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** One window may hold this many pixels (4096 × 4096): larger wishes are read piece by piece. */
export const WINDOW_PIXELS_MAX = 2 ** 24;

/** How a sample is stored: `SampleFormat` and `BitsPerSample` of TIFF 6.0. */
export interface SampleType {
  readonly name: 'uint8' | 'int8' | 'uint16' | 'int16' | 'uint32' | 'int32' | 'float32' | 'float64';
  /** 1 whole numbers, 2 with sign, 3 floating point. */
  readonly format: 1 | 2 | 3;
  readonly bits: 8 | 16 | 32 | 64;
}

/** The stored type of an array's samples. */
export function sampleTypeOf(samples: SampleArray): SampleType {
  if (samples instanceof Uint8Array) return { name: 'uint8', format: 1, bits: 8 };
  if (samples instanceof Int8Array) return { name: 'int8', format: 2, bits: 8 };
  if (samples instanceof Uint16Array) return { name: 'uint16', format: 1, bits: 16 };
  if (samples instanceof Int16Array) return { name: 'int16', format: 2, bits: 16 };
  if (samples instanceof Uint32Array) return { name: 'uint32', format: 1, bits: 32 };
  if (samples instanceof Int32Array) return { name: 'int32', format: 2, bits: 32 };
  if (samples instanceof Float32Array) return { name: 'float32', format: 3, bits: 32 };
  return { name: 'float64', format: 3, bits: 64 };
}

/** A new array of the same sample type. */
export function sameTypeArray(like: SampleArray, length: number): SampleArray {
  return new (like.constructor as new (length: number) => SampleArray)(length);
}

/**
 * Refuses a raster whose parts do not fit together.
 * @throws RangeError with the expected and the found number of samples; TypeError when bands differ in type.
 */
export function checkRaster(raster: Raster): void {
  const { width, height, bands } = raster;
  if (!(Number.isInteger(width) && Number.isInteger(height) && width > 0 && height > 0)) {
    throw new RangeError(`raster: expected a positive whole width and height, got ${width} × ${height}`);
  }
  if (bands.length === 0) throw new RangeError('raster: expected at least one band, got none');
  const type = sampleTypeOf(bands[0]).name;
  for (const [index, band] of bands.entries()) {
    if (band.length !== width * height) {
      throw new RangeError(`raster: band ${index + 1}: expected ${width * height} samples, got ${band.length}`);
    }
    if (sampleTypeOf(band).name !== type) {
      throw new TypeError(
        `raster: expected bands of one type (${type}), band ${index + 1} is ${sampleTypeOf(band).name}`,
      );
    }
  }
}
