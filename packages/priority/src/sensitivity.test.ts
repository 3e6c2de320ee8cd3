import { CRITERIA, type Criterion, DEFAULT_SETTINGS, type PrioritySettings } from '@crownfall/survey';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalisedWeights, type RankedBlock, rankBlocks } from './rank.ts';
import { dominates, leastShift, undominated, weightShiftToChangeTop } from './sensitivity.ts';

const unit = Object.fromEntries(CRITERIA.map((criterion) => [criterion, { none: 0, full: 1 }]));
const settingsWith = (weights: Partial<Record<Criterion, number>>): PrioritySettings => ({
  ...DEFAULT_SETTINGS.priority,
  levels: unit as PrioritySettings['levels'],
  weights: { ...(Object.fromEntries(CRITERIA.map((c) => [c, 0])) as Record<Criterion, number>), ...weights },
});
const evidence = (values: readonly (readonly number[])[]) =>
  values.map((row, i) => ({
    blockId: `b${i}`,
    stainedM2: 0,
    amounts: Object.fromEntries(CRITERIA.map((criterion, j) => [criterion, row[j] ?? 0])) as Record<Criterion, number>,
  }));
/** The weights with one moved to `to`, the others in proportion. */
const moved = (weights: Readonly<Record<Criterion, number>>, criterion: Criterion, to: number) => {
  const now = normalisedWeights(weights);
  const others = 1 - now[criterion];
  return Object.fromEntries(CRITERIA.map((c) => [c, c === criterion ? to : now[c] * ((1 - to) / others)])) as Record<
    Criterion,
    number
  >;
};
const share = fc.integer({ min: 0, max: 20 }).map((n) => n / 20);
const matrix = fc.array(fc.array(share, { minLength: CRITERIA.length, maxLength: CRITERIA.length }), {
  minLength: 2,
  maxLength: 8,
});
const someWeights = fc
  .tuple(...CRITERIA.map(() => fc.integer({ min: 1, max: 9 })))
  .map((list) => Object.fromEntries(CRITERIA.map((c, i) => [c, list[i]])) as Record<Criterion, number>);
const scoreOf = (ranked: readonly RankedBlock[], blockId: string) =>
  ranked.find((block) => block.blockId === blockId)?.score ?? Number.NaN;

describe('how far a weight must move before the first place changes', () => {
  // Closed form: values (1, 0) and (0, 0.8), the leads cross where x = 0.8·(1 − x), at x = 0.8/1.8.
  test('two blocks, two criteria', () => {
    const ranked = rankBlocks(
      evidence([
        [1, 0],
        [0, 0.8],
      ]),
      settingsWith({ stained: 0.5, foot_traffic: 0.5 }),
    );
    const [stained, traffic, complaints] = weightShiftToChangeTop(ranked);
    expect(stained.down).toEqual({
      weight: expect.closeTo(0.8 / 1.8, 12),
      shift: expect.closeTo(0.8 / 1.8 - 0.5, 12),
      rival: 'b1',
    });
    expect(stained.up).toBeNull();
    expect(traffic.up?.weight).toBeCloseTo(1 / 1.8, 12);
    expect(complaints).toEqual({ criterion: 'complaints', weight: 0, down: null, up: null });
    expect(leastShift(weightShiftToChangeTop(ranked))?.shift).toBeCloseTo(-0.0556, 4);
  });

  // Law: ranked again with the weight at the crossing the two tie; a little short of it the first still leads.
  test('ranking again confirms every crossing', () => {
    let confirmed = 0;
    fc.assert(
      fc.property(matrix, someWeights, (values, weights) => {
        const ranked = rankBlocks(evidence(values), settingsWith(weights));
        const first = ranked[0].blockId;
        for (const { criterion, weight, down, up } of weightShiftToChangeTop(ranked)) {
          for (const crossing of [down, up]) {
            if (!crossing) continue;
            const at = rankBlocks(evidence(values), settingsWith(moved(weights, criterion, crossing.weight)));
            expect(scoreOf(at, crossing.rival)).toBeCloseTo(scoreOf(at, first), 10);
            const beyondTo = crossing.weight + 1e-6 * Math.sign(crossing === up ? 1 : -1);
            if (beyondTo > 0 && beyondTo < 1) {
              const beyond = rankBlocks(evidence(values), settingsWith(moved(weights, criterion, beyondTo)));
              expect(scoreOf(beyond, crossing.rival)).toBeGreaterThan(scoreOf(beyond, first));
            }
            const short = weight + 0.999 * crossing.shift;
            const before = rankBlocks(evidence(values), settingsWith(moved(weights, criterion, short)));
            expect(scoreOf(before, first)).toBeGreaterThan(Math.max(...before.map((block) => block.score)) - 1e-9);
            confirmed++;
          }
        }
      }),
      { seed: 20260505, numRuns: 200 },
    );
    expect(confirmed).toBeGreaterThan(100);
  });

  test('where no crossing is named, no weight on that side changes the first place', () => {
    fc.assert(
      fc.property(matrix, someWeights, share, (values, weights, at) => {
        const ranked = rankBlocks(evidence(values), settingsWith(weights));
        for (const { criterion, weight, down, up } of weightShiftToChangeTop(ranked)) {
          if ((at < weight && down) || (at > weight && up)) continue;
          const anew = rankBlocks(evidence(values), settingsWith(moved(weights, criterion, at)));
          expect(scoreOf(anew, ranked[0].blockId)).toBeGreaterThan(anew[0].score - 1e-9);
        }
      }),
      { seed: 20260506, numRuns: 200 },
    );
  });

  test('one block or none: nothing to change', () => {
    expect(weightShiftToChangeTop([])).toEqual([]);
    const alone = weightShiftToChangeTop(rankBlocks(evidence([[1]]), settingsWith({ stained: 1 })));
    expect(alone.every(({ down, up }) => down === null && up === null)).toBe(true);
    expect(leastShift(alone)).toBeNull();
  });
});

describe('dominance', () => {
  // Law, by brute force: a block is undominated when no other is at least as good everywhere and better somewhere.
  test('the undominated blocks are those that brute force finds, and the first place is among them', () => {
    fc.assert(
      fc.property(matrix, someWeights, (values, weights) => {
        const ranked = rankBlocks(evidence(values), settingsWith(weights));
        const brute = values
          .map((row, i) => ({ row, id: `b${i}` }))
          .filter(({ row }) => !values.some((o) => o.every((v, j) => v >= row[j]) && o.some((v, j) => v > row[j])));
        const front = undominated(ranked);
        expect([...front].sort()).toEqual(brute.map(({ id }) => id).sort());
        expect(front).toContain(ranked[0].blockId);
      }),
      { seed: 20260507, numRuns: 200 },
    );
  });

  test('a difference in the last digit still decides', () => {
    const ranked = rankBlocks(
      evidence([
        [0.5, 0.5, 0.5],
        [0.5, 0.5, 0.5 + 2 ** -53],
      ]),
      settingsWith({ stained: 1 }),
    );
    expect(ranked[0].blockId).toBe('b0');
    expect(undominated(ranked)).toEqual(['b1']);
  });

  test('equals do not dominate each other', () => {
    const [a, b] = rankBlocks(
      evidence([
        [1, 0.5],
        [1, 0.5],
      ]),
      settingsWith({ stained: 1 }),
    );
    expect(dominates(a, b) || dominates(b, a)).toBe(false);
  });
});

describe('how far a weight must move before the first places change', () => {
  // Oracle: the weight moved in small steps and everything ranked again.
  test('no step short of the crossing changes the set, one beyond it does', () => {
    let checked = 0;
    fc.assert(
      fc.property(matrix, someWeights, fc.integer({ min: 1, max: 3 }), (values, weights, places) => {
        const ranked = rankBlocks(evidence(values), settingsWith(weights));
        const setAt = (criterion: Criterion, to: number) => {
          const again = rankBlocks(evidence(values), settingsWith(moved(weights, criterion, to)));
          return {
            ids: again
              .slice(0, places)
              .map(({ blockId }) => blockId)
              .sort(),
            edge: lead(again, places),
          };
        };
        const now = ranked
          .slice(0, places)
          .map(({ blockId }) => blockId)
          .sort();
        for (const { criterion, weight, up } of weightShiftToChangeTop(ranked, places)) {
          const end = up?.weight ?? 1;
          for (const part of [0.3, 0.7, 0.98]) {
            const { ids, edge } = setAt(criterion, weight + part * (end - weight));
            if (edge > 1e-9) expect(ids).toEqual(now);
          }
          if (!up || up.weight > 0.98) continue;
          const beyond = setAt(criterion, up.weight + 0.01);
          if (beyond.edge < 1e-6) continue;
          checked++;
          expect(beyond.ids).not.toEqual(now);
        }
      }),
      { seed: 20260523, numRuns: 150 },
    );
    expect(checked).toBeGreaterThan(50);
  });
});

/** By how much the last of the first places leads the next block. */
function lead(ranked: readonly RankedBlock[], places: number): number {
  return ranked.length > places ? ranked[places - 1].score - ranked[places].score : Number.POSITIVE_INFINITY;
}
