/** Seeded random draws, addressed by stream so that results do not depend on who draws first. */

import { expectPositive, expectWhole } from './expectations.ts';
import { normalQuantile } from './normal-distribution.ts';
import { philox4x32 } from './philox.ts';

const WORD = 2 ** 32;
const UNIFORM_LOW_BITS = 2 ** 26;
const UNIFORM_STEP = 2 ** -52;

/**
 * A stream of random draws. Equal seeds and addresses give equal draws on every machine and in every order of work; different
 * addresses give streams that share no number. Make one per task (per draw of a simulation, per resample), not one per worker.
 *
 * Words come from Philox4x32-10 with the seed as its key, the address in the counter's upper three words and the block number
 * in its first: 2³⁴ words per stream (RangeError beyond), 2⁹⁶ streams per seed.
 * Draws that take logarithms (normal, gamma, beta) are equal on engines whose Math.log is equal; the others everywhere.
 *
 * Example: `new RandomStream(1).uniform()` is the same number in every run.
 */
export class RandomStream {
  readonly #key0: number;
  readonly #key1: number;
  readonly #address1: number;
  readonly #address2: number;
  readonly #address3: number;
  readonly #words = new Uint32Array(4);
  #block = 0;
  #used = 4;

  /** Seed: a whole number 0 … 2⁵³ − 1. Address: up to three whole numbers 0 … 2³² − 1, absent ones are 0. RangeError otherwise. */
  constructor(seed: number, ...address: number[]) {
    expectWhole(seed, 0, 'seed');
    if (address.length > 3) throw new RangeError(`address: expected at most three numbers, got ${address.length}`);
    for (const part of address) {
      expectWhole(part, 0, 'address');
      if (part >= WORD) throw new RangeError(`address: expected numbers below 2^32, got ${part}`);
    }
    this.#key0 = seed % WORD;
    this.#key1 = Math.floor(seed / WORD);
    this.#address1 = address[0] ?? 0;
    this.#address2 = address[1] ?? 0;
    this.#address3 = address[2] ?? 0;
  }

  /** A whole number from 0 to 2³² − 1, each as likely. */
  word(): number {
    if (this.#used === 4) this.#nextBlock();
    return this.#words[this.#used++] as number;
  }

  /** A number between 0 and 1, never 0 and never 1, from 2⁵² equally likely ones; takes two words. */
  uniform(): number {
    const high = this.word() >>> 6;
    const low = this.word() >>> 6;
    return (high * UNIFORM_LOW_BITS + low + 0.5) * UNIFORM_STEP;
  }

  /** A number between low and high. */
  between(low: number, high: number): number {
    return low + (high - low) * this.uniform();
  }

  /** A whole number from 0 to below − 1, each exactly as likely; RangeError unless 1 ≤ below ≤ 2³². */
  wholeBelow(below: number): number {
    expectWhole(below, 1, 'below');
    if (below > WORD) throw new RangeError(`below: expected at most 2^32, got ${below}`);
    const fair = WORD - (WORD % below);
    let word = this.word();
    while (word >= fair) word = this.word();
    return word % below;
  }

  /** A normal draw, by inversion: one uniform each, so a larger uniform always means a larger draw. */
  normal(mean = 0, standardDeviation = 1): number {
    return mean + standardDeviation * normalQuantile(this.uniform());
  }

  /** A triangular draw, by inversion; RangeError unless low ≤ mode ≤ high. All three equal gives that value. */
  triangular(low: number, mode: number, high: number): number {
    if (!(low <= mode && mode <= high)) {
      throw new RangeError(`triangular: expected low ≤ mode ≤ high, got ${low}, ${mode}, ${high}`);
    }
    const span = high - low;
    const u = this.uniform();
    if (span === 0) return low;
    return u * span < mode - low
      ? low + Math.sqrt(u * span * (mode - low))
      : high - Math.sqrt((1 - u) * span * (high - mode));
  }

  /**
   * A gamma draw with the given shape and scale 1, by squeeze and rejection; the number of uniforms taken varies.
   * Source: Marsaglia and Tsang (2000), ACM Trans. Math. Softw. 26, 363–372 (from memory).
   */
  gamma(shape: number): number {
    expectPositive(shape, 'shape');
    if (shape < 1) return this.gamma(shape + 1) * this.uniform() ** (1 / shape);
    const d = shape - 1 / 3;
    const c = 1 / Math.sqrt(9 * d);
    for (;;) {
      const z = this.normal();
      const v = (1 + c * z) ** 3;
      if (v > 0 && Math.log(this.uniform()) < 0.5 * z * z + d - d * v + d * Math.log(v)) return d * v;
    }
  }

  /** A beta draw: the share of one gamma draw in the sum of two. */
  beta(a: number, b: number): number {
    const over = this.gamma(a);
    const rest = this.gamma(b);
    return over / (over + rest);
  }

  #nextBlock(): void {
    if (this.#block === WORD)
      throw new RangeError('random stream: all of its 2^34 words are used; open another address');
    const words = this.#words;
    words[0] = this.#block++;
    words[1] = this.#address1;
    words[2] = this.#address2;
    words[3] = this.#address3;
    philox4x32(words, this.#key0, this.#key1);
    this.#used = 0;
  }
}
