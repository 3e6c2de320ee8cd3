import { describe, expect, test } from 'vitest';
import { BalancedSums, balancedSum } from './balanced-sum.ts';

describe('balanced sums', () => {
  // Neumaier 1974; the four-term case is the standard one that the plain Kahan sum gets wrong (from memory).
  test('keeps what plain addition and the plain Kahan sum lose', () => {
    expect(1 + 1e100 + 1 - 1e100).toBe(0);
    expect(balancedSum([1, 1e100, 1, -1e100])).toBe(2);
  });

  // Closed form: a million tenths; plain addition is off by about 1.3e-6.
  test('a million tenths make a hundred thousand, to the last digit', () => {
    const sums = new BalancedSums(2);
    let plain = 0;
    for (let i = 0; i < 1_000_000; i++) {
      sums.add(1, 0.1);
      plain += 0.1;
    }
    expect(Math.abs(plain - 100_000)).toBeGreaterThan(1e-7);
    expect(sums.at(1)).toBe(100_000);
    expect([...sums.values()]).toEqual([0, 100_000]);
  });

  test('no numbers sum to 0', () => {
    expect(balancedSum([])).toBe(0);
  });
});
