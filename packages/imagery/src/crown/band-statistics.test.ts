import { describe, expect, test } from 'vitest';
import { bandStatistics } from './band-statistics.ts';

const PIXELS = Int32Array.of(0, 1, 2, 3);

describe('statistics by weight', () => {
  test('whole weights give the textbook figures of repeated values', () => {
    // 2 4 4 4 5 5 7 9: mean 5, population sd 2 (the usual worked example of a standard deviation).
    const found = bandStatistics(
      Uint8Array.of(2, 4, 5, 7, 9),
      Int32Array.of(0, 1, 2, 3, 4),
      Float64Array.of(1, 3, 2, 1, 1),
    );
    expect([found.weight, found.mean, found.sd, found.min, found.max]).toEqual([8, 5, 2, 2, 9]);
    expect(Array.from(found.quantiles)).toEqual([4]);
  });

  test('bytes and floats agree', () => {
    const weights = Float64Array.of(0.25, 1, 0.5, 0);
    const options = { quantiles: [0, 0.1, 0.5, 0.9, 1], histogram: { from: 0, to: 100, bins: 4 } };
    const bytes = bandStatistics(Uint8Array.of(90, 10, 40, 255), PIXELS, weights, options);
    const floats = bandStatistics(Float32Array.of(90, 10, 40, 255), PIXELS, weights, options);
    expect(floats).toEqual(bytes);
    expect(Array.from(bytes.quantiles)).toEqual([10, 10, 10, 90, 90]);
    expect(Array.from(bytes.histogram ?? [])).toEqual([1, 0.5, 0, 0.25]);
    // (22.5 + 10 + 20) / 1.75
    expect(bytes.mean).toBe(30);
  });

  test('large offsets cost no digits', () => {
    const found = bandStatistics(Float64Array.of(1e9 + 1, 1e9 + 2, 1e9 + 3, 0), PIXELS, Float64Array.of(1, 1, 1, 0));
    expect(found.mean).toBe(1e9 + 2);
    expect(found.sd).toBeCloseTo(Math.sqrt(2 / 3), 12);
  });

  test('what is outside the bins goes to the outer ones', () => {
    const options = { histogram: { from: 0, to: 2, bins: 2 } };
    const found = bandStatistics(Float32Array.of(-5, 0.5, 2, 7), PIXELS, Float64Array.of(1, 1, 1, 1), options);
    expect(Array.from(found.histogram ?? [])).toEqual([2, 2]);
  });

  test('NaN does not count; nothing at all is NaN', () => {
    const found = bandStatistics(Float32Array.of(Number.NaN, 3), Int32Array.of(0, 1), Float64Array.of(1, 0.5));
    expect([found.weight, found.mean]).toEqual([0.5, 3]);
    const none = bandStatistics(Uint8Array.of(1), Int32Array.of(0), Float64Array.of(0));
    expect([none.weight, none.mean, none.quantiles[0]]).toEqual([0, Number.NaN, Number.NaN]);
  });

  test('misuse', () => {
    const at = (options: Parameters<typeof bandStatistics>[3]) =>
      bandStatistics(Uint8Array.of(1), Int32Array.of(0), Float64Array.of(1), options);
    expect(() => at({ quantiles: [50] })).toThrow('got 50');
    expect(() => at({ histogram: { from: 1, to: 1, bins: 3 } })).toThrow('got 3 from 1 to 1');
  });
});
