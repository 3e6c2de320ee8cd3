/** The square table of two raters' classes. */

import { expectSameLength, expectWhole } from './expectations.ts';

/**
 * Counts how often two raters gave each pair of classes: rows are the first rater's, columns the second's.
 *
 * Classes are whole numbers 0 … classes − 1. RangeError for others and for lists of unequal length. No ratings give zeros.
 *
 * Example: `agreementTable([0, 1, 1], [0, 1, 0], 2)` gives [[1, 0], [1, 1]].
 */
export function agreementTable(first: ArrayLike<number>, second: ArrayLike<number>, classes: number): number[][] {
  expectSameLength(first, second, 'first and second ratings');
  expectWhole(classes, 1, 'classes');
  const table = Array.from({ length: classes }, () => new Array<number>(classes).fill(0));
  for (let i = 0; i < first.length; i++) {
    const row = table[first[i] as number];
    const column = second[i] as number;
    if (row?.[column] === undefined) {
      throw new RangeError(`ratings: expected classes 0 to ${classes - 1}, got ${first[i]} and ${column} at ${i}`);
    }
    row[column] = (row[column] as number) + 1;
  }
  return table;
}
