import { describe, expect, test } from 'vitest';
import { layOut } from './table.ts';

const COLUMNS = [
  { title: 'rank', align: 'right' },
  { title: 'block', align: 'left' },
  { title: 'why', align: 'left' },
] as const;

describe('a table', () => {
  test('lines numbers up to the right and words to the left', () => {
    expect(
      layOut(
        COLUMNS,
        [
          ['1', 'B7', 'stained'],
          ['12', 'Quay', 'busy'],
        ],
        80,
      ),
    ).toEqual(['rank  block  why', '────  ─────  ───────', '   1  B7     stained', '  12  Quay   busy']);
  });

  test('wraps only its last column, between words, under itself', () => {
    const lines = layOut(COLUMNS, [['1', 'B7', 'forty square metres in plain sight, two open complaints']], 40);
    expect(lines.slice(2)).toEqual([
      '   1  B7     forty square metres in',
      '             plain sight, two open',
      '             complaints',
    ]);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(40);
  });

  test('without rows is its titles', () => {
    expect(layOut(COLUMNS, [], 80)).toEqual(['rank  block  why', '────  ─────  ───']);
  });
});
