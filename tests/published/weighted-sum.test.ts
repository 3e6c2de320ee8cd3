/**
 * The weighted sum against the textbook example of three alternatives and four criteria.
 * Source: Fishburn PC (1967) Operations Research 15:537–542; Triantaphyllou E (2000) Multi-Criteria Decision Making Methods:
 * A Comparative Study, Kluwer, weighted sum model (the 3×4 example from memory; scores by arithmetic outside this program).
 */
import { type BlockEvidence, rankBlocks } from '@crownfall/priority';
import { CRITERIA, type Criterion, DEFAULT_SETTINGS, type PrioritySettings } from '@crownfall/survey';
import { describe, expect, test } from 'vitest';

const MATRIX = [
  [25, 20, 15, 30],
  [10, 30, 20, 30],
  [30, 10, 30, 10],
];
const WEIGHTS = [0.2, 0.15, 0.4, 0.25];
const TOLERANCE = 1e-12;

const column = (j: number) => MATRIX.map((row) => row[j]);
/** A value for each criterion: the example's four, then a filler for criteria it does not have. */
const perCriterion = <T>(of: (j: number) => T, filler: T) =>
  Object.fromEntries(CRITERIA.map((criterion, j) => [criterion, j < 4 ? of(j) : filler])) as Record<Criterion, T>;
const ranked = (levels: (j: number) => { none: number; full: number }, stainedM2 = [1, 1, 1]) => {
  const settings: PrioritySettings = {
    ...DEFAULT_SETTINGS.priority,
    weights: perCriterion((j) => WEIGHTS[j], 0),
    levels: perCriterion(levels, { none: 0, full: 1 }),
  };
  const blocks = MATRIX.map(
    (row, i): BlockEvidence => ({
      blockId: `A${i + 1}`,
      stainedM2: stainedM2[i],
      amounts: perCriterion((j) => row[j], 0),
    }),
  );
  return rankBlocks(blocks, settings);
};
const scores = (levels: (j: number) => { none: number; full: number }) =>
  ranked(levels)
    .toSorted((a, b) => a.index - b.index)
    .map(({ score }) => score);
const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);

describe('weighted sum, published 3×4 example', () => {
  test.each([
    [
      '÷ max',
      (j: number) => ({ none: 0, full: Math.max(...column(j)) }),
      [0.716666666666667, 0.733333333333333, 0.733333333333333],
    ],
    [
      '÷ sum',
      (j: number) => ({ none: 0, full: sum(column(j)) }),
      [0.326373626373626, 0.335989010989011, 0.337637362637363],
    ],
    [
      '÷ norm',
      (j: number) => ({ none: 0, full: Math.hypot(...column(j)) }),
      [0.5299191634853323, 0.5468022609918293, 0.5535733131005046],
    ],
    [
      'min to max',
      (j: number) => ({ none: Math.min(...column(j)), full: Math.max(...column(j)) }),
      [0.475, 0.533333333333333, 0.6],
    ],
    [
      'min to max, the fourth a cost',
      (j: number) =>
        j === 3
          ? { none: Math.max(...column(j)), full: Math.min(...column(j)) }
          : { none: Math.min(...column(j)), full: Math.max(...column(j)) },
      [0.225, 0.283333333333333, 0.85],
    ],
  ])('levels %s give the published scores', (_name, levels, expected) => {
    scores(levels).forEach((score, i) => {
      expect(Math.abs(score - expected[i])).toBeLessThan(TOLERANCE);
    });
  });

  test('raw scores 21.5, 22, 22: alternatives 2 and 3 tie, and the tie rule decides', () => {
    const raw = () => ({ none: 0, full: 100 });
    expect(scores(raw).map((score) => 100 * score)).toEqual([21.5, 22, 22].map((score) => expect.closeTo(score, 10)));
    expect(ranked(raw).map(({ blockId }) => blockId)).toEqual(['A2', 'A3', 'A1']);
    expect(ranked(raw, [9, 1, 2]).map(({ blockId }) => blockId)).toEqual(['A3', 'A2', 'A1']);
  });
});
