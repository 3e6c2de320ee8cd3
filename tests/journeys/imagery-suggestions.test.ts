/** From the demo's picture to suggestions, and from a suggestion to a rating only through a person's name. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { readProject } from '@crownfall/exchange/node';
import { readSurvey } from '@crownfall/survey';
import { describe, expect, test } from 'vitest';
import { crownfall, SAMPLE, temporaryFolder } from './crownfall-process.ts';

/** The command looks at six hundred crowns; a busy machine takes its time. */
const TIMEOUT = 240_000;

describe('crownfall imagery', { timeout: TIMEOUT }, () => {
  test('browned: a table in the form of ratings, none of which counts until it is confirmed', async () => {
    const folder = temporaryFolder();
    const out = join(folder, 'suggestions.csv');
    const run = crownfall(['imagery', 'browned', SAMPLE, '--flown', '2026-05-08', '--out', out, '--json', '--quiet']);
    expect(run.code).toBe(0);
    const report = JSON.parse(run.stdout);
    expect(report.suggested).toBeGreaterThan(550);
    expect(report.images[0]).toMatchObject({ image: 'aerial.tif', quality: [], separation: 'otsu' });
    const [header, ...rows] = readFileSync(out, 'utf8').trimEnd().split('\r\n');
    expect(rows).toHaveLength(report.suggested);
    const confirmedBy = header.split(',').indexOf('confirmed_by');
    expect(header.split(',').slice(0, 3)).toEqual(['tree_id', 'rated_on', 'rater']);

    const project = join(folder, 'project');
    mkdirSync(project);
    // The evidence is quoted and holds commas: the name goes after the empty note that follows "low".
    const confirmed = rows[0].replace(',low,,,', ',low,,R1,');
    expect(confirmed).not.toBe(rows[0]);
    writeFileSync(join(project, 'ratings.csv'), [header, confirmed, ...rows.slice(1)].join('\r\n'));
    const there = (name: string) => relative(project, join(SAMPLE, name));
    const layers = { crowns: there('crowns.geojson'), pavement: there('pavement.geojson'), ratings: 'ratings.csv' };
    writeFileSync(join(project, 'project.json'), JSON.stringify({ title: 'T', season: 2026, units: 'metric', layers }));
    const { survey, findings } = readSurvey(await readProject(project));
    expect(confirmedBy).toBeGreaterThan(0);
    expect(survey.ratings).toHaveLength(1);
    expect(survey.ratings[0]).toMatchObject({
      rater: 'imagery',
      confidence: 'low',
      cause: 'unknown',
      confirmedBy: 'R1',
    });
    const told = findings.find(({ code }) => code === 'rating-unconfirmed');
    expect(told).toMatchObject({ severity: 'note', effect: 'left_out', facts: { count: rows.length - 1 } });
  });

  test('outline: a feature for every point in the picture, an outline or the reason why not', () => {
    const out = join(temporaryFolder(), 'proposals.geojson');
    const run = crownfall(['imagery', 'outline', SAMPLE, '--out', out, '--json', '--quiet']);
    expect(run.code).toBe(0);
    const report = JSON.parse(run.stdout);
    const { features } = JSON.parse(readFileSync(out, 'utf8'));
    const drawn = features.filter((feature: { geometry: unknown }) => feature.geometry !== null);
    expect(drawn).toHaveLength(report.proposed);
    expect(drawn.length).toBeGreaterThan(250);
    for (const { properties, geometry } of features) {
      if (geometry === null)
        expect(['no-foliage', 'taken', 'too-small', 'too-large', 'outside']).toContain(properties.refused);
      else {
        expect(properties).toMatchObject({ outlined_by: 'imagery' });
        expect(geometry.coordinates[0].length).toBeLessThanOrEqual(49);
      }
    }
  });

  test('wrong use is answered with what is right', () => {
    const run = (...args: string[]) => crownfall(['imagery', 'browned', SAMPLE, '--out', 'x.csv', ...args]);
    expect(run('--flown', 'May')).toMatchObject({ code: 2 });
    expect(run('--flown', 'May').stderr).toContain('2026-05-08');
    expect(run('--flown', '2026-05-08', '--index', 'EVI').stderr).toContain('NGRDI');
  });
});
