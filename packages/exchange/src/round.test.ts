import { expect, test } from 'vitest';
import { m2, rounded } from './round.ts';

test.each([
  [1.0000005, 1.000001],
  [-1.0000005, -1.000001],
  [0.1 + 0.2, 0.3],
  [-1e-9, 0],
  [1e15 + 0.125, 1e15 + 0.125],
  [Number.NaN, null],
  [Number.POSITIVE_INFINITY, null],
])('%f m² leaves as %f', (value, expected) => {
  expect(m2(value)).toBe(expected);
});

test('never more than half a step away', () => {
  for (let i = 1; i < 2000; i++) {
    const value = Math.sin(i) * 10 ** (i % 9);
    expect(Math.abs((rounded(value, 6) ?? Number.NaN) - value)).toBeLessThanOrEqual(0.5e-6 * (1 + 1e-6));
  }
});
