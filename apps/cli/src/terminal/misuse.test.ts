import { describe, expect, test } from 'vitest';
import { letterChanges, nearest } from './misuse.ts';

describe('the nearest valid word', () => {
  test('distance of the textbook pair kitten and sitting is 3 (Levenshtein 1966, widely printed example)', () => {
    expect(letterChanges('kitten', 'sitting')).toBe(3);
    expect(letterChanges('', 'abc')).toBe(3);
    expect(letterChanges('abc', '')).toBe(3);
    expect(letterChanges('same', 'same')).toBe(0);
  });

  test('finds a slip of the finger and stays silent on another word altogether', () => {
    expect(nearest('rekcon', ['check', 'reckon', 'convert', 'serve'])).toBe('reckon');
    expect(nearest('--ouf', ['--out', '--json', '--quiet'])).toBe('--out');
    expect(nearest('photosynthesis', ['check', 'reckon'])).toBeUndefined();
  });
});
