import { describe, expect, test } from 'vitest';
import { missingFrom, newRating, ratingRecord, withDigit, withLetter } from './rating-draft.ts';

const draft = newRating('T1', '2026-05-20', 'R1');

describe('rating by keys', () => {
  test.each([
    ['4', 40],
    ['45', 45],
    ['0', 0],
    ['05', 5],
    ['100', 100],
    ['10', 10],
    ['987', 70],
  ])('digits %s make %i per cent', (keys, pct) => {
    const rated = [...keys].reduce((now, digit) => withDigit(now, digit, false), draft);
    expect(rated.brownedPct).toBe(pct);
  });

  test('after a while a digit starts anew, and letters choose the share it goes to', () => {
    expect(withDigit(withDigit(draft, '4', true), '7', true).brownedPct).toBe(70);
    const defoliated = withDigit(withLetter(draft, 'd') ?? draft, '3', true);
    expect([defoliated.brownedPct, defoliated.defoliatedPct]).toEqual([null, 30]);
  });

  test('letters go round the choices', () => {
    const loads = ['g', 'g', 'g', 'g', 'g'].reduce((now, key) => withLetter(now, key) ?? now, draft);
    expect(loads.gallLoad).toBe('none');
    expect(withLetter(draft, 'x')).toBeNull();
  });
});

describe('what may be blamed', () => {
  const browned = { ...draft, brownedPct: 60 };

  test('brown leaves alone are no cause', () => {
    expect(missingFrom(browned)).toEqual(['cause']);
  });

  test('frass needs galls or words; other causes need words', () => {
    expect(missingFrom({ ...browned, cause: 'frass' })).toEqual(['evidence']);
    expect(missingFrom({ ...browned, cause: 'frass', gallLoad: 'none' })).toEqual(['evidence']);
    expect(missingFrom({ ...browned, cause: 'frass', gallLoad: 'heavy' })).toEqual([]);
    expect(missingFrom({ ...browned, cause: 'honeydew' })).toEqual(['evidence']);
    expect(missingFrom({ ...browned, cause: 'honeydew', evidence: 'aphids, sticky leaves' })).toEqual([]);
    expect(missingFrom({ ...browned, cause: 'none' })).toEqual([]);
  });

  test('only what was said is written', () => {
    expect(ratingRecord({ ...browned, cause: 'none' })).toEqual({
      tree_id: 'T1',
      rated_on: '2026-05-20',
      rater: 'R1',
      browned_pct: 60,
      cause: 'none',
    });
  });
});
