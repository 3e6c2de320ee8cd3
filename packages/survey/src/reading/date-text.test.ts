import { describe, expect, test } from 'vitest';
import { daysBetween, isIsoDay, readDate, surveyDates } from './date-text.ts';

const read = (raw: unknown, column: unknown[] = [raw]) => {
  const reading = readDate(raw, surveyDates(column));
  return reading.is === 'date' || reading.is === 'inferred' ? reading.iso : reading.is;
};

describe('dates', () => {
  test.each([
    ['2026-05-03', '2026-05-03'],
    [' 2026-5-3 ', '2026-05-03'],
    ['2026-05-03T10:00:00Z', '2026-05-03'],
    ['2026/05/03', '2026-05-03'],
    ['13/5/2026', '2026-05-13'],
    ['5/13/2026', '2026-05-13'],
    ['5/5/2026', '2026-05-05'],
    ['2024-02-29', '2024-02-29'],
    ['2000-02-29', '2000-02-29'],
  ])('%s is %s', (raw, expected) => expect(read(raw)).toBe(expected));

  test('a slashed or dotted date is read by the order that its column proves', () => {
    expect(read('5/3/2026', ['5/3/2026', '5/20/2026'])).toBe('2026-05-03');
    expect(read('5/3/2026', ['5/3/2026', '20/5/2026'])).toBe('2026-03-05');
    expect(read('3.5.2026', ['3.5.2026', '20.5.2026'])).toBe('2026-05-03');
  });

  test('without proof it is ambiguous, and both readings are given', () => {
    expect(readDate('5/3/2026', surveyDates(['5/3/2026', '1/2/2026']))).toEqual({
      is: 'ambiguous',
      either: '2026-05-03',
      or: '2026-03-05',
    });
    expect(read('3.5.2026')).toBe('ambiguous');
  });

  test('one style proves nothing about the other, and a column that proves both orders proves none', () => {
    expect(read('3.5.2026', ['3.5.2026', '5/20/2026'])).toBe('ambiguous');
    expect(read('5/3/2026', ['5/3/2026', '20/5/2026', '5/20/2026'])).toBe('ambiguous');
    expect(read('20/5/2026', ['5/3/2026', '20/5/2026', '5/20/2026'])).toBe('2026-05-20');
  });

  test.each(['2026-02-30', '2026-13-01', '2025-02-29', '1900-02-29', '31/31/2026', '0/5/2026', '31.4.2026'])(
    '%s is no day of the calendar',
    (raw) => expect(read(raw)).toBe('impossible'),
  );

  test.each(['May 3', '3/5/26', '46145', 46145, '', '2026'])('%j is unreadable', (raw) =>
    expect(read(raw)).toBe('unreadable'),
  );

  test('day counts follow the calendar (day of year: 1 March is 60, in leap years 61; 31 December 2024 is 366)', () => {
    expect(daysBetween('2025-01-01', '2025-03-01') + 1).toBe(60);
    expect(daysBetween('2024-01-01', '2024-03-01') + 1).toBe(61);
    expect(daysBetween('2024-01-01', '2024-12-31') + 1).toBe(366);
    expect(daysBetween('2026-06-10', '2026-06-01')).toBe(-9);
  });

  test('ISO days', () => {
    expect(isIsoDay('2026-05-03')).toBe(true);
    for (const bad of ['2026-5-3', '2026-02-30', '3.5.2026', '2026-05-03T00:00']) expect(isIsoDay(bad)).toBe(false);
  });
});
