import { describe, expect, test } from 'vitest';
import { incompleteBeta } from './beta-function.ts';
import { chiSquareUpper } from './chi-square-distribution.ts';
import { incompleteGamma } from './gamma-function.ts';
import { normalCdf } from './normal-distribution.ts';
import { philox4x32 } from './philox.ts';
import { RandomStream } from './random-stream.ts';
import { sampleWithoutReplacement } from './sample-without-replacement.ts';

/** A right generator fails a test at this level once in 10,000 seeds; the seed is fixed, so the tests do not flicker. */
const LEVEL = 1e-4;

/** Kolmogorov's test that draws follow a cumulative distribution, by its limiting series. */
function kolmogorovP(draws: number[], cdf: (x: number) => number): number {
  const n = draws.length;
  const sorted = draws.sort((a, b) => a - b);
  const gap = Math.max(...sorted.map((x, i) => Math.max((i + 1) / n - cdf(x), cdf(x) - i / n)));
  let p = 0;
  for (let k = 1; k < 100; k++) p += 2 * (-1) ** (k - 1) * Math.exp(-2 * k * k * n * gap * gap);
  return p;
}

const draws = (draw: (stream: RandomStream) => number, count = 20_000): number[] => {
  const stream = new RandomStream(2024);
  return Array.from({ length: count }, () => draw(stream));
};

describe('addresses', () => {
  test('a stream is Philox with the seed as key and the address in the counter', () => {
    const block = Uint32Array.of(0, 11, 12, 13);
    philox4x32(block, 7, 0);
    const stream = new RandomStream(7, 11, 12, 13);
    expect([stream.word(), stream.word(), stream.word(), stream.word()]).toEqual(Array.from(block));
    const next = Uint32Array.of(1, 11, 12, 13);
    philox4x32(next, 7, 0);
    expect(stream.word()).toBe(next[0]);
  });
  test('streams drawn in turn, or one after another, give the same numbers', () => {
    const [a, b] = [new RandomStream(1, 1), new RandomStream(1, 2)];
    const inTurn = [a.uniform(), b.uniform(), a.uniform(), b.uniform()];
    const [c, d] = [new RandomStream(1, 2), new RandomStream(1, 1)];
    const [b1, b2, a1, a2] = [c.uniform(), c.uniform(), d.uniform(), d.uniform()];
    expect(inTurn).toEqual([a1, b1, a2, b2]);
  });
  test('seeds that differ above 2^32 differ', () => {
    expect(new RandomStream(5).word()).not.toBe(new RandomStream(5 + 2 ** 32).word());
  });
  test('misuse is told', () => {
    expect(() => new RandomStream(-1)).toThrow(/seed: expected a whole number from 0/);
    expect(() => new RandomStream(1.5)).toThrow(/seed/);
    expect(() => new RandomStream(1, 1, 2, 3, 4)).toThrow(/at most three/);
    expect(() => new RandomStream(1, 2 ** 32)).toThrow(/below 2\^32/);
    expect(() => new RandomStream(1).triangular(3, 2, 1)).toThrow(/low ≤ mode ≤ high/);
  });
});

describe('draws follow their distributions (Kolmogorov’s test)', () => {
  test.each([
    ['uniform', (s: RandomStream) => s.uniform(), (x: number) => x],
    ['between', (s: RandomStream) => s.between(-3, 5), (x: number) => (x + 3) / 8],
    ['normal', (s: RandomStream) => s.normal(4, 0.5), (x: number) => normalCdf((x - 4) / 0.5)],
    [
      'triangular',
      (s: RandomStream) => s.triangular(0, 1, 4),
      (x: number) => (x < 1 ? (x * x) / 4 : 1 - (4 - x) ** 2 / 12),
    ],
    ['gamma', (s: RandomStream) => s.gamma(2.5), (x: number) => incompleteGamma(2.5, x)[0]],
    ['gamma, shape below 1', (s: RandomStream) => s.gamma(0.4), (x: number) => incompleteGamma(0.4, x)[0]],
    ['beta', (s: RandomStream) => s.beta(2, 5), (x: number) => incompleteBeta(x, 1 - x, 2, 5)[0]],
    ['beta, U-shaped', (s: RandomStream) => s.beta(0.5, 0.5), (x: number) => (2 / Math.PI) * Math.asin(Math.sqrt(x))],
  ])('%s', (_, draw, cdf) => {
    expect(kolmogorovP(draws(draw), cdf)).toBeGreaterThan(LEVEL);
  });
  test('the test itself rejects a wrong distribution', () => {
    expect(
      kolmogorovP(
        draws((s) => s.normal()),
        (x) => normalCdf(x / 1.1),
      ),
    ).toBeLessThan(LEVEL);
  });
  test('a triangle without width is its value', () => {
    expect(new RandomStream(1).triangular(2, 2, 2)).toBe(2);
  });
});

describe('whole numbers and samples', () => {
  test('whole numbers are even (chi-square)', () => {
    const counts = new Array<number>(7).fill(0);
    for (const k of draws((s) => s.wholeBelow(7), 70_000)) counts[k] = (counts[k] as number) + 1;
    const chiSquare = counts.reduce((sum, n) => sum + (n - 10_000) ** 2 / 10_000, 0);
    expect(chiSquareUpper(chiSquare, 6)).toBeGreaterThan(LEVEL);
  });
  test('every subset is as likely (chi-square over the 10 pairs of 5)', () => {
    const counts = new Map<string, number>();
    for (let i = 0; i < 20_000; i++) {
      const key = sampleWithoutReplacement(5, 2, new RandomStream(3, i)).join();
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
    expect(counts.size).toBe(10);
    const chiSquare = [...counts.values()].reduce((sum, n) => sum + (n - 2000) ** 2 / 2000, 0);
    expect(chiSquareUpper(chiSquare, 9)).toBeGreaterThan(LEVEL);
  });
  test('all, none, too many', () => {
    const stream = new RandomStream(1);
    expect(sampleWithoutReplacement(4, 4, stream)).toEqual([0, 1, 2, 3]);
    expect(sampleWithoutReplacement(4, 0, stream)).toEqual([]);
    expect(() => sampleWithoutReplacement(4, 5, stream)).toThrow(/at most the population 4, got 5/);
  });
});
