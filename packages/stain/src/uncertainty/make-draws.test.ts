import { readFileSync } from 'node:fs';
import { DEFAULT_SETTINGS, type Settings, type SeverityReading, type TreeSeverity } from '@crownfall/survey';
import { describe, expect, test } from 'vitest';
import { handLedger } from '../hand-ledger.ts';
import { reckonLedgers } from '../ledgers.ts';
import { countCrowns, crownRanges, crownTally, joinedTallies } from './crown-tally.ts';
import { figureSamples, rangesOf } from './figure-samples.ts';
import { type DrawPlan, makeDraws, sharedSpread } from './make-draws.ts';
import { severityPlan } from './severity-plan.ts';
import { stainPlan } from './stain-plan.ts';

/** Sums of a few cells: rounding alone. */
const ROUNDING = 1e-12;
const NO_SPREAD = {
  dose_coefficient_log_sd: 0,
  dose_coefficient_freedom: 0,
  rater_bias_sd_pct: 0,
  rater_error_sd_pct: 0,
  ring_share_spread: 0,
  outline_sd_m: 0,
};

function rated(treeId: string, share: number, change: Partial<TreeSeverity> = {}): TreeSeverity {
  const weighted = { weightedSeverity: share, weightedLo: share, weightedHi: share };
  const base = { share, lo: share, hi: share, from: 'rating', cause: 'frass', gateShare: 1 } as const;
  return { treeId, ...base, ...weighted, raters: ['A'], ratedOn: '2026-05-01', group: 'olive', ...change };
}

const shut = { gateShare: 0, cause: 'none', weightedSeverity: 0, weightedLo: 0, weightedHi: 0 } as const;
const borrowed = { from: 'group', raters: [], ratedOn: null, gateShare: 0.5, weightedLo: 0, weightedHi: 0.5 } as const;

function readingOf(trees: readonly TreeSeverity[]): Pick<SeverityReading, 'trees' | 'groups'> {
  const members = trees.filter(({ from }) => from === 'rating').map((one) => ({ ...one, open: one.gateShare === 1 }));
  return { trees, groups: [{ group: 'olive', host: 'Olive', trees: trees.length, rated: members.length, members }] };
}

const ledger = handLedger([
  { piece: 0, block: 0, areaM2: 40 },
  { piece: 0, block: 0, areaM2: 10, under: [[0, 0]] },
  { piece: 0, block: 0, areaM2: 4, under: [[0, 1]] },
  {
    piece: 0,
    block: 1,
    areaM2: 5,
    under: [
      [0, 0],
      [1, 2],
    ],
  },
  {
    piece: 1,
    block: 1,
    areaM2: 7,
    under: [
      [1, 0],
      [2, 0],
    ],
  },
  { piece: 1, areaM2: 3, under: [[2, 1]] },
]);

function planOf(
  trees: readonly TreeSeverity[],
  uncertainty: Partial<Settings['uncertainty']> = {},
  seed = 1,
): DrawPlan {
  const settings = { ...DEFAULT_SETTINGS, uncertainty: { ...NO_SPREAD, ...uncertainty } };
  const crowns = trees.map((_, tree) => ({ tree, spreadM: 6, outlineSdM: settings.uncertainty.outline_sd_m }));
  const rings = { layerShare: Float64Array.of(1, 0.5, 0.25), ringToM: Float64Array.of(0.5, 1) };
  const mayStain = (zone: number) => trees[zone].weightedHi > 0;
  const stain = stainPlan(ledger, crowns, rings, { mayStain, keys: { blockCount: 2 } });
  return { seed, severity: severityPlan(readingOf(trees), settings), stain, ...sharedSpread(settings) };
}

/** Stained area in total and by crown of the plan, for each draw. */
function made(plan: DrawPlan, from: number, to: number) {
  const draws: { total: number; crowns: number[]; share: number[]; open: number[] }[] = [];
  makeDraws(plan, from, to, ({ runM2, crownM2, severities }) => {
    const total = runM2.reduce((sum, areaM2) => sum + areaM2, 0);
    draws.push({ total, crowns: [...crownM2], share: [...severities.share], open: [...severities.open] });
  });
  return draws;
}

describe('draws', () => {
  const trees = [rated('T1', 0.6), rated('T2', 0.3), rated('T3', 0.9, shut)];

  test('without any spread each draw is the reckoning itself, in total and by crown', () => {
    const field = { ledger, layerShare: [1, 0.5, 0.25], dose: Float64Array.of(0.6, 0.3, 0) };
    const ledgers = reckonLedgers(field, { pieceKind: Uint8Array.of(0, 0), blockCount: 2 });
    for (const { total, crowns } of made(planOf(trees), 0, 3)) {
      expect(Math.abs(total - ledgers.total.stainedM2[0])).toBeLessThan(ROUNDING * total);
      crowns.forEach((areaM2, zone) => {
        expect(Math.abs(areaM2 - ledgers.crowns.stainedM2[zone])).toBeLessThan(ROUNDING * total);
      });
    }
  });

  test('attributions of every draw sum to its total, and a shut gate bears nothing', () => {
    const plan = planOf([...trees.slice(0, 2), rated('T3', 0.9, shut)], DEFAULT_SETTINGS.uncertainty);
    expect([...plan.stain.zones]).toEqual([0, 1]);
    for (const { total, crowns } of made(plan, 0, 200)) {
      expect(Math.abs(crowns[0] + crowns[1] - total)).toBeLessThan(ROUNDING * 66);
    }
  });

  test('any split gives the same digits, another seed others', () => {
    const plan = planOf(trees, DEFAULT_SETTINGS.uncertainty);
    const whole = made(plan, 0, 60);
    expect([...made(plan, 0, 7), ...made(plan, 7, 41), ...made(plan, 41, 60)]).toEqual(whole);
    expect(made(planOf(trees, DEFAULT_SETTINGS.uncertainty, 2), 0, 60)).not.toEqual(whole);
  });

  test('ln k is normal with the stated deviation: one crown alone, small dose, area in proportion to k', () => {
    const light = [rated('T1', 1e-6), rated('T2', 0.3, shut), rated('T3', 0.3, shut)];
    const logs = made(planOf(light, { dose_coefficient_log_sd: 0.5 }), 0, 4000).map(({ total }) => Math.log(total));
    const mean = logs.reduce((sum, x) => sum + x, 0) / logs.length;
    const sd = Math.sqrt(logs.reduce((sum, x) => sum + (x - mean) ** 2, 0) / logs.length);
    // Three standard errors of a mean and of a deviation over 4,000 draws.
    expect(Math.abs(mean - Math.log(17e-6))).toBeLessThan((3 * 0.5) / Math.sqrt(4000));
    expect(Math.abs(sd - 0.5)).toBeLessThan((3 * 0.5) / Math.sqrt(8000));
  });

  test('a class is drawn evenly from its interval', () => {
    const wide = [rated('T1', 0.5, { lo: 0.25, hi: 0.75 }), ...trees.slice(1)];
    const shares = made(planOf(wide), 0, 4000).map(({ share }) => share[0]);
    expect(Math.min(...shares)).toBeGreaterThanOrEqual(0.25);
    expect(Math.max(...shares)).toBeLessThanOrEqual(0.75);
    const below = shares.filter((share) => share < 0.375).length / shares.length;
    expect(Math.abs(below - 0.25)).toBeLessThan(3 * Math.sqrt((0.25 * 0.75) / 4000));
  });

  test('a rater’s bias is shared by his trees, his errors are not', () => {
    const two = [rated('T1', 0.5), rated('T2', 0.5), trees[2]];
    const alike = made(planOf(two, { rater_bias_sd_pct: 10 }), 0, 50);
    for (const { share } of alike) expect(share[0]).toBe(share[1]);
    const apart = made(planOf(two, { rater_error_sd_pct: 10 }), 0, 50);
    expect(apart.some(({ share }) => share[0] !== share[1])).toBe(true);
  });

  test('an unrated tree takes figures and gate of a rated one, in every draw', () => {
    const plan = planOf([rated('T1', 0.6), rated('T2', 0.3, shut), { ...rated('T3', 0.45), ...borrowed }]);
    const draws = made(plan, 0, 400);
    for (const { share, open } of draws)
      expect([
        [0.6, 1],
        [0, 0],
      ]).toContainEqual([share[2], open[2]]);
    const openShare = draws.filter(({ open }) => open[2] === 1).length / draws.length;
    // Half of the two donors; the resampling of donors widens the error of the share, 0.5 in each draw being independent.
    expect(Math.abs(openShare - 0.5)).toBeLessThan(3 * Math.sqrt(0.25 / 400));
  });

  test('where one tree of the host was rated, an unrated one is even over all that is possible', () => {
    const lone = { ...rated('T2', 0.6), ...borrowed, gateShare: 1, weightedHi: 1 };
    const shares = made(
      planOf([rated('T1', 0.6), lone, rated('T3', 0.2, { ...shut, from: 'group', raters: [] })]),
      0,
      2000,
    );
    const drawn = shares.map(({ share }) => share[1]);
    expect(Math.min(...drawn)).toBeLessThan(0.02);
    expect(Math.max(...drawn)).toBeGreaterThan(0.98);
  });

  test('a town without trees, or without stain, draws zeros', () => {
    expect(
      made(planOf([rated('T1', 0.5, shut), rated('T2', 0.5, shut), rated('T3', 0.5, shut)]), 0, 3).map(
        ({ total }) => total,
      ),
    ).toEqual([0, 0, 0]);
  });
});

describe('ranges', () => {
  test('of kept draws are their quantiles (closed form: 1 … 101)', () => {
    const samples = figureSamples(1, 101);
    samples.value.set(Array.from({ length: 101 }, (_, i) => 101 - i));
    expect(rangesOf(samples, 0)).toEqual({ range80: [11, 91], range95: [3.5, 98.5] });
  });

  test('of tallied crowns are off by at most a bin, and the same however the draws are shared out', () => {
    const fallout = Float64Array.of(50);
    const value = (draw: number) => 50 * (0.5 + 0.4 * Math.sin(draw));
    const tallied = (from: number, to: number) => {
      const tally = crownTally(1);
      for (let draw = from; draw < to; draw++) countCrowns(tally, Float64Array.of(value(draw)), fallout);
      return tally;
    };
    const samples = figureSamples(1, 1000);
    samples.value.set(Array.from({ length: 1000 }, (_, draw) => value(draw)));
    const whole = crownRanges(tallied(0, 1000), 0, 50);
    const exact = rangesOf(samples, 0);
    for (const which of ['range80', 'range95'] as const) {
      whole[which]?.forEach((limit, i) => {
        expect(Math.abs(limit - (exact[which]?.[i] ?? Number.NaN))).toBeLessThan(50 / 256);
      });
    }
    expect(crownRanges(joinedTallies([tallied(0, 300), tallied(300, 1000)]), 0, 50)).toEqual(whole);
  });

  test('of a crown that stains in one draw of ten has 0 for its lower limits', () => {
    const tally = crownTally(1);
    for (let draw = 0; draw < 100; draw++)
      countCrowns(tally, Float64Array.of(draw % 10 === 0 ? 5 : 0), Float64Array.of(20));
    expect(crownRanges(tally, 0, 20).range80?.[0]).toBe(0);
    expect(crownRanges(tally, 0, 20).range95).toEqual([0, 5]);
  });
});

test('the worked example of docs/methods/uncertainty.md: one crown, only k unknown (closed form)', () => {
  const page = readFileSync(new URL('../../../../docs/methods/uncertainty.md', import.meta.url), 'utf8');
  const quantile = (z: number) => 10 * -Math.expm1(-0.4 * Math.exp(0.5 * z));
  // Normal quantile of 0.9: 1.281552 (any table).
  const [lo, hi] = [quantile(-1.281552), quantile(1.281552)];
  expect(page).toContain(
    `S from ${lo.toFixed(2)} to ${hi.toFixed(2)} m² (80 %). The figure itself is ${quantile(0).toFixed(2)} m²`,
  );
  const one = handLedger([{ areaM2: 10, under: [[0, 0]] }]);
  const trees = [rated('T1', 0.4)];
  const settings = { ...DEFAULT_SETTINGS, uncertainty: { ...NO_SPREAD, dose_coefficient_log_sd: 0.5 } };
  const rings = { layerShare: Float64Array.of(1), ringToM: new Float64Array(0) };
  const crowns = [{ tree: 0, spreadM: 4, outlineSdM: 0 }];
  const stain = stainPlan(one, crowns, rings, { mayStain: () => true, keys: { blockCount: 0 } });
  const plan = { seed: 1, severity: severityPlan(readingOf(trees), settings), stain, ...sharedSpread(settings) };
  const samples = figureSamples(1, 20_000);
  makeDraws(plan, 0, 20_000, ({ draw, runM2 }) => {
    samples.value[draw] = runM2[0];
  });
  const range = rangesOf(samples, 0).range80;
  // Four standard errors of a tenth quantile over 20,000 draws: 4·√(0.09/20000)/density, near 0.03 and 0.06 m² here.
  expect(Math.abs((range?.[0] ?? 0) - lo)).toBeLessThan(0.03);
  expect(Math.abs((range?.[1] ?? 0) - hi)).toBeLessThan(0.08);
});
