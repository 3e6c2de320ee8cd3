/** Broken files, from the project's folder to the survey: each with a finding that says what, where and what to do. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { readProject } from '@crownfall/exchange/node';
import { describeFinding, readSurvey } from '@crownfall/survey';
import { beforeEach, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';

let folder: string;
beforeEach(async () => {
  folder = temporaryFolder('bad-input');
});

/** An invented corner: two crowns over one piece of sidewalk. */
const crown = (id: string, geometry: unknown = { type: 'Point', coordinates: [-80.2, 25.77] }) => ({
  type: 'Feature',
  properties: { tree_id: id, spread_m: 8 },
  geometry,
});
const walk = (ring: unknown[]) => ({
  type: 'Feature',
  properties: { pavement_id: 'P-1', kind: 'sidewalk' },
  geometry: { type: 'Polygon', coordinates: [ring] },
});
const RING = [
  [-80.2001, 25.7699],
  [-80.1999, 25.7699],
  [-80.1999, 25.7701],
  [-80.2001, 25.7701],
  [-80.2001, 25.7699],
];
const collection = (...features: unknown[]) => JSON.stringify({ type: 'FeatureCollection', features });
const twoCrowns = collection(crown('T-1'), crown('T-2'));

interface Files {
  readonly crowns?: string | Uint8Array;
  readonly pavement?: string;
  readonly ratings?: string | Uint8Array;
  readonly entry?: object;
}

/** Writes a project with the given files, reads it as far as the survey, and puts every finding into words. */
async function surveyed({
  crowns = twoCrowns,
  pavement = collection(walk(RING)),
  ratings = 'tree_id,rated_on,rater,browned_pct,cause,evidence\nT-1,2026-05-01,A,40,frass,seen\n',
  entry = {},
}: Files) {
  await writeFile(join(folder, 'crowns.geojson'), crowns);
  await writeFile(join(folder, 'pavement.geojson'), pavement);
  await writeFile(join(folder, 'ratings.csv'), ratings);
  const layers = { crowns: { path: 'crowns.geojson', ...entry }, pavement: 'pavement.geojson', ratings: 'ratings.csv' };
  await writeFile(
    join(folder, 'project.json'),
    JSON.stringify({ title: 'Corner', season: 2026, units: 'metric', layers, settings: {} }),
  );
  const input = await readProject(folder);
  const reading = readSurvey(input);
  const findings = [...input.findings, ...reading.findings.filter((each) => !input.findings.includes(each))];
  const told = findings.map((found) => ({ ...found, words: describeFinding(found, 'en') }));
  return { input, survey: reading.survey, told };
}

type Told = Awaited<ReturnType<typeof surveyed>>['told'];
const find = (told: Told, code: string) => told.find((found) => found.code === code);

test('sound files give no findings', async () => {
  const { survey, told } = await surveyed({});
  expect(told).toEqual([]);
  expect([survey.trees.length, survey.pavement.length, survey.ratings.length]).toEqual([2, 1, 1]);
});

describe('the words name the file, the place and what to do', () => {
  test.each<[string, Files, string, RegExp, RegExp]>([
    [
      'not JSON',
      { crowns: '{"type":"FeatureCollection",\n"features":[{]}' },
      'not-json',
      /line 2.*column 14/,
      /^crowns\.geojson/,
    ],
    ['an empty file', { crowns: '' }, 'not-json', /empty/, /^crowns\.geojson/],
    ['a truncated file', { crowns: twoCrowns.slice(0, -20) }, 'file-truncated', /1 complete/, /^crowns\.geojson/],
    [
      'an unclosed ring',
      { pavement: collection(walk(RING.slice(0, 4))) },
      'ring-unclosed',
      /does not end where it begins/,
      /pavement\.geojson.*P-1/,
    ],
    [
      'an empty coordinate',
      { crowns: collection(crown('T-1'), crown('T-2', { type: 'Point', coordinates: [null, 25.77] })) },
      'coordinates-not-finite',
      /not a number/,
      /crowns\.geojson.*T-2/,
    ],
    [
      'NaN',
      { crowns: twoCrowns.replace('-80.2,', 'NaN,') },
      'coordinates-not-finite',
      /not a number/,
      /crowns\.geojson.*T-1/,
    ],
    [
      'latitude first',
      { crowns: collection(crown('T-1', { type: 'Point', coordinates: [25.77, -100.2] })) },
      'lonlat-maybe-swapped',
      /./,
      /^crowns\.geojson/,
    ],
    [
      'latitude first within range',
      { crowns: collection(crown('T-1', { type: 'Point', coordinates: [25.77, -80.2] })) },
      'lonlat-maybe-swapped',
      /./,
      /^crowns\.geojson/,
    ],
    [
      'projected numbers without a system',
      { crowns: collection(crown('T-1', { type: 'Point', coordinates: [580000, 2850000] })) },
      'crs-missing',
      /./,
      /^crowns\.geojson/,
    ],
    ['a datum that needs a grid', { entry: { crs: 'EPSG:26717' } }, 'crs-datum-refused', /./, /^crowns\.geojson/],
    ['no features', { crowns: collection() }, 'layer-empty', /./, /crowns\.geojson/],
    [
      'a shape without geometry',
      { crowns: collection(crown('T-1'), crown('T-2', null)) },
      'feature-without-geometry',
      /./,
      /T-2/,
    ],
    [
      'a ragged row',
      { ratings: 'tree_id,rated_on,rater\nT-1,2026-05-01\n' },
      'csv-ragged-row',
      /2 cells.*3/,
      /ratings\.csv, row 2/,
    ],
    [
      'bytes that are not UTF-8',
      { ratings: Uint8Array.from([...new TextEncoder().encode('tree_id,rated_on,rater\nT-1,2026-05-01,J'), 0xf6]) },
      'encoding-guessed',
      /windows-1252/,
      /ratings\.csv/,
    ],
    [
      'a mapped column that is not there',
      { entry: { fields: { spread_m: 'spreed_m' } } },
      'mapping-field-missing',
      /did you mean spread_m/,
      /crowns\.geojson/,
    ],
    ['a unit nobody knows', { entry: { units: { spread_m: 'feet' } } }, 'unit-unknown', /feet/, /crowns\.geojson/],
  ])('%s', async (_, files, code, what, where) => {
    const { told } = await surveyed(files);
    const found = find(told, code);
    expect(told.map((each) => each.code)).toContain(code);
    expect(found?.words.what).toMatch(what);
    expect(found?.words.where).toMatch(where);
    expect(found?.words.remedy).toMatch(/\w+ \w+/);
    expect(JSON.stringify(found?.words)).not.toContain('…');
  });
});

describe('the rest goes on', () => {
  test('of a truncated layer the complete features count', async () => {
    const { survey } = await surveyed({ crowns: twoCrowns.slice(0, -20) });
    expect(survey.trees.map(({ treeId }) => treeId)).toEqual(['T-1']);
  });

  test('a broken position costs its own crown alone', async () => {
    const { survey } = await surveyed({ crowns: twoCrowns.replace('-80.2,', 'NaN,') });
    expect(survey.trees.map(({ treeId }) => treeId)).toEqual(['T-2']);
  });

  test('a layer the job can do without is left out', async () => {
    const { survey, told } = await surveyed({ ratings: 'a\0binary' });
    expect(find(told, 'format-unknown')).toMatchObject({ severity: 'warning', effect: 'left_out' });
    expect(survey.trees).toHaveLength(2);
  });
});
