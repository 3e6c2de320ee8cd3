/** A simple random sample: which of n to take. */

import { expectWhole } from './expectations.ts';
import type { RandomStream } from './random-stream.ts';

/**
 * Positions 0 … population − 1 of a simple random sample, sorted upwards; every subset of that size is as likely.
 *
 * Work and memory grow with the sample, not the population. A sample as large as the population takes all. RangeError when it
 * is larger. Source: Bentley and Floyd (1987), Communications of the ACM 30, 754–757 (from memory).
 *
 * Example: `sampleWithoutReplacement(3, 3, new RandomStream(1))` gives [0, 1, 2].
 */
export function sampleWithoutReplacement(population: number, size: number, stream: RandomStream): number[] {
  expectWhole(population, 0, 'population');
  expectWhole(size, 0, 'size');
  if (size > population) throw new RangeError(`size: expected at most the population ${population}, got ${size}`);
  const chosen = new Set<number>();
  for (let last = population - size; last < population; last++) {
    const candidate = stream.wholeBelow(last + 1);
    chosen.add(chosen.has(candidate) ? last : candidate);
  }
  return [...chosen].sort((a, b) => a - b);
}
