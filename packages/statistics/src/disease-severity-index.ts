/** One figure for a table of severity scores. */

import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectBetween, expectNonNegative, expectPositive } from './expectations.ts';

/** How many subjects got a score. */
export type ScoreCount = { readonly score: number; readonly count: number };

/** Index and incidence as shares 0–1. */
export type SeverityIndex = {
  readonly index: number;
  /** Share of subjects with a score above 0. */
  readonly incidence: number;
  readonly subjects: number;
};

/**
 * Disease severity index Σ score·count/(n · greatest score), a share 0–1, and incidence.
 *
 * Meant for scores with equal steps; of unequal classes it is biased (Chiang, Liu and Bock 2017, Ann. Appl. Biol. 171, 139–154,
 * from memory): average their midpoints with `weightedMean` instead. Accuracy tested: 1e-9. Undefined without subjects.
 * RangeError for scores outside 0 … greatest. Source: McKinney (1923), J. Agric. Res. 26, 195–218 (from memory).
 *
 * Example: 12, 9, 7, 6, 4, 2 subjects with scores 0 to 5 give an index of 0.335 and an incidence of 0.7.
 */
export function diseaseSeverityIndex(scores: readonly ScoreCount[], greatest: number): Defined<SeverityIndex> {
  expectPositive(greatest, 'greatest');
  expectNonNegative(
    scores.map(({ count }) => count),
    'counts',
  );
  for (const { score } of scores) expectBetween(score, 0, greatest, 'score');
  const subjects = scores.reduce((sum, { count }) => sum + count, 0);
  if (subjects === 0) return undefinedBecause('no-observations');
  const sum = scores.reduce((total, { score, count }) => total + score * count, 0);
  const diseased = scores.reduce((total, { score, count }) => total + (score > 0 ? count : 0), 0);
  return defined({ index: sum / (subjects * greatest), incidence: diseased / subjects, subjects });
}
