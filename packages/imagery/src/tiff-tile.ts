/** One tile of a raster as the bytes to compress: samples interleaved by pixel, differenced along each row. */
import { type Raster, sampleTypeOf } from './raster.ts';

/**
 * The tile whose first pixel is (`left`, `top`). Beyond the raster's edge the nearest pixel is repeated, which costs
 * few bytes. Whole-number samples are replaced by the difference from the same band of the pixel before (TIFF 6.0,
 * section 14, predictor 2), modulo their size; float32 samples are left as they are.
 */
export function predictedTile(raster: Raster, left: number, top: number, tileSize: number): Uint8Array {
  const { bands, width, height } = raster;
  const count = bands.length;
  const type = sampleTypeOf(bands[0]);
  const bytesPerSample = type.bits / 8;
  const bytes = new Uint8Array(tileSize * tileSize * count * bytesPerSample);
  const view = new DataView(bytes.buffer);
  for (let row = 0; row < tileSize; row++) {
    const from = Math.min(top + row, height - 1) * width;
    for (let b = 0; b < count; b++) {
      const band = bands[b];
      let before = 0;
      for (let column = 0; column < tileSize; column++) {
        const sample = band[from + Math.min(left + column, width - 1)];
        const at = ((row * tileSize + column) * count + b) * bytesPerSample;
        if (type.bits === 8) bytes[at] = sample - before;
        else if (type.bits === 16) view.setUint16(at, (sample - before) & 0xffff, true);
        else view.setFloat32(at, sample, true);
        before = sample;
      }
    }
  }
  return bytes;
}
