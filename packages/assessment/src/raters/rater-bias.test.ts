import { RandomStream } from '@crownfall/statistics';
import { HORSFALL_BARRATT_0_11, type RatedVisit, severityOfClass, strayAt } from '@crownfall/survey';
import { describe, expect, test } from 'vitest';
import { biasesAgainstKnown, biasesAgainstMean, keptReadings } from './rater-bias.ts';
import { raterPairs } from './rater-pair.ts';

function visit(treeId: string, shares: Readonly<Record<string, number>>, scale = 'percent'): RatedVisit {
  const readings = Object.entries(shares).map(([rater, share]) => ({
    rater,
    ratedOn: '2026-05-01',
    figure: { share, lo: share, hi: share },
    scale,
  }));
  return { treeId, host: null, readings };
}

const readingOf = (biases: ReturnType<typeof biasesAgainstMean>, rater: string) => {
  const reading = biases.find((one) => one.rater === rater)?.reading;
  if (!reading?.defined) throw new Error(`no bias of ${rater}`);
  return reading.value;
};

describe('against known answers', () => {
  test('mean, standard error and scatter (by hand: 6 and 10 points at 50 %)', () => {
    const readings = [0.56, 0.6].map((rated, i) => ({ item: `P${i}`, rater: 'A', known: 0.5, rated }));
    const { bias_pct, bias_se_pct, error_sd_pct } = readingOf(biasesAgainstKnown(readings), 'A');
    expect(bias_pct).toBeCloseTo(8, 10);
    expect(bias_se_pct).toBeCloseTo(2, 10);
    expect(error_sd_pct).toBeCloseTo(Math.sqrt(8), 10);
  });

  test('answers of 0 and 100 % tell nothing of a bias; one answer is too few', () => {
    const readings = [
      { item: 'P1', rater: 'A', known: 0, rated: 0.1 },
      { item: 'P2', rater: 'A', known: 1, rated: 0.9 },
      { item: 'P3', rater: 'B', known: 0.4, rated: 0.5 },
    ];
    expect(biasesAgainstKnown(readings).map(({ reading }) => !reading.defined && reading.reason)).toEqual([
      'no-observations',
      'too-few-observations',
    ]);
  });
});

describe('against the mean of the raters', () => {
  test('two raters eight points apart at half severity are four off each', () => {
    const visits = [0.5, 0.51, 0.49].map((share, i) => visit(`T${i}`, { A: share - 0.04, B: share + 0.04 }));
    const biases = biasesAgainstMean(visits);
    // The scale at 49 and 51 % is 0.9998.
    expect(readingOf(biases, 'A').bias_pct).toBeCloseTo(-4, 2);
    expect(readingOf(biases, 'B').bias_pct).toBeCloseTo(4, 2);
    expect(readingOf(biases, 'B').error_sd_pct).toBeLessThan(0.01);
  });

  test('finds the biases and the scatter that readings were made with', () => {
    const random = new RandomStream(5);
    const made = { A: -3, B: 0, C: 3 } as const;
    const visits = Array.from({ length: 3000 }, (_, i) => {
      const truth = random.between(0.15, 0.85);
      const pair = (['A', 'B', 'C'] as const).filter((_one, k) => k !== i % 3);
      const read = (rater: 'A' | 'B' | 'C') => truth + strayAt(truth) * (made[rater] / 100 + 0.05 * random.normal());
      return visit(`T${i}`, Object.fromEntries(pair.map((rater) => [rater, read(rater)])));
    });
    const biases = biasesAgainstMean(visits);
    for (const rater of ['A', 'B', 'C'] as const) {
      const { bias_pct, bias_se_pct, error_sd_pct } = readingOf(biases, rater);
      expect(Math.abs(bias_pct - made[rater])).toBeLessThan(4 * bias_se_pct);
      expect(bias_se_pct).toBeLessThan(0.2);
      // 3,000 degrees of freedom: 5 ± 4 · 5/√6000, and the scale is read off the noisy mean.
      expect(Math.abs(error_sd_pct - 5)).toBeLessThan(0.35);
    }
  });

  test('raters without a common tree, one rater, nothing left to measure: named, never NaN', () => {
    expect(biasesAgainstMean([visit('T1', { A: 0.4 })]).map(({ reading }) => reading)).toEqual([
      { defined: false, reason: 'no-links' },
    ]);
    const apart = [visit('T1', { A: 0.4, B: 0.5 }), visit('T2', { A: 0.5, B: 0.5 }), visit('T3', { C: 0.5 })];
    expect(biasesAgainstMean(apart).map(({ reading }) => (reading.defined ? 'known' : reading.reason))).toEqual([
      'known',
      'known',
      'no-links',
    ]);
    const [only] = biasesAgainstMean([visit('T1', { A: 0.4, B: 0.5 })]);
    expect(only.reading).toEqual({ defined: false, reason: 'no-residual-freedom' });
    expect(biasesAgainstMean([])).toEqual([]);
  });

  test('what all raters share stays in the errors that are kept', () => {
    const reading = { defined: true, value: { bias_pct: 1, bias_se_pct: 3, error_sd_pct: 5 } } as const;
    const biases = ['A', 'B', 'C', 'D'].map((rater) => ({ rater, readings: 9, reading }));
    // 8/√4 = 4; √(3² + 4²) = 5.
    expect(keptReadings(biases, 8).A.bias_se_pct).toBeCloseTo(5, 12);
    expect(keptReadings(biases, 0).A.bias_se_pct).toBe(3);
  });
});

describe('pairs of raters', () => {
  const scales = new Map([[HORSFALL_BARRATT_0_11.name, HORSFALL_BARRATT_0_11]]);
  const classed = (treeId: string, classes: Readonly<Record<string, number>>): RatedVisit => ({
    treeId,
    host: null,
    readings: Object.entries(classes).map(([rater, code]) => {
      const figure = severityOfClass(HORSFALL_BARRATT_0_11, String(code));
      if (figure === undefined) throw new Error(`no class ${code}`);
      return { rater, ratedOn: '2026-05-01', figure, scale: figure.scale };
    }),
  });

  test('on a class scale, kappa is reckoned from the classes, on percentages it is not', () => {
    const pairs = raterPairs(
      [
        classed('T1', { A: 3, B: 3 }),
        classed('T2', { A: 5, B: 6 }),
        classed('T3', { A: 7, B: 7 }),
        visit('T4', { A: 0.1, B: 0.2 }),
      ],
      scales,
    );
    expect(pairs.map(({ scale, trees }) => [scale, trees])).toEqual([
      ['horsfall-barratt-0-11', 3],
      ['percent', 1],
    ]);
    const kappa = pairs[0].kappa?.quadratic;
    // Quadratic kappa is 2·cov/(var + var + squared shift of the means), moments divided by n (Fleiss and Cohen 1973, from memory).
    const [a, b] = [
      [3, 5, 7],
      [3, 6, 7],
    ];
    const mean = (x: number[]) => x.reduce((s, v) => s + v, 0) / x.length;
    const cov = (x: number[], y: number[]) => x.reduce((s, v, i) => s + (v - mean(x)) * (y[i] - mean(y)), 0) / x.length;
    const identity = (2 * cov(a, b)) / (cov(a, a) + cov(b, b) + (mean(a) - mean(b)) ** 2);
    expect(kappa?.defined && kappa.value.kappa).toBeCloseTo(identity, 12);
    expect(pairs[1].kappa).toBe(null);
    expect(pairs[1].difference.defined).toBe(false);
  });

  test('all equal ratings: no difference, and agreement named as not told', () => {
    const [pair] = raterPairs([visit('T1', { A: 0.3, B: 0.3 }), visit('T2', { A: 0.3, B: 0.3 })], scales);
    expect(pair.difference.defined && pair.difference.value.bias).toBe(0);
    expect(pair.concordance).toEqual({ defined: false, reason: 'no-variation' });
  });

  test('raters in any order of the visits give the same pairs', () => {
    const visits = [visit('T1', { A: 0.1, B: 0.3 }), visit('T2', { A: 0.5, B: 0.4 }), visit('T3', { A: 0.6, B: 0.7 })];
    const forth = raterPairs(visits, scales)[0];
    const back = raterPairs([...visits].reverse(), scales)[0];
    expect(back.difference.defined && back.difference.value.bias).toBeCloseTo(
      forth.difference.defined ? forth.difference.value.bias : Number.NaN,
      12,
    );
  });
});
