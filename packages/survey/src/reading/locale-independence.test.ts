import { afterEach, expect, test, vi } from 'vitest';
import { describeFinding } from '../catalogue/describe-finding.ts';
import { features, line, point, projectInput, table } from '../sample-layers.ts';
import { asOfDay } from '../severity/as-of-day.ts';
import { severityOfTrees } from '../severity/severity-of-trees.ts';
import { readSurvey } from './read-survey.ts';

afterEach(() => vi.restoreAllMocks());

test('nothing asks the machine for its locale', () => {
  const refuse = (): never => {
    throw new Error('asked for the locale');
  };
  for (const name of ['localeCompare', 'toLocaleLowerCase', 'toLocaleUpperCase'] as const) {
    vi.spyOn(String.prototype, name).mockImplementation(refuse);
  }
  vi.spyOn(Number.prototype, 'toLocaleString').mockImplementation(refuse);
  vi.spyOn(Date.prototype, 'toLocaleDateString').mockImplementation(refuse);
  vi.spyOn(Intl, 'NumberFormat').mockImplementation(refuse);
  vi.spyOn(Intl, 'Collator').mockImplementation(refuse);

  const input = projectInput({
    crowns: features('crowns.geojson', [
      point(13.4, 52.5),
      { tree_id: 'İ-1', host: 'ILEX AQUIFOLIUM', spread_m: '8,5' },
    ]),
    pavement: features('pavement.geojson', [line(13.4, 52.5, 13.401, 52.5), { kind: 'SIDEWALK' }]),
    ratings: table('ratings.csv', { tree_id: 'İ-1', rated_on: '13/5/2026', browned_pct: '12,5 %', cause: 'FRUIT' }),
  });
  const { survey, settings, findings } = readSurvey(input);
  const { trees } = severityOfTrees(survey, settings, asOfDay(survey, settings));
  expect(trees[0]).toMatchObject({ share: 0.125, cause: 'fruit', group: 'ilex aquifolium' });
  for (const finding of findings) expect(describeFinding(finding, 'es').what).not.toBe('');
});
