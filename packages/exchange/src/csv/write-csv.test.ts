import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cellValue } from './column-values.ts';
import { parseRows } from './parse-rows.ts';
import { writeCsv } from './write-csv.ts';

const written = (columns: string[], records: Record<string, unknown>[]) => [...writeCsv(columns, records)].join('');

// RFC 4180, section 2: rules 1 (CRLF), 3 (header), 5–7 (quotes).
test('quotes only where needed, lines end in CRLF', () => {
  const text = written(
    ['a', 'b'],
    [
      { a: 'x,"y"\nz', b: 1.5 },
      { a: null, b: -0 },
    ],
  );
  expect(text).toBe('a,b\r\n"x,""y""\nz",1.5\r\n,0\r\n');
});

// Common practice against formula injection: OWASP "CSV Injection" names = + - @, tab and return. No number is touched.
test.each([
  ['=1+1', "'=1+1"],
  ['+SUM(A1)', "'+SUM(A1)"],
  ['-2+3', "'-2+3"],
  ['@x', "'@x"],
  ['\tx', "'\tx"],
  ["'=x", "''=x"],
  ['-12.5', '-12.5'],
  [-12.5, '-12.5'],
  ['a=b', 'a=b'],
])('%j is written %j', (value, cell) => {
  expect(written(['a'], [{ a: value }])).toBe(`a\r\n${cell}\r\n`);
});

test('numbers carry a point in every locale, and nothing that is no number', () => {
  expect(written(['a'], [{ a: 1234567.25 }, { a: 1e-7 }, { a: Number.NaN }])).toBe('a\r\n1234567.25\r\n1e-7\r\n""\r\n');
});

test('any text comes back as it was', () => {
  const texts = fc.array(
    fc.string({ unit: fc.constantFrom('=', '+', "'", '"', ',', ';', '\n', '\r', '\t', ' ', 'a', 'ü', '1', '-') }),
    { minLength: 1 },
  );
  fc.assert(
    fc.property(texts, (values) => {
      const filled = values.filter((value) => value !== '');
      const { rows } = parseRows(
        written(
          ['k', 'v'],
          filled.map((v) => ({ k: 1, v })),
        ),
      );
      expect(rows.slice(1, -1).map((row) => cellValue(row[1], { as: 'text' }))).toEqual(filled);
    }),
    { seed: 7946, numRuns: 500 },
  );
});
