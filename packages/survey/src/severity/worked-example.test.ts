/** The worked example of docs/methods/severity.md, read from the page itself. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { KnownIds } from '../reading/known-ids.ts';
import { readRatings } from '../reading/read-ratings.ts';
import { table, tree, survey as withRatings } from '../sample-layers.ts';
import { DEFAULT_SETTINGS } from '../settings.ts';
import { severityOfTrees } from './severity-of-trees.ts';

/** Half of the last digit printed on the page. */
const PRINTED = 0.0005;
/** The column of the page's table with what a tree adds to its kind's stain. */
const WEIGHTED = 'g·w·s';

const page = readFileSync(new URL('../../../../docs/methods/severity.md', import.meta.url), 'utf8');

/** Rows of the table that follows a heading, by column name. */
function rowsUnder(heading: string): Record<string, string>[] {
  const lines = page.slice(page.indexOf(heading)).split('\n');
  const first = lines.findIndex((line) => line.startsWith('|'));
  const length = lines.slice(first).findIndex((line) => !line.startsWith('|'));
  const cells = (line: string) =>
    line
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim());
  const [names, , ...rows] = lines.slice(first, first + length).map(cells);
  return rows.map((row) => Object.fromEntries(names.map((name, i) => [name, row[i]])));
}

test('the ratings on the page give the figures on the page', () => {
  const trees = rowsUnder('### Trees').map((row) => tree(row.tree_id, row.host));
  const known = new KnownIds(trees.map((one) => one.treeId));
  const { records, findings } = readRatings(table('ratings.csv', ...rowsUnder('### Ratings')), DEFAULT_SETTINGS, known);
  expect(findings).toEqual([]);
  const found = severityOfTrees(withRatings(trees, records), DEFAULT_SETTINGS, '2026-06-30').trees;
  const printed = rowsUnder('### Figures');
  expect(printed.length).toBe(trees.length);
  printed.forEach((row, i) => {
    expect([found[i].treeId, found[i].from, found[i].cause]).toEqual([row.tree_id, row.from, row.cause]);
    const figures = [found[i].share, found[i].lo, found[i].hi, found[i].gateShare, found[i].weightedSeverity];
    [row.s, row.lo, row.hi, row.g, row[WEIGHTED]].forEach((text, k) => {
      expect(Math.abs(figures[k] - Number(text)), `${row.tree_id}, figure ${k}`).toBeLessThanOrEqual(PRINTED);
    });
  });
});
