import { describe, expect, test } from 'vitest';
import { openGrownSpread } from './open-grown-spread.ts';
import { spreadEstimator } from './spread-estimator.ts';
import { fitSpread, leastSquares, type MeasuredPair } from './spread-fit.ts';

/** Anscombe (1973), Graphs in Statistical Analysis, The American Statistician 27:17–21, first set. */
const ANSCOMBE_X = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
const ANSCOMBE_Y = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68];

/** Pairs with scatter that no random numbers are needed for. */
function pairs(count: number, spread: (trunkCm: number) => number, host = 'Acer rubrum'): MeasuredPair[] {
  return Array.from({ length: count }, (_, i) => {
    const trunkCm = 10 + ((i * 37) % 60);
    return { trunkCm, spreadM: spread(trunkCm) * (1 + 0.1 * Math.sin(7 * i)), host };
  });
}

describe('least squares', () => {
  // Published there: y = 3.00 + 0.500 x; residual sum of squares 13.75 with 9 degrees of freedom.
  test('the published line', () => {
    const fit = leastSquares(ANSCOMBE_X, ANSCOMBE_Y);
    expect(fit?.a).toBeCloseTo(3.0, 2);
    expect(fit?.b).toBeCloseTo(0.5, 3);
    expect((fit?.sd ?? 0) ** 2 * 9).toBeCloseTo(13.76, 1);
    // Leverages add up to the number of parameters (a law of the hat matrix).
    expect(fit?.leverages.reduce((sum, h) => sum + h, 0)).toBeCloseTo(2, 12);
  });

  test('too few points, or all of one diameter, give none', () => {
    expect(leastSquares([1, 2, 3, 4], [1, 2, 3, 4])).toBeNull();
    expect(leastSquares([5, 5, 5, 5, 5], [1, 2, 3, 4, 5])).toBeNull();
    expect(fitSpread([])).toBeNull();
  });
});

describe('a fit of spreads', () => {
  test('an exact line and an exact power are found again, to the coefficient', () => {
    const line = fitSpread([10, 20, 30, 45, 60].map((d) => ({ trunkCm: d, spreadM: 2 + 0.2 * d })));
    expect(line).toMatchObject({ form: 'line', a: expect.closeTo(2, 10), b: expect.closeTo(0.2, 10) });
    expect(line?.looRmseM).toBeLessThan(1e-10);
    const power = fitSpread([10, 20, 30, 45, 60].map((d) => ({ trunkCm: d, spreadM: 1.5 * d ** 0.5 })));
    expect(power).toMatchObject({ form: 'power', a: expect.closeTo(Math.log(1.5), 10), b: expect.closeTo(0.5, 10) });
    expect(power?.predict(25).spreadM).toBeCloseTo(7.5, 9);
  });

  // Brute-force twin: refit without each pair in turn.
  test('leave-one-out errors are those of fits that really leave one out', () => {
    const given = pairs(30, (d) => 3 + 0.15 * d);
    const fit = fitSpread(given);
    expect(fit?.form).toBe('line');
    const errors = given.map(({ trunkCm, spreadM }, i) => {
      const rest = given.filter((_, j) => j !== i);
      const without = leastSquares(
        rest.map((pair) => pair.trunkCm),
        rest.map((pair) => pair.spreadM),
      );
      return spreadM - ((without?.a ?? 0) + (without?.b ?? 0) * trunkCm);
    });
    const rmse = Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length);
    expect(fit?.looRmseM).toBeCloseTo(rmse, 10);
  });

  test('the range given for one tree holds two thirds of new trees', () => {
    const fit = fitSpread(pairs(60, (d) => 1.6 * d ** 0.45));
    const fresh = pairs(400, (d) => 1.6 * d ** 0.45).slice(60);
    const inside = fresh.filter(({ trunkCm, spreadM }) => {
      const { spreadM: expected, sdM } = fit?.predict(trunkCm) ?? { spreadM: 0, sdM: 0 };
      return Math.abs(spreadM - expected) <= sdM;
    });
    // A sine spends 50 % of its time within its own standard deviation, a normal scatter 68 %.
    expect(inside.length / fresh.length).toBeGreaterThan(0.45);
    expect(inside.length / fresh.length).toBeLessThan(0.75);
  });

  test('beyond the pairs a fit is not stretched far', () => {
    const fit = fitSpread(pairs(30, (d) => 3 + 0.15 * d));
    expect(fit?.predict(500).spreadM).toBe(fit?.predict(69 * 1.25).spreadM);
    expect(fit?.predict(0.5).spreadM).toBe(fit?.predict(7.5).spreadM);
  });
});

describe('the open-grown relation', () => {
  // Worked by hand from the coefficients in Hasenauer (1997): ln w = -0.3973 + 0.7328 ln 40, plus half of 0.038.
  test('a worked example', () => {
    expect(openGrownSpread(40, 'Quercus robur', 0)?.spreadM).toBeCloseTo(
      Math.exp(-0.3973 + 0.7328 * Math.log(40) + 0.019),
      9,
    );
  });

  /**
   * Krajicek, Brinkman & Gingrich (1961), Crown competition, a measure of density, Forest Science 7:35–42, open-grown oaks
   * and hickories: crown width (ft) = 3.12 + 1.829 · D (in) [from memory]. Its own sum of crown areas confirms the two
   * figures: π/4 · (3.12, 1.829)² / 435.6 = 0.0175, 0.0205, 0.0060 per tree, inch and square inch, as printed there.
   * Another continent, other oaks: they must agree within what a single tree is off by, about 20 %.
   */
  test('oaks of another continent agree within the scatter of one tree', () => {
    const perAcre = Math.PI / 4 / 435.6;
    expect(Math.abs(3.12 ** 2 * perAcre - 0.0175)).toBeLessThan(1e-4);
    expect(Math.abs(2 * 3.12 * 1.829 * perAcre - 0.0205)).toBeLessThan(1e-4);
    expect(Math.abs(1.829 ** 2 * perAcre - 0.006)).toBeLessThan(1e-4);
    for (const inches of [8, 12, 16, 20, 24]) {
      const theirs = (3.12 + 1.829 * inches) * 0.3048;
      const { spreadM, sdM } = openGrownSpread(inches * 2.54, 'Quercus alba', 0) ?? { spreadM: 0, sdM: 0 };
      expect(Math.abs(spreadM - theirs)).toBeLessThan(sdM);
    }
  });

  test('a genus without a relation has a wider range than any of those it is put together from', () => {
    const { spreadM, sdM } = openGrownSpread(35, 'Bucida buceras', 0.25) ?? { spreadM: 0, sdM: 0 };
    const own = ['Fagus', 'Quercus', 'Fraxinus', 'Acer', 'Betula'].map((genus) => openGrownSpread(35, genus, 0.25));
    for (const each of own) expect(sdM / spreadM).toBeGreaterThan((each?.sdM ?? 0) / (each?.spreadM ?? 1) - 0.03);
    expect(spreadM).toBeGreaterThan(Math.min(...own.map((each) => each?.spreadM ?? 0)));
    expect(spreadM).toBeLessThan(Math.max(...own.map((each) => each?.spreadM ?? 0)));
  });

  test('palms have none; diameters outside of 3 to 120 cm are taken as the nearer limit', () => {
    expect(openGrownSpread(35, 'Washingtonia robusta', 0.25)).toBeNull();
    expect(openGrownSpread(600, 'Acer', 0)?.spreadM).toBe(openGrownSpread(120, 'Acer', 0)?.spreadM);
    expect(openGrownSpread(0.6, 'Acer', 0)?.spreadM).toBe(openGrownSpread(3, 'Acer', 0)?.spreadM);
  });
});

describe('which estimate is taken', () => {
  const rules = { from: 'own', least_pairs: 20, site_sd_pct: 25 } as const;
  const maples = pairs(25, (d) => 3 + 0.2 * d);
  const oaks = pairs(6, (d) => 4 + 0.1 * d, 'Quercus rubra');

  test('the genus when it has enough pairs, else all trees, else the published relation', () => {
    const { estimate } = spreadEstimator([...maples, ...oaks], rules);
    expect(estimate(40, 'Acer saccharum')?.basis).toBe('25 measured Acer trees of this project');
    expect(estimate(40, 'Quercus alba')?.basis).toBe('31 measured trees of this project');
    expect(spreadEstimator(oaks, rules).estimate(40, 'Quercus alba')?.basis).toBe('the open-grown relation of Quercus');
    expect(spreadEstimator([...maples], { ...rules, from: 'published' }).estimate(40, 'Acer')?.basis).toBe(
      'the open-grown relation of Acer',
    );
    expect(spreadEstimator(maples, { ...rules, from: 'none' }).estimate(40, 'Acer')).toBeNull();
  });

  test('palms are neither learned from nor estimated', () => {
    const palms = pairs(40, () => 4, 'Phoenix canariensis');
    expect(spreadEstimator(palms, rules).fits.size).toBe(0);
    expect(spreadEstimator(maples, rules).estimate(40, 'Phoenix canariensis')).toBeNull();
  });
});
