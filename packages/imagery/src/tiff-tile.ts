/** One tile of a raster as the bytes to compress: samples interleaved by pixel, differenced along each row. */
import { type Raster, type SampleArray, sameTypeArray, sampleTypeOf } from './raster.ts';

/** `Predictor` of TIFF 6.0, section 14, that tiles of this sample type are written with: 2, or 1 for floating point. */
export function predictorOf(samples: SampleArray): 1 | 2 {
  return sampleTypeOf(samples).format === 3 ? 1 : 2;
}

/**
 * The tile whose first pixel is (`left`, `top`), little-endian. Beyond the raster's edge the nearest pixel is repeated, which
 * costs few bytes. Whole-number samples are replaced by the difference from the same band of the pixel before (TIFF 6.0,
 * section 14, predictor 2), modulo their size; floating-point samples are left as they are.
 */
export function predictedTile(raster: Raster, left: number, top: number, tileSize: number): Uint8Array {
  const { bands, width, height } = raster;
  const count = bands.length;
  const differences = predictorOf(bands[0]) === 2;
  // Typed arrays wrap differences around by themselves, and are little-endian on every platform there is.
  const out = sameTypeArray(bands[0], tileSize * tileSize * count);
  const inside = Math.min(tileSize, width - left);
  for (let row = 0; row < tileSize; row++) {
    const from = Math.min(top + row, height - 1) * width + left;
    for (let b = 0; b < count; b++) {
      const band = bands[b];
      let before = 0;
      let at = row * tileSize * count + b;
      for (let column = 0; column < inside; column++, at += count) {
        const sample = band[from + column];
        out[at] = differences ? sample - before : sample;
        before = sample;
      }
      for (let column = inside; column < tileSize; column++, at += count) out[at] = differences ? 0 : before;
    }
  }
  return new Uint8Array(out.buffer);
}
