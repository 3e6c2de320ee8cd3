/** Overviews: the same picture at half the size, again and again, each pixel the mean of those it covers. */
import { type Raster, type SampleArray, sameTypeArray, sampleTypeOf } from './raster.ts';

/**
 * The raster at half its size (odd sizes rounded up; the last pixel then averages what there is). Samples equal to
 * `nodata`, and NaN, do not count; a pixel that covers nothing else becomes `nodata`. Whole-number samples are rounded,
 * halves upwards. Noise-free means: the mean of an image with even sizes is kept to rounding.
 */
export function halved(raster: Raster, nodata: number | undefined): Raster {
  const width = Math.ceil(raster.width / 2);
  const height = Math.ceil(raster.height / 2);
  const bands = raster.bands.map((band) => halvedBand(band, raster, { width, height, nodata }));
  return { width, height, bands };
}

/** The overviews of a raster, largest first, until one fits into a tile of `tileSize`; empty when it fits already. */
export function overviewsOf(raster: Raster, tileSize: number, nodata: number | undefined): readonly Raster[] {
  const levels: Raster[] = [];
  let level = raster;
  while (level.width > tileSize || level.height > tileSize) {
    level = halved(level, nodata);
    levels.push(level);
  }
  return levels;
}

function halvedBand(
  band: SampleArray,
  size: { readonly width: number; readonly height: number },
  to: { readonly width: number; readonly height: number; readonly nodata: number | undefined },
): SampleArray {
  const out = sameTypeArray(band, to.width * to.height);
  const whole = sampleTypeOf(band).format !== 3;
  for (let row = 0; row < to.height; row++) {
    const rowEnd = Math.min(2 * row + 2, size.height);
    for (let column = 0; column < to.width; column++) {
      const columnEnd = Math.min(2 * column + 2, size.width);
      let sum = 0;
      let count = 0;
      for (let y = 2 * row; y < rowEnd; y++) {
        for (let x = 2 * column; x < columnEnd; x++) {
          const sample = band[y * size.width + x];
          if (sample === to.nodata || Number.isNaN(sample)) continue;
          sum += sample;
          count++;
        }
      }
      const mean = count === 0 ? (to.nodata ?? Number.NaN) : sum / count;
      out[row * to.width + column] = whole && count > 0 ? Math.floor(mean + 0.5) : mean;
    }
  }
  return out;
}
