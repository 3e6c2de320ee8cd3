/** The commands by which a figure is defended, from outside, on copies of the sample town and on towns with too little in them. */
import { cpSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { crownfallHere } from './crownfall-here.ts';
import { crownfall, SAMPLE, temporaryFolder } from './crownfall-process.ts';
import { writeTinyTown } from './tiny-town.ts';

function sampleCopy(): string {
  const town = join(temporaryFolder(), 'town');
  cpSync(SAMPLE, town, { recursive: true, filter: (path) => !/generator|aerial/.test(path) });
  return town;
}

/** No result may carry a number that is none. */
function expectClean(text: string): void {
  expect(text).not.toMatch(/\bNaN\b|\bInfinity\b|\bundefined\b(?!_)/);
}

function expectCleanFolder(folder: string): void {
  for (const name of readdirSync(folder)) expectClean(readFileSync(join(folder, name), 'utf8'));
}

describe('on the sample town', () => {
  const town = sampleCopy();

  test('calibrate keeps k, reckon then says calibrated, and the range narrows', async () => {
    const reckoned = async (): Promise<{ calibrated: boolean; total: Record<string, number> }> =>
      JSON.parse(
        (await crownfallHere(['reckon', town, '--out', join(temporaryFolder(), 'out'), '--json', '--quiet'])).stdout,
      );
    const before = await reckoned();
    const fitted = await crownfallHere(['calibrate', town, '--json', '--quiet', '--chart', join(town, 'k.svg')]);
    expect(fitted.code).toBe(0);
    expectClean(fitted.stdout);
    expectClean(readFileSync(join(town, 'k.svg'), 'utf8'));
    const after = await reckoned();
    expect([before.calibrated, after.calibrated]).toEqual([false, true]);
    const width = ({ total }: typeof before): number =>
      (total.stained_hi80_m2 - total.stained_lo80_m2) / total.stained_m2;
    expect(width(after)).toBeLessThan(width(before) / 2);
    writeFileSync(
      join(town, 'ratings.csv'),
      `${readFileSync(join(town, 'ratings.csv'), 'utf8')}T0001,2026-05-15,R1,3,,none,none,,low,,,\n`,
    );
    expect((await crownfallHere(['check', town, '--quiet'])).stdout).toContain('calibration-stale');
  });

  test('the digits do not depend on the workers', () => {
    const run = (workers: string): string => {
      const out = join(temporaryFolder(), 'out');
      crownfall(['reckon', town, '--out', out, '--quiet', '--draws', '300', '--seed', '9', '--workers', workers]);
      return ['blocks.geojson', 'trees.geojson', 'ledger.csv']
        .map((name) => readFileSync(join(out, name), 'utf8'))
        .join('');
    };
    expect(run('3')).toBe(run('1'));
  });

  test('raters: who reads high, in words; stored biases are used', async () => {
    const out = join(temporaryFolder(), 'raters');
    const ending = await crownfallHere(['raters', town, '--quiet', '--store', '--out', out]);
    expect(ending.code).toBe(0);
    expect(ending.stdout).toMatch(/R3 rates [\d.]+ points higher than R1/);
    expect(ending.stdout).toContain('R3 reads high');
    expectClean(ending.stdout);
    expectCleanFolder(out);
    expect(existsSync(join(town, 'raters.json'))).toBe(true);
    // The truth behind the town has R3 eight points high, the mean of the three two points high.
    const { biases } = JSON.parse((await crownfallHere(['raters', town, '--quiet', '--json'])).stdout);
    const r3 = biases.find(({ rater }: { rater: string }) => rater === 'R3');
    expect(Math.abs(r3.bias_pct - 6)).toBeLessThan(3 * r3.bias_se_pct);
  });

  test('season: change, efficacy with reasons, hot spots, one page', async () => {
    const out = join(temporaryFolder(), 'season');
    const treated = join(temporaryFolder(), 'treated.csv');
    writeFileSync(treated, 'tree_id\nT0034\nT0040\nT0041\nT9999\n');
    const ending = await crownfallHere([
      'season',
      town,
      '--quiet',
      '--treated',
      treated,
      '--draws',
      '100',
      '--out',
      out,
    ]);
    expect(ending.code).toBe(0);
    expect(ending.stdout).toContain('Henderson–Tilton');
    expect(ending.stdout).toContain('T9999');
    expectClean(ending.stdout);
    expectCleanFolder(out);
    expect(readdirSync(out).sort()).toEqual([
      'season-blocks.svg',
      'season-efficacy.svg',
      'season-spots.svg',
      'season.html',
    ]);
    expectClean((await crownfallHere(['season', town, '--quiet', '--json', '--draws', '0'])).stdout);
  });

  test('sample: as many trees as wanted, none of them rated, the same for a seed', async () => {
    const run = async () =>
      JSON.parse(
        (await crownfallHere(['sample', town, '--trees', '25', '--draws', '100', '--quiet', '--json'])).stdout,
      );
    const plan = await run();
    expect(plan.list.length).toBe(25);
    expect(await run()).toEqual(plan);
    const ratings = readFileSync(join(town, 'ratings.csv'), 'utf8').split('\n');
    const rated = new Set(ratings.filter((line) => line.includes(',2026-')).map((line) => line.split(',')[0]));
    // A rating without a figure leaves a tree unrated: one such row is in the town.
    expect(plan.list.filter(({ tree_id }: { tree_id: string }) => rated.has(tree_id)).length).toBeLessThanOrEqual(1);
    expect(plan.half_width_after).toBeLessThan(plan.half_width_now);
    expectClean(JSON.stringify(plan));
  });
});

describe('with too little', () => {
  const town = writeTinyTown(join(temporaryFolder(), 'tiny'));

  test('calibrate says what is missing, keeps nothing and exits 1', async () => {
    const ending = await crownfallHere(['calibrate', town, '--quiet']);
    expect(ending.code).toBe(1);
    expect(ending.stdout).toMatch(/quadrats under rated crowns that stain: 0 of at least 10/);
    expect(existsSync(join(town, 'calibration.json'))).toBe(false);
  });

  test('one rater has nothing to agree with; --store keeps nothing', async () => {
    const ending = await crownfallHere(['raters', town, '--quiet', '--store']);
    expect(ending.code).toBe(1);
    expect(ending.stdout).toContain('one rater');
    expect(existsSync(join(town, 'raters.json'))).toBe(false);
  });

  test('season without an earlier year asks for a day', async () => {
    const ending = await crownfallHere(['season', town, '--quiet']);
    expect(ending.code).toBe(2);
    expect(ending.stderr).toContain('first day');
  });

  test('sample of a town whose trees are all rated says so', async () => {
    const ending = await crownfallHere(['sample', town, '--quiet']);
    expect(ending.code).toBe(0);
    expectClean(ending.stdout);
  });

  test.each([
    ['reckon', '--draws', '5'],
    ['season', '--before', '2026-13-40'],
    ['sample', '--within', '0'],
    ['reckon', '--workers', '0'],
  ])('%s %s %s is wrong use', async (command, option, value) => {
    const out = command === 'reckon' ? ['--out', join(temporaryFolder(), 'out')] : [];
    expect((await crownfallHere([command, town, ...out, option, value, '--quiet'])).code).toBe(2);
  });
});
