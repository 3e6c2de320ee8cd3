import { expect, test } from 'vitest';
import { DrawStream, normalLevels, startOfDraw } from './draw-stream.ts';

const levels = normalLevels();

test('the generator gives the words that xoshiro128** gives from 1, 2, 3, 4', () => {
  // The words of the authors' C code, version 1.1, from the state 1, 2, 3, 4, as tests of other implementations quote them.
  const stream = new DrawStream([1, 2, 3, 4], levels);
  const words = Array.from({ length: 10 }, () => stream.word());
  expect(words).toEqual([
    11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
  ]);
});

test('normal levels have mean 0, variance 1 to 1e-4, and quarter points at ±0.6745', () => {
  const mean = levels.reduce((sum, z) => sum + z, 0) / levels.length;
  const variance = levels.reduce((sum, z) => sum + z * z, 0) / levels.length;
  expect(Math.abs(mean)).toBeLessThan(1e-12);
  expect(Math.abs(variance - 1)).toBeLessThan(1e-4);
  // Normal quantile of 0.75: 0.674490 (any table).
  expect(levels[(3 * levels.length) / 4]).toBeCloseTo(0.67449, 4);
});

test('draws of one seed start apart, equal ones alike', () => {
  expect(startOfDraw(7, 3)).toEqual(startOfDraw(7, 3));
  const starts = Array.from({ length: 1000 }, (_, draw) => startOfDraw(7, draw));
  expect(new Set(starts.map(({ words }) => words.join(' '))).size).toBe(1000);
  const mean = starts.reduce((sum, { forCoefficient }) => sum + forCoefficient, 0) / starts.length;
  // Three standard errors of the mean of 1,000 uniforms.
  expect(Math.abs(mean - 0.5)).toBeLessThan(3 / Math.sqrt(12 * 1000));
});
