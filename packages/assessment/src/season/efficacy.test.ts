import { describe, expect, test } from 'vitest';
import { type EfficacyMethod, efficacyOf, type FollowedTree } from './efficacy.ts';

function trees(group: FollowedTree['group'], pairs: readonly (readonly [number, number])[], block = 0): FollowedTree[] {
  return pairs.map(([before, after], i) => ({ treeId: `${group}${block}-${i}`, group, block, before, after }));
}

const rowOf = (all: readonly FollowedTree[], method: EfficacyMethod) => {
  const row = efficacyOf(all, 1).rows.find((one) => one.method === method);
  if (row === undefined) throw new Error(`no ${method}`);
  return 'because' in row ? row.because : row.result;
};
const estimate = (all: readonly FollowedTree[], method: EfficacyMethod): number => {
  const result = rowOf(all, method);
  if (typeof result === 'string') throw new Error(result);
  return result.estimate;
};

describe('efficacies', () => {
  // Treated 30 → 3, untreated 50 → 100 (per mille of the crown): Henderson and Tilton's own kind of example, 95 %.
  const grew = [
    ...trees('treated', [
      [0.02, 0.002],
      [0.04, 0.004],
      [0.03, 0.003],
    ]),
    ...trees('untreated', [
      [0.04, 0.08],
      [0.06, 0.12],
      [0.05, 0.1],
    ]),
  ];

  test('Henderson–Tilton and Sun–Shepard: 1 − (3/30)(50/100) = 0.95', () => {
    expect(estimate(grew, 'henderson-tilton')).toBeCloseTo(0.95, 12);
    expect(estimate(grew, 'sun-shepard')).toBeCloseTo(0.95, 12);
  });

  test('where every tree of a group changes by the same factor, the interval has no width', () => {
    const result = rowOf(grew, 'henderson-tilton');
    if (typeof result === 'string') throw new Error(result);
    expect(result.interval.upper - result.interval.lower).toBeLessThan(1e-12);
  });

  test('Schneider-Orelli is refused when the untreated grew, Abbott when the groups were unlike before', () => {
    expect(rowOf(grew, 'schneider-orelli')).toBe('untreated-grew');
    const unlike = [
      ...trees('treated', [
        [0.8, 0.4],
        [0.82, 0.4],
        [0.81, 0.4],
      ]),
      ...trees('untreated', [
        [0.1, 0.09],
        [0.12, 0.1],
        [0.11, 0.1],
      ]),
    ];
    expect(rowOf(unlike, 'abbott')).toBe('unlike-before');
  });

  test('alike before and declining in both: Abbott and Schneider-Orelli (by hand)', () => {
    const declined = [
      ...trees('treated', [
        [0.4, 0.1],
        [0.6, 0.1],
        [0.5, 0.1],
      ]),
      ...trees('untreated', [
        [0.5, 0.4],
        [0.6, 0.45],
        [0.4, 0.35],
      ]),
    ];
    expect(estimate(declined, 'abbott')).toBeCloseTo((0.4 - 0.1) / 0.4, 12);
    expect(estimate(declined, 'schneider-orelli')).toBeCloseTo((0.8 - 0.2) / (1 - 0.2), 12);
  });

  test('zero counts and missing groups are named', () => {
    const none = trees('treated', [
      [0.3, 0.1],
      [0.4, 0.2],
    ]);
    expect(efficacyOf(none, 1).rows.every((row) => 'because' in row && row.because === 'no-untreated')).toBe(true);
    expect(efficacyOf([], 1).rows.every((row) => 'because' in row && row.because === 'no-treated')).toBe(true);
    const clean = [
      ...none,
      ...trees('untreated', [
        [0.3, 0],
        [0.4, 0],
      ]),
    ];
    expect(rowOf(clean, 'henderson-tilton')).toBe('zero-control-after');
    const never = [
      ...trees('treated', [
        [0, 0],
        [0, 0],
      ]),
      ...trees('untreated', [
        [0.3, 0.3],
        [0.4, 0.4],
      ]),
    ];
    expect(rowOf(never, 'henderson-tilton')).toBe('zero-treated-before');
  });

  test('whole blocks that were treated are drawn anew as blocks', () => {
    const blocks = [0, 1, 2, 3].flatMap((block) =>
      trees(
        block < 2 ? 'treated' : 'untreated',
        [
          [0.4, block < 2 ? 0.1 : 0.4],
          [0.5, block < 2 ? 0.2 : 0.5],
        ],
        block,
      ),
    );
    expect(efficacyOf(blocks, 1).resampled).toBe('blocks');
    expect(efficacyOf(grew, 1).resampled).toBe('trees');
  });

  test('equal seeds give equal intervals', () => {
    const mixed = [
      ...trees('treated', [
        [0.4, 0.1],
        [0.6, 0.3],
        [0.5, 0.2],
      ]),
      ...trees('untreated', [
        [0.5, 0.6],
        [0.6, 0.5],
        [0.4, 0.45],
      ]),
    ];
    expect(efficacyOf(mixed, 3)).toEqual(efficacyOf(mixed, 3));
    expect(efficacyOf(mixed, 3)).not.toEqual(efficacyOf(mixed, 4));
  });
});
