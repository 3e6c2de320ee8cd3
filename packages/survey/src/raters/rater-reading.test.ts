import { expect, test } from 'vitest';
import { rating, survey, tree } from '../sample-layers.ts';
import { DEFAULT_SETTINGS } from '../settings.ts';
import { severityOfTrees } from '../severity/severity-of-trees.ts';
import { ratedVisits } from './rated-visits.ts';
import { strayAt, withoutBias } from './rater-reading.ts';

const raters = { B: { bias_pct: 8, bias_se_pct: 1, error_sd_pct: 5 } };

test('ratings stray most at one half and not at all at the ends', () => {
  expect([0, 0.5, 1].map(strayAt)).toEqual([0, 1, 0]);
  expect(strayAt(0.1)).toBeCloseTo(0.6, 12);
});

test('a known bias is taken off, limit by limit, never beyond 0 and 1', () => {
  const half = { share: 0.5, lo: 0.5, hi: 0.5 };
  expect(withoutBias(half, 'B', raters).share).toBeCloseTo(0.42, 12);
  expect(withoutBias(half, 'A', raters)).toBe(half);
  expect(withoutBias({ share: 0, lo: 0, hi: 0.01 }, 'B', raters)).toEqual({ share: 0, lo: 0, hi: expect.any(Number) });
  expect(withoutBias({ share: 0.01, lo: 0.01, hi: 0.01 }, 'B', raters).share).toBe(0);
  expect(withoutBias({ share: 1, lo: 0.99, hi: 1 }, 'B', { B: { ...raters.B, bias_pct: -30 } }).hi).toBe(1);
});

test('severities are freed of it before raters are averaged', () => {
  const records = survey([tree('T1')], [rating('T1', 50), rating('T1', 58, { rater: 'B' })]);
  const [plainly] = severityOfTrees(records, DEFAULT_SETTINGS, '2026-06-30').trees;
  const [freed] = severityOfTrees(records, { ...DEFAULT_SETTINGS, raters }, '2026-06-30').trees;
  expect(plainly.share).toBeCloseTo(0.54, 12);
  expect(freed.share).toBeCloseTo((0.5 + 0.58 - 0.08 * strayAt(0.58)) / 2, 12);
});

test('the visits that agreement is judged by: newest of the season, raters side by side, raw', () => {
  const old = rating('T1', 90, { ratedOn: '2025-06-10' });
  const records = survey(
    [tree('T1'), tree('T2')],
    [rating('T1', 40), rating('T1', 60, { rater: 'B', ratedOn: '2026-06-12' }), old],
  );
  const visits = ratedVisits(records, DEFAULT_SETTINGS, '2026-06-30');
  expect(
    visits.map(({ treeId, readings }) => [
      treeId,
      readings.map(({ rater, figure, scale }) => [rater, figure.share, scale]),
    ]),
  ).toEqual([
    [
      'T1',
      [
        ['A', 0.4, 'percent'],
        ['B', 0.6, 'percent'],
      ],
    ],
  ]);
  expect(ratedVisits(records, DEFAULT_SETTINGS, '2026-06-11')[0].readings.length).toBe(1);
});
