import { describe, expect, test } from 'vitest';
import { missingFrom, newRating, ratingRecord, withDigit, withLetter, withSuggestion } from './rating-draft.ts';

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

describe('a share that the picture suggests', () => {
  const row = {
    tree_id: 'T1',
    rated_on: '2026-05-08',
    rater: 'imagery',
    browned_pct: 31.4,
    cause: 'unknown',
    evidence: 'as the command line says it',
    confidence: 'low',
    note: '',
    confirmed_by: '',
    browned_lo95_pct: 24,
    browned_hi95_pct: 39.1,
    lit_pixels: 412,
    shaded_pct: 12,
    not_leaf_pct: 3,
    image: 'aerial.tif',
  } as const;
  const taken = withSuggestion(draft, row, { evidence: '412 lit leaf pixels', note: '' });

  // docs/methods/browned-share.md, "How a suggestion becomes a rating".
  test('is recorded as the command line’s suggestions are, with the name of who stands by it', () => {
    expect(ratingRecord(taken)).toEqual({
      ...Object.fromEntries(Object.entries(row).filter(([, value]) => value !== '')),
      evidence: '412 lit leaf pixels',
      confirmed_by: 'R1',
    });
  });

  test('is evidence of no cause, and counts only with a name and the day of the flight', () => {
    expect(missingFrom(taken)).toEqual([]);
    expect(missingFrom({ ...taken, cause: 'honeydew' })).toEqual(['evidence']);
    expect(missingFrom({ ...taken, rater: ' ' })).toEqual(['rater']);
    expect(missingFrom(withSuggestion(draft, { ...row, rated_on: '' }, { evidence: '', note: '' }))).toEqual(['date']);
  });

  test('what the person says stands before it', () => {
    const corrected = { ...withDigit(taken, '5', true), cause: 'honeydew' as const, evidence: 'aphids' };
    expect(ratingRecord(corrected)).toMatchObject({
      browned_pct: 50,
      rater: 'imagery',
      evidence: 'aphids; 412 lit leaf pixels',
    });
  });
});
