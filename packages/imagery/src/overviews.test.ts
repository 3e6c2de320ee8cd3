import { expect, test } from 'vitest';
import { halved, overviewsOf } from './overviews.ts';

test('each pixel is the mean of the four it covers, halves rounded upwards', () => {
  const raster = { width: 4, height: 2, bands: [Uint8Array.of(1, 2, 10, 20, 3, 4, 30, 42)] };
  // Means 2.5 and 25.5.
  expect(halved(raster, undefined).bands[0]).toEqual(Uint8Array.of(3, 26));
});

test('the edge of an odd image averages what there is', () => {
  const raster = { width: 3, height: 1, bands: [Float32Array.of(1, 2, 7)] };
  expect(halved(raster, undefined)).toEqual({ width: 2, height: 1, bands: [Float32Array.of(1.5, 7)] });
});

test('no-data and NaN do not count, and stay where nothing else is', () => {
  const raster = { width: 4, height: 1, bands: [Float32Array.of(-9999, 5, -9999, Number.NaN)] };
  expect(halved(raster, -9999).bands[0]).toEqual(Float32Array.of(5, -9999));
});

test('the mean of an image of even sizes is kept', () => {
  const samples = Float32Array.from({ length: 64 * 64 }, (_, i) => Math.fround(Math.sin(i * 1.7) * 100));
  const mean = (of: ArrayLike<number>) => Array.from(of).reduce((sum, v) => sum + v, 0) / of.length;
  const levels = overviewsOf({ width: 64, height: 64, bands: [samples] }, 16, undefined);
  expect(levels.map((level) => level.width)).toEqual([32, 16]);
  // float32 means: 100 · 2⁻²⁴ per step.
  expect(Math.abs(mean(levels[1].bands[0]) - mean(samples))).toBeLessThan(1e-4);
});
