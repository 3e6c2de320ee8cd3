/** Planning a season from the command line: what is forbidden says why, clashes are named, files hold what is printed. */
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { isStopped, planWork, reckonProject } from '@crownfall/assessment';
import { readProject } from '@crownfall/exchange/node';
import { highsSolver, type Solver } from '@crownfall/priority';
import { briefCaution, describeReason, treatmentCautions } from '@crownfall/survey';
import loadHighs from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import { blockReport } from '../../apps/cli/src/reports/plan-block-report.ts';
import { crownfall, SAMPLE, temporaryFolder } from './crownfall-process.ts';
import { writeTinyTown } from './tiny-town.ts';

type Settings = Record<string, unknown>;

const PRICE = { set_up: 100, per_tree: 30, per_m2: 1, hours_set_up: 1, hours_per_tree: 1, hours_per_m2: 0.01 };
const PRICES = ['inspect', 'clean', 'treat', 'replace'].map((action) => ({ action, ...PRICE }));
/** Everything a treatment asks for, done on the day of the figures. */
const READY = {
  prices: PRICES,
  keep_off_m: { water: 5, drain: 2, well: 5 },
  wind_max_m_s: 4,
  rain_max_mm: 1,
  applicator: { name: 'Invented', licence: 'X-1' },
  weather: [{ block_id: '*', on: '2026-05-20', wind_m_s: 2, rain_mm: 0 }],
};
const DAY = '2026-05-20';
const FLOWERS = `block_id,observed_on,bbch,larvae_in_galls,bees_at_flowers\nGALLED,${DAY},63,no,no\n`;
/** A drain far from the crown (which stands at 27.25° N, 79.49984° W), and one a metre off its edge. */
const FAR = [-79.502, 27.25];
const NEAR = [-79.49984 + 5 / 98_900, 27.25];

/** The tiny town with bloom notes and a drain; `change` lays other settings over those that make treatment possible. */
function town(folder: string, change: Settings, { bloom = FLOWERS, drain = FAR as number[] | null } = {}): string {
  writeTinyTown(folder);
  const path = join(folder, 'project.json');
  const project = JSON.parse(readFileSync(path, 'utf8'));
  writeFileSync(join(folder, 'bloom.csv'), bloom);
  project.layers.bloom = 'bloom.csv';
  if (drain) {
    const geometry = { type: 'Point', coordinates: drain };
    const feature = { type: 'Feature', properties: { kind: 'drain' }, geometry };
    writeFileSync(join(folder, 'water.geojson'), JSON.stringify({ type: 'FeatureCollection', features: [feature] }));
    project.layers.water = 'water.geojson';
  }
  project.settings = { ...project.settings, as_of: DAY, plan: { ...READY, ...change } };
  writeFileSync(path, JSON.stringify(project));
  return folder;
}

const folder = temporaryFolder('plan');
let solve: Solver;
beforeAll(async () => {
  solve = highsSolver(await loadHighs());
});
let made = 0;
/** What `--block GALLED` prints, made in this process: starting one for each case would take long. */
async function told(change: Settings, layers = {}): Promise<string> {
  const reckoned = reckonProject(await readProject(town(join(folder, `town-${made++}`), change, layers)));
  if (isStopped(reckoned)) throw new Error('stopped');
  const plan = planWork(reckoned, { solve });
  if (!plan.feasible) throw new Error('no plan');
  return blockReport(plan, 'GALLED');
}

describe('what forbids a treatment is printed with what to do', () => {
  test('nothing forbids it when all is done', async () => {
    const out = await told({});
    expect(out).toContain('treat in bloom: avoids');
    expect(out.match(/not offered \(.*\)/g)).toEqual(['not offered (all-rated)']);
    expect(out).toContain('computes and suggests no dose');
  });

  const flowers = (bbch: number, bees: string) => ({ bloom: FLOWERS.replace('63,no,no', `${bbch},no,${bees}`) });
  const weather = (wind_m_s: number | null, rain_mm: number | null) => ({
    weather: [{ block_id: '*', on: DAY, wind_m_s, rain_mm }],
  });
  // One run tells several rules, each of which also has a test of its own beside the rules.
  test.each<[string, readonly string[], Settings, object]>([
    [
      'no licence, wind and rain not filled in',
      ['licence-missing', 'wind-missing', 'rain-missing'],
      { applicator: { name: '', licence: '' }, weather: [] },
      {},
    ],
    [
      'bees, wind and rain above the limits',
      ['bees-seen', 'wind-above-limit', 'rain-above-limit'],
      weather(9, 5),
      flowers(63, 'yes'),
    ],
    [
      'window not open, no look for bees, distance not stated',
      ['window-not-open', 'pollinator-check-missing', 'keep-off-not-stated'],
      { keep_off_m: { water: 5, drain: null, well: 5 } },
      flowers(57, 'unknown'),
    ],
    ['a drain too near, no prices', ['water-near', 'price-missing'], { prices: [] }, { drain: NEAR }],
    [
      'water not mapped, cause treatment does not act on',
      ['water-not-mapped', 'cause-without-evidence'],
      { treat_causes: ['honeydew'] },
      { drain: null },
    ],
  ])('%s', async (_, codes, change, layers) => {
    const out = await told(change, layers);
    for (const code of codes) {
      expect(out).toContain(`not offered (${code})`);
      const { remedy } = describeReason({ code: code as never, facts: {} }, 'en');
      expect(out).toContain(remedy);
    }
  });
});

describe('the sample town', () => {
  let out: string;
  const written = join(folder, 'out');
  beforeAll(() => {
    const run = crownfall(['plan', SAMPLE, '--quiet', '--draws', '0', '--out', written]);
    expect(run.stderr).toBe('');
    expect(run.code).toBe(0);
    out = run.stdout;
  });

  test('tells the plan, its proof, what more would buy, and the cautions', () => {
    expect(out).toContain('No plan within these limits avoids more (proved).');
    expect(out).toMatch(/1,000 USD more would avoid \d/);
    expect(out).toMatch(/Treatment in bloom may be done in 3 blocks: B13, B28, B29/);
    expect(out).toContain('Bees were at the flowers on 2026-05-17: B23');
    expect(out).toMatch(/Rotation: B13.* has the mode-of-action group .* on 2025-05-16 \(last season\)/);
    expect(out).toContain('Only a licensed applicator treats.');
    expect(out).toContain('Left alone:');
  });

  test('the files hold the same plan', () => {
    const plan = JSON.parse(readFileSync(join(written, 'plan.json'), 'utf8'));
    const acted = plan.blocks.filter(({ action }: { action: string }) => action !== 'leave');
    const rows = readFileSync(join(written, 'plan.csv'), 'utf8').trim().split(/\r?\n/);
    expect(rows.length).toBe(plan.blocks.length + 1);
    expect(rows.filter((row) => /,(clean|treat|treat_and_clean|replace|inspect),/.test(row)).length).toBe(acted.length);
    expect(plan.cost).toBeLessThanOrEqual(12_000);
    expect(plan.blocks.every(({ offers }: { offers: { action: string }[] }) => offers[0].action === 'leave')).toBe(
      true,
    );
    // Addresses within 20 m of treated crowns, each with its distance.
    const notices = readFileSync(join(written, 'notices.csv'), 'utf8').trim().split(/\r?\n/).slice(1);
    expect(notices.length).toBe(plan.notices);
    for (const row of notices) {
      const [, metres] = row.match(/,([\d.]+),"?The product label/) ?? [];
      expect(Number(metres)).toBeLessThanOrEqual(20);
    }
    // What names a treatment says what governs it, row by row.
    const caution = briefCaution('en');
    expect(rows.slice(1).every((row) => row.includes(caution))).toBe(true);
    expect(plan.cautions).toEqual(treatmentCautions('en'));
    const map = JSON.parse(readFileSync(join(written, 'plan.geojson'), 'utf8'));
    expect(map.features.length).toBe(plan.blocks.length);
    for (const { properties, geometry } of map.features) {
      expect(properties.caution).toBe(caution);
      expect(geometry.type).toMatch(/Polygon$/);
    }
  });

  test('constraints that clash are named, and the exit code says that there is no plan', () => {
    const run = crownfall(['plan', SAMPLE, '--quiet', '--draws', '0', '--budget', '500']);
    expect(run.code).toBe(1);
    expect(run.stdout).toContain('cannot be met together');
    expect(run.stdout).toContain('the budget of 500 USD');
    expect(run.stdout).toContain('block B04 must be done');
  });

  test('bloom: a forecast with its range, closing soon before over, a calendar that names no crown', () => {
    const file = join(folder, 'bloom.ics');
    const run = crownfall(['bloom', SAMPLE, '--quiet', '--calendar', file, '--language', 'es']);
    expect(run.code).toBe(0);
    expect(run.stdout).toMatch(/open on 2026-05-\d\d \(05-\d\d to 05-\d\d, forecast\).*as in 4 earlier seasons/);
    const lines = run.stdout.split('\n');
    const first = (group: string) => lines.findIndex((line) => line.startsWith(group));
    expect(first('closing soon')).toBeGreaterThan(0);
    expect(first('over')).toBeGreaterThan(first('closing soon'));
    const calendar = readFileSync(file, 'utf8');
    expect(calendar.match(/BEGIN:VEVENT/g)?.length).toBeGreaterThan(10);
    const [event] = calendar.replace(/\r\n /g, '').match(/^DESCRIPTION:.*$/m) ?? [''];
    for (const caution of treatmentCautions('es')) expect(event.replaceAll('\\', '')).toContain(caution);
    expect(run.stdout).toMatch(/Tree by tree: T\d+ \(B\d+\) (before|open|closing|closed|unknown), BBCH \d+ on 2026-/);
    expect(new Set(calendar.match(/^UID:.*$/gm)).size).toBe(calendar.match(/^UID:/gm)?.length);
  });

  test('without temperatures, or with two seasons, it says that it cannot forecast', () => {
    const copy = join(folder, 'copy');
    cpSync(SAMPLE, copy, { recursive: true, filter: (path) => !/aerial|truth|generator/.test(path) });
    const project = JSON.parse(readFileSync(join(copy, 'project.json'), 'utf8'));
    project.settings.bloom.temperature_file = '';
    writeFileSync(join(copy, 'project.json'), JSON.stringify(project));
    expect(crownfall(['bloom', copy, '--quiet']).stdout).toContain(
      'No forecast: no file of daily temperatures is given',
    );
    const bad = join(folder, 'bad.csv');
    writeFileSync(bad, 'date,tmin_c,tmax_c\n2026-01-01,20,10\n');
    const refused = crownfall(['bloom', copy, '--quiet', '--temperatures', bad]);
    expect(refused.code).toBe(2);
    expect(refused.stderr).toContain('bad.csv, row 2: expected tmin_c ≤ tmax_c');
  });
});
