import { CRITERIA, type Criterion, DEFAULT_SETTINGS, type PrioritySettings } from '@crownfall/survey';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { levelValue } from './level-value.ts';
import { type BlockEvidence, rankBlocks } from './rank.ts';

const settings = DEFAULT_SETTINGS.priority;
const amountsOf = (values: Partial<Record<Criterion, number>>) =>
  ({ ...Object.fromEntries(CRITERIA.map((criterion) => [criterion, 0])), ...values }) as Record<Criterion, number>;
const block = (blockId: string, stainedM2: number, values: Partial<Record<Criterion, number>>): BlockEvidence => ({
  blockId,
  stainedM2,
  amounts: amountsOf(values),
});
const someAmounts = fc.record(
  Object.fromEntries(CRITERIA.map((criterion) => [criterion, fc.double({ min: 0, max: 500, noNaN: true })])) as Record<
    Criterion,
    fc.Arbitrary<number>
  >,
);
const someBlocks = fc
  .array(fc.tuple(someAmounts, fc.integer({ min: 0, max: 3 })), { minLength: 1, maxLength: 12 })
  .map((blocks) => blocks.map(([amounts, stainedM2], i) => ({ blockId: `b${i}`, stainedM2, amounts })));

describe('value by two reference levels', () => {
  // Closed form: linear between the levels, flat beyond.
  test.each([
    [50, 0, 200, 0.25],
    [-1, 0, 200, 0],
    [900, 0, 200, 1],
    [30, 60, 20, 0.75],
    [5, 5, 5, 0],
    [5.1, 5, 5, 1],
  ])('%d between %d and %d is worth %d', (amount, none, full, value) => {
    expect(levelValue(amount, { none, full })).toBe(value);
  });

  test('no number, no value', () => {
    expect(() => levelValue(Number.NaN, { none: 0, full: 1 })).toThrow(RangeError);
  });
});

describe('ranking', () => {
  test('the parts are printed and sum to the score', () => {
    const [first] = rankBlocks([block('a', 50, { stained: 50, foot_traffic: 0.6, complaints: 1 })], settings);
    // Worked by hand with the default weights and levels: 0.45·0.25 + 0.15·0.6 + 0.15·0.25.
    expect(first.score).toBeCloseTo(0.24, 12);
    expect(first.scoreParts.map((part) => part.criterion)).toEqual(CRITERIA);
    expect(first.scoreParts[0]).toEqual({
      criterion: 'stained',
      amount: 50,
      value: 0.25,
      weight: expect.closeTo(0.45, 12),
      points: expect.closeTo(0.1125, 12),
    });
  });

  test('a tie goes to the greater stained area, then to the id by code unit', () => {
    const tied = [block('b', 2, {}), block('ä', 1, {}), block('Z', 1, {}), block('a', 1, {})];
    expect(rankBlocks(tied, settings).map(({ blockId, rank }) => `${rank}${blockId}`)).toEqual([
      '1b',
      '2Z',
      '3a',
      '4ä',
    ]);
  });

  test('scores that differ by rounding alone tie', () => {
    const weights = { ...settings.weights, stained: 0.1, foot_traffic: 0.2, complaints: 0.3, worst_severity: 0.6 };
    const levels = Object.fromEntries(CRITERIA.map((criterion) => [criterion, { none: 0, full: 1 }]));
    const own = { ...settings, weights, levels } as PrioritySettings;
    // 0.1 + 0.2 + 0.3 against 0.6: not equal in floating point, equal on paper.
    const sum = block('sum', 1, { stained: 1, foot_traffic: 1, complaints: 1 });
    const one = block('one', 2, { worst_severity: 1 });
    expect(rankBlocks([sum, one], own).map(({ blockId }) => blockId)).toEqual(['one', 'sum']);
    expect(rankBlocks([{ ...sum, stainedM2: 3 }, one], own).map(({ blockId }) => blockId)).toEqual(['sum', 'one']);
  });

  // Law: reference levels do not depend on the data.
  test('adding a block changes no other block’s score', () => {
    fc.assert(
      fc.property(someBlocks, someAmounts, (blocks, amounts) => {
        const before = rankBlocks(blocks, settings);
        const after = rankBlocks([...blocks, { blockId: 'new', stainedM2: 1, amounts }], settings);
        for (const was of before) {
          expect(after.find(({ blockId }) => blockId === was.blockId)).toMatchObject({
            score: was.score,
            scoreParts: was.scoreParts,
          });
        }
        expect(after.filter(({ blockId }) => blockId !== 'new').map(({ blockId }) => blockId)).toEqual(
          before.map(({ blockId }) => blockId),
        );
      }),
      { seed: 20260503 },
    );
  });

  // Laws: order of input and scale of weights have no influence.
  test('neither the order of the blocks nor the scale of the weights matters', () => {
    fc.assert(
      fc.property(someBlocks, (blocks) => {
        const ids = rankBlocks(blocks, settings).map(({ blockId }) => blockId);
        expect(rankBlocks(blocks.toReversed(), settings).map(({ blockId }) => blockId)).toEqual(ids);
        const weights = Object.fromEntries(CRITERIA.map((criterion) => [criterion, 8 * settings.weights[criterion]]));
        const scaled = rankBlocks(blocks, { ...settings, weights: weights as PrioritySettings['weights'] });
        expect(scaled.map(({ blockId }) => blockId)).toEqual(ids);
      }),
      { seed: 20260504 },
    );
  });

  test('no weight at all leaves the stained area to rank; a negative weight is refused', () => {
    const none = Object.fromEntries(CRITERIA.map((criterion) => [criterion, 0])) as Record<Criterion, number>;
    const ranked = rankBlocks([block('a', 1, { stained: 9 }), block('b', 2, {})], { ...settings, weights: none });
    expect(ranked.map(({ blockId, score }) => [blockId, score])).toEqual([
      ['b', 0],
      ['a', 0],
    ]);
    expect(() => rankBlocks([], { ...settings, weights: { ...none, stained: -1 } })).toThrow(/weight of stained/);
    expect(rankBlocks([], settings)).toEqual([]);
  });
});
