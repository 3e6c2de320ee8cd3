import { describe, expect, test } from 'vitest';
import { box, features, projectInput, table } from '../sample-layers.ts';
import { DEFAULT_SETTINGS } from '../settings.ts';
import { RatingBook } from './rating-book.ts';
import { readSurvey } from './read-survey.ts';

const row = (tree_id: string, rated_on: string) => ({ tree_id, rated_on, rater: 'AB', browned_pct: 40, cause: 'none' });
const crowns = features('crowns', [box(0, 0, 1e-4), { tree_id: 'A' }], [box(1, 0, 1e-4), { tree_id: 'B' }]);
const all = table(
  'ratings',
  row('A', '3/6/2026'),
  row('B', '2026-05-04'),
  row('Z', '2026-05-04'),
  row('A', '19/5/2026'),
);
const withRows = (rows: readonly number[]) => {
  const ratings = { ...all, features: rows.map((at) => all.features[at]) };
  return projectInput({ crowns, ratings });
};
const trees = new Set(['A', 'B']);

describe('ratings that follow their rows', () => {
  // 3/6 is a day only as long as another row proves that days come first.
  test.each([[[0, 1, 2, 3]], [[0, 1, 2]], [[1, 3, 0]], [[]], [[0, 1, 3]]])(
    'rows %j: what a full reading gives',
    (rows) => {
      const book = new RatingBook(DEFAULT_SETTINGS);
      book.read(withRows([0, 1, 2, 3]), trees);
      expect(book.read(withRows(rows), trees)).toEqual(readSurvey(withRows(rows)).survey.ratings);
    },
  );

  test('a row that stays gives the object it gave before', () => {
    const book = new RatingBook(DEFAULT_SETTINGS);
    const [, , before] = book.read(withRows([0, 3, 1]), trees);
    expect(book.read(withRows([1, 3]), trees)[0]).toBe(before);
  });
});
