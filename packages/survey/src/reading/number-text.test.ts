import { describe, expect, test } from 'vitest';
import { isMissing, readNumber } from './number-text.ts';

const value = (raw: unknown, unit?: string) => {
  const reading = readNumber(raw, unit);
  return typeof reading === 'string' ? reading : reading.value;
};

describe('numbers as people type them', () => {
  test.each([
    [7, '', 7],
    [' 7 ', '', 7],
    ['7', '', 7],
    ['-0.5', '', -0.5],
    ['.5', '', 0.5],
    ['1e3', '', 1000],
    ['12,5', '', 12.5],
    ['8.0 m', 'm', 8],
    ['40%', '%', 40],
    ['1.234,5', '', 1234.5],
    ['1,234.5', '', 1234.5],
    ['0,125', '', 0.125],
  ])('%j with unit %j is %j', (raw, unit, expected) => expect(value(raw, unit)).toBe(expected));

  test.each(['1,234', '8.0 ft', 'eight', '0x10', '1.2.3', '1,2,3', true, {}, Infinity, '1e999'])(
    '%j is unreadable',
    (raw) => expect(value(raw, 'm')).toBe('unreadable'),
  );

  test.each(['', '  ', null, undefined, 'None', 'NULL', 'NaN', 'n/a', Number.NaN, '-'])('%j is missing', (raw) => {
    expect(value(raw)).toBe('missing');
    expect(isMissing(raw)).toBe(true);
  });

  test('only what is not a plain number counts as mended', () => {
    expect(readNumber(' 7 ')).toEqual({ value: 7, mended: false });
    expect(readNumber('12,5')).toEqual({ value: 12.5, mended: true });
    expect(readNumber('8.0 m', 'm')).toEqual({ value: 8, mended: true });
  });
});
