import { describe, expect, test } from 'vitest';
import { table, told } from '../sample-layers.ts';
import { DEFAULT_SETTINGS } from '../settings.ts';
import { KnownIds } from './known-ids.ts';
import { readRatings } from './read-ratings.ts';

const trees = new KnownIds(['T-1', 'T-2']);
const settings = {
  ...DEFAULT_SETTINGS,
  scales: { 'House-4': { source: 'house rule', classes: { A: [0, 10], b: [10, 50] } } },
} as const;
const full = {
  tree_id: 'T-1',
  rated_on: '2026-05-03',
  rater: 'A',
  browned_pct: 40,
  gall_load: 'heavy',
  cause: 'frass',
};
const read = (...rows: Readonly<Record<string, unknown>>[]) =>
  readRatings(table('ratings.csv', ...rows.map((row) => ({ ...full, ...row }))), settings, trees);

describe('ratings', () => {
  test('a full row', () => {
    const { records, findings } = read({
      defoliated_pct: '12,5 %',
      confidence: 'High',
      note: 'near the stop',
      photo: 'a.jpg',
    });
    expect(records).toEqual([
      {
        treeId: 'T-1',
        ratedOn: '2026-05-03',
        rater: 'A',
        browned: { share: 0.4, lo: 0.4, hi: 0.4, scale: 'percent' },
        defoliated: { share: 0.125, lo: 0.125, hi: 0.125, scale: 'percent' },
        gallLoad: 'heavy',
        cause: 'frass',
        confidence: 'high',
        note: 'near the stop',
        extra: { photo: 'a.jpg' },
      },
    ]);
    expect(told(findings)).toEqual(['number-mended note/mended row 2 defoliated_pct']);
  });

  test.each([
    [{ browned_pct: 140 }, 'value-out-of-range warning/left_out row 2 browned_pct'],
    [{ browned_pct: -1 }, 'value-out-of-range warning/left_out row 2 browned_pct'],
    [{ browned_pct: 'much' }, 'field-not-a-number warning/left_out row 2 browned_pct'],
    [{ tree_id: 't1' }, 'rating-of-unknown-tree warning/left_out row 2 tree_id'],
    [{ tree_id: '' }, 'field-missing warning/left_out row 2 tree_id'],
    [{ rated_on: '' }, 'field-missing warning/left_out row 2 rated_on'],
    [{ rated_on: '5/3/2026' }, 'date-ambiguous warning/left_out row 2 rated_on'],
    [{ rated_on: '3.5.2026' }, 'date-ambiguous warning/left_out row 2 rated_on'],
    [{ rated_on: '2026-02-30' }, 'date-impossible warning/left_out row 2 rated_on'],
    [{ rated_on: 'in May' }, 'date-unreadable warning/left_out row 2 rated_on'],
    [{ browned_pct: '', class: '4' }, 'field-missing warning/left_out row 2 scale'],
    [{ browned_pct: '', class: '4', scale: 'horsfall-barratt' }, 'unknown-word warning/left_out row 2 scale'],
    [{ browned_pct: '', class: '12', scale: 'horsfall-barratt-0-11' }, 'unknown-word warning/left_out row 2 class'],
    [{ browned_pct: '', class: '140', scale: 'percent' }, 'value-out-of-range warning/left_out row 2 class'],
    [{ browned_pct: '', cause: '', gall_load: '' }, 'rating-without-figure warning/left_out row 2'],
  ])('%j is left out, and the other rows stay', (row, expected) => {
    const { records, findings } = read(row, { tree_id: 'T-2' });
    expect(records.map((rating) => rating.treeId)).toEqual(['T-2']);
    expect(told(findings)).toEqual([expected]);
  });

  test('what a finding says: the range, the two readings, the similar id', () => {
    const facts = (row: Readonly<Record<string, unknown>>) => read(row).findings[0].facts;
    expect(facts({ browned_pct: 140 })).toEqual({ got: 140, expected: '0–100 %' });
    expect(facts({ rated_on: '5/3/2026' })).toEqual({ got: '5/3/2026', either: '2026-05-03', or: '2026-03-05' });
    expect(facts({ tree_id: 't1' })).toEqual({ got: 't1', similar: 'T-1' });
    expect(facts({ tree_id: 'X' })).toEqual({ got: 'X' });
  });

  test('dates in three styles: the column decides where it can', () => {
    const { records, findings } = read(
      { rated_on: '2026-05-03' },
      { rated_on: '5/3/2026' },
      { rated_on: '5/20/2026' },
      { rated_on: '3.5.2026' },
    );
    expect(records.map((rating) => rating.ratedOn)).toEqual(['2026-05-03', '2026-05-03', '2026-05-20']);
    expect(told(findings)).toEqual([
      'date-ambiguous warning/left_out row 5 rated_on',
      'date-order-inferred note/mended row 3 rated_on',
    ]);
    expect(findings[1].facts).toEqual({ got: '5/3/2026', read_as: '2026-05-03', proof: '5/20/2026', count: 2 });
  });

  test('an unknown cause is unknown, an unknown gall load is left out; the valid words are listed', () => {
    const { records, findings } = read({ cause: 'fras', gall_load: 'many' });
    expect(records[0].cause).toBe('unknown');
    expect('gallLoad' in records[0]).toBe(false);
    expect(told(findings)).toEqual([
      'unknown-word warning/assumed row 2 cause',
      'unknown-word warning/left_out row 2 gall_load',
    ]);
    expect(findings[0].facts).toMatchObject({
      valid: 'frass, honeydew, fruit, leaf_litter, none, unknown',
      nearest: 'frass',
    });
    expect(findings[1].facts).toMatchObject({ valid: 'none, light, moderate, heavy' });
  });

  test('“none” is a word of gall load and cause, not a missing value; spaces and hyphens do not matter', () => {
    const { records, findings } = read(
      { cause: 'None', gall_load: 'NONE' },
      { cause: 'Leaf litter' },
      { cause: 'leaf-litter' },
    );
    expect(records.map((rating) => rating.cause)).toEqual(['none', 'leaf_litter', 'leaf_litter']);
    expect(records[0].gallLoad).toBe('none');
    expect(findings).toEqual([]);
  });

  test.each([
    [{ cause: 'frass', gall_load: 'none' }, 'rating-contradiction warning/kept row 2 gall_load'],
    [{ cause: 'frass', gall_load: '' }, 'cause-without-evidence warning/kept row 2 evidence'],
    [{ cause: '', gall_load: 'heavy' }, 'galls-without-cause note/kept row 2 cause'],
    [{ browned_pct: '' }, 'rating-without-figure note/kept row 2'],
    [{ class: 'A', scale: 'House-4' }, 'class-and-percent-disagree warning/kept row 2 browned_pct'],
  ])('%j is kept, and told', (row, expected) => {
    const { records, findings } = read(row);
    expect(records).toHaveLength(1);
    expect(told(findings)).toEqual([expected]);
  });

  test('classes of published scales and of the project become intervals', () => {
    const { records, findings } = read(
      { browned_pct: '', class: '7', scale: 'horsfall-barratt-0-11' },
      { browned_pct: '', class: 8, scale: 'Horsfall-Barratt-1-12' },
      { browned_pct: '', class: 5, scale: 'forest-service-crown-5pct' },
      { browned_pct: '', class: 'B', scale: 'house-4' },
      { browned_pct: '', class: '35', scale: 'percent' },
    );
    const rounded = records.map(({ browned }) =>
      [browned?.share, browned?.lo, browned?.hi].map((x) => Number(x?.toFixed(6))),
    );
    expect(rounded).toEqual([
      [0.815, 0.75, 0.88],
      [0.815, 0.75, 0.88],
      [0.03, 0.01, 0.05],
      [0.3, 0.1, 0.5],
      [0.35, 0.35, 0.35],
    ]);
    expect(findings).toEqual([]);
  });

  test('what imagery suggests counts only when a person stands by it', () => {
    const { records, findings } = read(
      { rater: 'imagery', confidence: 'low' },
      { rater: 'Imagery', confirmed_by: ' ' },
      { rater: 'imagery', confirmed_by: 'R1' },
      { rater: 'R2' },
    );
    expect(records.map(({ rater, confirmedBy }) => [rater, confirmedBy])).toEqual([
      ['imagery', 'R1'],
      ['R2', undefined],
    ]);
    expect(told(findings)).toEqual(['rating-unconfirmed note/left_out row 2 confirmed_by']);
    expect(findings[0].facts).toEqual({ count: 2 });
  });

  test('raters left blank are told once', () => {
    const { records, findings } = read({ rater: '' }, { rater: null });
    expect(records.map((rating) => rating.rater)).toEqual(['unknown', 'unknown']);
    expect(findings.map((finding) => finding.facts)).toEqual([{ read_as: 'unknown', count: 2 }]);
  });
});
