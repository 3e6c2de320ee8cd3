/** The command line from outside: what it prints, what it writes, how it ends. */
import { cpSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { crownfallHere } from './crownfall-here.ts';
import { crownfall, SAMPLE, temporaryFolder } from './crownfall-process.ts';
import { STAINED_M2, writeTinyTown } from './tiny-town.ts';

/** A crown's outline may stray from its circle by 0.1 % of its area. */
const OUTLINE_ERROR = 0.001;
const OUTPUTS = ['blocks.geojson', 'findings.json', 'ledger.csv', 'pavement.geojson', 'run.json', 'trees.geojson'];

const filesOf = (folder: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(folder)
      .sort()
      .map((name) => [name, readFileSync(join(folder, name), 'utf8')]),
  );

describe('reckon on a town known in closed form', () => {
  const town = writeTinyTown(join(temporaryFolder(), 'town'));
  const out = join(temporaryFolder(), 'out');
  const ending = crownfall(['reckon', town, '--out', out, '--json']);

  test('a galled crown stains π r² (1 − e^−s), its clean neighbour of the same host nothing', () => {
    expect(ending.code).toBe(0);
    const { blocks } = JSON.parse(ending.stdout);
    expect(blocks.map((block: { block_id: string }) => block.block_id)).toEqual(['GALLED', 'CLEAN']);
    expect(Math.abs(blocks[0].stained_m2 / STAINED_M2 - 1)).toBeLessThan(OUTLINE_ERROR);
    expect(blocks[1].stained_m2).toBe(0);
  });

  test('all outputs are written, and nothing else', () => {
    expect(readdirSync(out).sort()).toEqual(OUTPUTS);
  });

  test('progress goes to stderr as plain lines, and to nowhere with --quiet', () => {
    expect(ending.stderr).toMatch(/Reading .*\n/);
    expect(ending.stderr).not.toContain('\u001b');
    expect(crownfall(['reckon', town, '--out', out, '--quiet']).stderr).toBe('');
  });

  test('the table names the block, its square metres and why', () => {
    const { stdout } = crownfall(['reckon', town, '--out', out, '--quiet']);
    expect(stdout).toContain('Tiny Town (invented)');
    expect(stdout).toContain('Uncalibrated');
    expect(stdout).toMatch(new RegExp(`1 +GALLED +${STAINED_M2.toFixed(1)} `));
    expect(stdout).toMatch(/in plain sight/);
  });
});

describe('reckon on the sample town', () => {
  test('gives the same bytes whatever the language, time zone and place of the machine', () => {
    const [here, there] = [join(temporaryFolder(), 'here'), join(temporaryFolder(), 'there')];
    const first = crownfall(['reckon', SAMPLE, '--out', here], { LANG: 'C', LC_ALL: 'C', TZ: 'UTC' });
    const second = crownfall(['reckon', SAMPLE, '--out', there], {
      LANG: 'tr_TR.UTF-8',
      LC_ALL: 'tr_TR.UTF-8',
      TZ: 'Asia/Kathmandu',
    });
    expect([first.code, second.code]).toEqual([0, 0]);
    const untimed = (files: Record<string, string>): Record<string, string> => ({
      ...files,
      // Timings are the one thing in which two runs may differ.
      'run.json': JSON.stringify({ ...JSON.parse(files['run.json']), timings: null }),
    });
    expect(untimed(filesOf(there))).toEqual(untimed(filesOf(here)));
    expect(second.stdout.replaceAll(there, here)).toBe(first.stdout);
  });

  test('ranks its blocks by score, and the parts of each score sum to it', () => {
    const { stdout } = crownfall(['reckon', SAMPLE, '--out', join(temporaryFolder(), 'out'), '--json', '--quiet']);
    const { blocks, total } = JSON.parse(stdout);
    const scores: number[] = blocks.map((block: { score: number }) => block.score);
    expect(scores).toEqual([...scores].sort((a, b) => b - a));
    for (const block of blocks) {
      const points = Object.values<number>(block.score_parts).reduce((sum, each) => sum + each, 0);
      expect(points).toBeCloseTo(block.score, 9);
    }
    expect(total.stained_m2).toBeGreaterThan(0);
    expect(total.stained_m2).toBeLessThan(total.fallout_m2);
  });
});

describe('check', () => {
  test('finds nothing that stops the sample town, and writes nothing', () => {
    const before = readdirSync(SAMPLE).sort();
    const { code, stdout } = crownfall(['check', SAMPLE, '--json', '--quiet']);
    expect(code).toBe(0);
    expect(JSON.parse(stdout).stopped).toBe(false);
    expect(readdirSync(SAMPLE).sort()).toEqual(before);
  });

  test('says what is wrong, where, and what to do', () => {
    const town = writeTinyTown(join(temporaryFolder(), 'town'));
    const ratings = readFileSync(join(town, 'ratings.csv'), 'utf8');
    writeFileSync(join(town, 'ratings.csv'), `${ratings}T-GALLED,2026-05-05,invented rater,140,heavy,frass,\n`);
    const { code, stdout } = crownfall(['check', town, '--quiet']);
    expect(code).toBe(0);
    expect(stdout).toContain('140');
    expect(stdout).toMatch(/ratings\.csv.*row 4/);
    expect(stdout).toContain('What to do:');
  });
});

describe('convert', () => {
  test('a converted project reckons to the same figures', () => {
    const town = writeTinyTown(join(temporaryFolder(), 'town'));
    const copy = join(temporaryFolder(), 'copy');
    expect(crownfall(['convert', town, '--to', copy, '--quiet']).code).toBe(0);
    const figures = (project: string): unknown => {
      const { stdout } = crownfall(['reckon', project, '--out', join(temporaryFolder(), 'out'), '--json', '--quiet']);
      return JSON.parse(stdout).total;
    };
    expect(figures(copy)).toEqual(figures(town));
  });
});

describe('a project that cannot be reckoned', () => {
  test('ends with 1, in words, and leaves earlier results whole', () => {
    const town = writeTinyTown(join(temporaryFolder(), 'town'));
    const out = join(temporaryFolder(), 'out');
    expect(crownfall(['reckon', town, '--out', out]).code).toBe(0);
    const before = filesOf(out);
    writeFileSync(join(town, 'crowns.geojson'), '{"type": "FeatureCollection", "features": [{');
    const { code, stderr } = crownfall(['reckon', town, '--out', out]);
    expect(code).toBe(1);
    expect(stderr).toContain('crowns.geojson');
    expect(stderr).toContain('untouched');
    expect(stderr).not.toMatch(/\n\s+at /);
    expect(filesOf(out)).toEqual(before);
  });

  test('that is not there ends with 1 and says so', () => {
    const { code, stdout } = crownfall(['check', join(temporaryFolder(), 'nowhere')]);
    expect(code).toBe(1);
    expect(stdout).toContain('project.json');
  });
});

describe('wrong use ends with 2, the valid words and the nearest one', () => {
  test.each([
    [['rekcon', SAMPLE], 'Did you mean reckon?', 'check, reckon, calibrate, '],
    [
      ['reckon', SAMPLE, '--ouf', 'x'],
      'Did you mean --out?',
      '--out, --rows, --draws, --seed, --workers, --tile, --tiles, --json',
    ],
    [['reckon', SAMPLE], '--out', 'crownfall reckon --help'],
    [['serve', SAMPLE, '--port', '99999'], '99999', '0 to 65535'],
    [['convert', SAMPLE, '--to', 'x', '--format', 'tiff'], 'tiff', 'geojson, geojsonl, csv'],
    [['check'], 'PROJECT', 'crownfall check --help'],
  ])('%j', async (args, near, valid) => {
    const { code, stdout, stderr } = await crownfallHere(args);
    expect(code).toBe(2);
    expect(stderr).toContain(near);
    expect(stderr).toContain(valid);
    expect(stdout).toBe('');
    expect(stderr).not.toMatch(/\n\s+at /);
  });
});

test('a disk that cannot be written to ends with 3, in words', () => {
  const town = writeTinyTown(join(temporaryFolder(), 'town'));
  const inTheWay = join(temporaryFolder(), 'file');
  cpSync(join(town, 'project.json'), inTheWay);
  const { code, stderr } = crownfall(['reckon', town, '--out', join(inTheWay, 'out')]);
  expect(code).toBe(3);
  expect(stderr).toContain('Choose another folder');
  expect(stderr).not.toMatch(/\n\s+at /);
  expect(existsSync(join(inTheWay, 'out'))).toBe(false);
});

describe('help', () => {
  test.each(['check', 'reckon', 'convert', 'serve'])('%s explains itself with an example', (command) => {
    const { code, stdout } = crownfall([command, '--help']);
    expect(code).toBe(0);
    expect(stdout).toContain(`Example:\n  crownfall ${command} `);
  });
});
