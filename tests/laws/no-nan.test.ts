/**
 * No NaN and no infinity ever reaches a file: what is undefined is null or named as such. Law over degenerate projects: one
 * tree, no ratings, no pavement under any crown, one rater, ratings all equal, one quadrat, zero everywhere.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { buildProgram } from '../../apps/cli/src/program.ts';
import { writeTinyTown } from '../journeys/tiny-town.ts';
import { temporaryFolder } from '../temporary-folder.ts';

/** In JSON NaN turns into null by itself; in text it shows. Words of the trade never contain these. */
const NOT_A_NUMBER = /\bNaN\b|\bInfinity\b|\bundefined\b/;

type Town = (folder: string) => void;
const json = (
  folder: string,
  name: string,
): { features: { properties: Record<string, unknown>; geometry: object }[] } =>
  JSON.parse(readFileSync(join(folder, name), 'utf8'));
const put = (folder: string, name: string, value: unknown): void =>
  writeFileSync(join(folder, name), typeof value === 'string' ? value : JSON.stringify(value));
const HEAD = 'tree_id,rated_on,rater,browned_pct,gall_load,cause,evidence\n';
const withLayer = (folder: string, layer: string, file: string): void => {
  const project = JSON.parse(readFileSync(join(folder, 'project.json'), 'utf8')) as { layers: object };
  put(folder, 'project.json', { ...project, layers: { ...project.layers, [layer]: file } });
};

const TOWNS: Readonly<Record<string, Town>> = {
  'two trees': () => {},
  'one tree': (folder) => {
    const crowns = json(folder, 'crowns.geojson');
    put(folder, 'crowns.geojson', { ...crowns, features: crowns.features.slice(0, 1) });
  },
  'no ratings': (folder) => put(folder, 'ratings.csv', HEAD),
  'no pavement under a crown': (folder) => {
    const pavement = JSON.stringify(json(folder, 'pavement.geojson')).replaceAll('27.2', '27.3');
    put(folder, 'pavement.geojson', pavement);
  },
  'all rated zero': (folder) =>
    put(folder, 'ratings.csv', `${HEAD}T-GALLED,2026-05-04,A,0,none,none,\nT-CLEAN,2026-05-04,A,0,none,none,\n`),
  'two raters, all equal': (folder) =>
    put(
      folder,
      'ratings.csv',
      HEAD +
        ['A', 'B']
          .flatMap((rater) =>
            ['T-GALLED', 'T-CLEAN'].map((tree) => `${tree},2026-05-04,${rater},50,heavy,frass,seen\n`),
          )
          .join(''),
    ),
  'all rated full': (folder) =>
    put(
      folder,
      'ratings.csv',
      `${HEAD}T-GALLED,2026-05-04,A,100,heavy,frass,seen\nT-CLEAN,2026-05-04,A,100,heavy,frass,seen\n`,
    ),
  'one quadrat, fully stained': (folder) => {
    withLayer(folder, 'quadrats', 'quadrats.csv');
    put(
      folder,
      'quadrats.csv',
      'quadrat_id,lon,lat,area_m2,stained_pct,measured_on,by\nQ,-79.5,27.25,0.25,100,2026-05-05,A\n',
    );
  },
};

const COMMANDS: readonly (readonly string[])[] = [
  ['reckon', '--draws', '100', '--out', 'OUT'],
  ['reckon', '--draws', '0', '--out', 'OUT'],
  ['calibrate'],
  ['raters', '--out', 'OUT'],
  ['sample'],
  ['season', '--before', '2026-05-01', '--after', '2026-05-10', '--draws', '100', '--out', 'OUT'],
  ['visits', '--draws', '100', '--out', 'OUT'],
];

/** The command in this process; what it printed, and the files it wrote. */
async function said(args: readonly string[], json: boolean): Promise<string> {
  let text = '';
  const catching = [process.stdout, process.stderr].map((stream) =>
    vi.spyOn(stream, 'write').mockImplementation((piece) => {
      text += String(piece);
      return true;
    }),
  );
  try {
    await buildProgram(() => {}).parseAsync([...args, '--quiet', ...(json ? ['--json'] : [])], { from: 'user' });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    text += error.message;
  } finally {
    for (const spy of catching) spy.mockRestore();
  }
  return text;
}

describe.each(Object.entries(TOWNS))('%s', (_, change) => {
  let town: string;
  beforeAll(() => {
    town = writeTinyTown(join(temporaryFolder(), 'town'));
    change(town);
  });

  test.each(COMMANDS.map((command) => [command.join(' '), command] as const))(
    '%s writes no NaN',
    async (_name, [command, ...rest]) => {
      const out = temporaryFolder();
      const args = [command, town, ...rest.map((arg) => (arg === 'OUT' ? out : arg))];
      for (const asJson of [false, true]) {
        const text = await said(args, asJson);
        expect(text).not.toBe('');
        expect(text).not.toMatch(NOT_A_NUMBER);
      }
      for (const file of readdirSync(out, { recursive: true, withFileTypes: true })) {
        if (!file.isFile()) continue;
        const text = readFileSync(join(file.parentPath, file.name), 'utf8');
        expect(`${file.name}: ${NOT_A_NUMBER.exec(text)?.[0] ?? 'fine'}`).toBe(`${file.name}: fine`);
      }
    },
  );
});
