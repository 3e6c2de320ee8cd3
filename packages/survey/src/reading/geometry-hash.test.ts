import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { area, line, point } from '../sample-layers.ts';
import { crownHash, fnv1a64, geometryHash } from './geometry-hash.ts';

describe('names of shapes', () => {
  // Fowler, Noll, Vo: test values of the 64-bit FNV-1a (draft-eastlake-fnv, appendix; from memory).
  test.each([
    ['', 'cbf29ce484222325'],
    ['a', 'af63dc4c8601ec8c'],
    ['foobar', '85944171f73967e8'],
  ])('FNV-1a of %j', (text, expected) => expect(fnv1a64(text)).toBe(expected));

  test('agrees with the definition in whole numbers', () => {
    const definition = (text: string): string => {
      let hash = 0xcbf29ce484222325n;
      for (const char of text) hash = ((hash ^ BigInt(char.charCodeAt(0))) * 0x100000001b3n) & 0xffffffffffffffffn;
      return hash.toString(16).padStart(16, '0');
    };
    fc.assert(
      fc.property(fc.string(), (text) => {
        const ascii = text.replace(/[^\x20-\x7e]/g, '');
        expect(fnv1a64(ascii)).toBe(definition(ascii));
      }),
      { seed: 1 },
    );
  });

  const ring = [1, 1, 2, 1, 2, 3, 1.5, 4];

  test('start, direction, closing vertex and order of parts do not matter', () => {
    const hash = geometryHash(area(...ring));
    expect(geometryHash(area(2, 3, 1.5, 4, 1, 1, 2, 1))).toBe(hash);
    expect(geometryHash(area(1.5, 4, 2, 3, 2, 1, 1, 1))).toBe(hash);
    expect(geometryHash(area(...ring, 1, 1))).toBe(hash);
    const [a, b] = [[Float64Array.from(ring)], [Float64Array.of(5, 5, 6, 5, 6, 6)]];
    expect(geometryHash({ kind: 'area', polygons: [a, b] })).toBe(geometryHash({ kind: 'area', polygons: [b, a] }));
    expect(geometryHash(line(0, 0, 1, 2))).toBe(geometryHash(line(1, 2, 0, 0)));
  });

  test('a hundredth of a millimetre does not matter, ten centimetres do', () => {
    expect(geometryHash(area(1.0000000001, ...ring.slice(1)))).toBe(geometryHash(area(...ring)));
    expect(geometryHash(area(1.000001, ...ring.slice(1)))).not.toBe(geometryHash(area(...ring)));
  });

  test('a line is not the outline of the same vertices, and spreads count', () => {
    expect(geometryHash(line(...ring))).not.toBe(geometryHash(area(...ring)));
    const at = { lon: 1, lat: 2 };
    expect(crownHash({ from: 'spread', at, spreadM: 8 })).not.toBe(crownHash({ from: 'spread', at, spreadM: 9 }));
    expect(geometryHash(point(1, 2))).not.toBe(geometryHash(point(2, 1)));
  });
});
