import { describe, expect, test } from 'vitest';
import { jsonStream } from './json-stream.ts';

const utf8 = (text: string) => new TextEncoder().encode(text);

/** Pushes a text in pieces of `size` bytes and gathers what comes out of it. */
function run(text: string, paths: string[], size = 7) {
  const values: unknown[] = [];
  const stream = jsonStream(paths, (value) => values.push(value));
  const bytes = utf8(text);
  for (let at = 0; at < bytes.length; at += size) if (!stream.push(bytes.subarray(at, at + size))) break;
  return { values, ...stream.end() };
}

describe('a JSON text that arrives in pieces', () => {
  const text = '\ufeff{"a":[1,{"ü":"N\\"I-"},-2.5e3],\r\n "b":null,"c":"NaN"}';

  test('gives what JSON.parse gives, wherever it is cut', () => {
    const { a, b, c } = JSON.parse(text.slice(1));
    for (let size = 1; size <= text.length + 4; size++) {
      const { values, broken, notNumbers } = run(text, ['$.a.*', '$.b', '$.c'], size);
      expect(values).toEqual([...a, b, c]);
      expect([broken, notNumbers]).toEqual([null, null]);
    }
  });

  // RFC 8259, section 6: "Numeric values that cannot be represented … (such as Infinity and NaN) are not permitted."
  test('takes NaN and Infinity as null, and still counts lines right', () => {
    for (let size = 1; size < 40; size++) {
      const { values, broken, notNumbers } = run('[NaN,\n -Infinity,Infinity,\n  1,x]', ['$.*'], size);
      expect(values).toEqual([null, null, null, 1]);
      expect(notNumbers).toEqual({ count: 3, line: 1, column: 2 });
      expect(broken).toMatchObject({ kind: 'invalid', line: 3, column: 5, got: 'x', offset: 31 });
    }
  });

  test.each([
    ['{"a":1,}', 1, 8, '}', '"name"'],
    ['{"a" 1}', 1, 6, '1', ':'],
    ['{"ü":1\n"b":2}', 2, 1, 'b', ', or }'],
    ['[1,\n2 3]', 2, 3, '3', ', or ]'],
    ['hello', 1, 1, 'h', '{'],
    ["{'a':1}", 1, 2, "'", '"name" or }'],
    ['[tru]', 1, 5, ']', 'value or ]'],
  ])('%j breaks at line %i, column %i', (broken, line, column, got, expected) => {
    const found = run(broken, [], 3).broken;
    expect(found).toMatchObject({ kind: 'invalid', line, column, got });
    expect(found?.expected).toContain(expected);
  });

  test.each([
    ['', '{'],
    ['{"a":[1,2', ']}'],
    ['[{"a":"x', '}]'],
    ['[1', ']'],
  ])('%j is truncated', (cut, expected) => {
    expect(run(cut, []).broken).toMatchObject({ kind: 'truncated', offset: cut.length, expected });
  });
});
