/** Half-size pixels for overviews, with regard to what is missing and to bands that must not be averaged. */
import { type SampleArray, sameTypeArray, sampleTypeOf } from '../raster.ts';
import type { BandRole } from '../window.ts';

export interface FinePixels {
  readonly width: number;
  readonly height: number;
  readonly bands: readonly SampleArray[];
  /** 1 where a pixel holds no data. */
  readonly missing: Uint8Array;
}

/**
 * Bands at half the size, odd sizes rounded up: each pixel the mean of those of the up to four it covers that hold data; where none
 * does, `fill`. Transparency is the mean of all four. A palette's numbers cannot be averaged: the first that holds data is
 * taken. Whole numbers are rounded, halves upwards.
 */
export function halvedBands(fine: FinePixels, roles: readonly BandRole[], fill: number): SampleArray[] {
  const { width, height } = fine;
  const [halfWidth, halfHeight] = [Math.ceil(width / 2), Math.ceil(height / 2)];
  return fine.bands.map((band, b) => {
    const out = sameTypeArray(band, halfWidth * halfHeight);
    const whole = sampleTypeOf(band).format !== 3;
    const skip = roles[b] === 'alpha' ? null : fine.missing;
    const pick = roles[b] === 'palette';
    for (let row = 0; row < halfHeight; row++) {
      const rows = Math.min(2, height - 2 * row);
      for (let column = 0; column < halfWidth; column++) {
        const columns = Math.min(2, width - 2 * column);
        let sum = 0;
        let count = 0;
        for (let y = 0; y < rows; y++) {
          const start = (2 * row + y) * width + 2 * column;
          for (let i = start; i < start + columns; i++) {
            const sample = band[i];
            if ((skip !== null && skip[i] !== 0) || Number.isNaN(sample) || (pick && count > 0)) continue;
            sum += sample;
            count++;
          }
        }
        const mean = count === 0 ? fill : sum / count;
        out[row * halfWidth + column] = whole ? Math.floor(mean + 0.5) : mean;
      }
    }
    return out;
  });
}
