import type { LonLatGeometry } from '@crownfall/geometry';
import { describe, expect, test } from 'vitest';
import { blobEnvelope, geometryBlob, readGeometryBlob } from './geometry-blob.ts';

const hex = (bytes: Uint8Array | null) => Buffer.from(bytes ?? []).toString('hex');
const bytes = (text: string) => new Uint8Array(Buffer.from(text, 'hex'));
const point = (x: number, y: number): LonLatGeometry => ({ kind: 'point', points: Float64Array.of(x, y) });
const area = (...polygons: number[][][]): LonLatGeometry => ({
  kind: 'area',
  polygons: polygons.map((rings) => rings.map((ring) => Float64Array.from(ring))),
});

/** OGC 12-128 (GeoPackage 1.3), clause 2.1.3; byte for byte what GDAL 3.6.2 writes for the same geometries. */
const PUBLISHED: readonly (readonly [string, LonLatGeometry, string])[] = [
  ['a point', point(1, 2), '47500001e61000000101000000000000000000f03f0000000000000040'],
  ['a point in Florida', point(-80.1918, 25.7617), '47500001e61000000101000000dcd78173460c54c0fb5c6dc5fec23940'],
  [
    'an area, with its envelope',
    area([[0, 0, 3, 0, 3, 2, 0, 2]]),
    '47500003e610000000000000000000000000000000000840000000000000000000000000000000400103000000010000000500000000000000' +
      '0000000000000000000000000000000000000840000000000000000000000000000008400000000000000040000000000000000000000000' +
      '0000004000000000000000000000000000000000',
  ],
  [
    'no point: empty flag, quiet NaNs',
    { kind: 'point', points: new Float64Array() },
    '47500011e61000000101000000000000000000f87f000000000000f87f',
  ],
];

describe('published blobs', () => {
  test.each(PUBLISHED)('%s is written to the byte and read back', (_, geometry, text) => {
    expect(hex(geometryBlob(geometry))).toBe(text);
    expect(readGeometryBlob(bytes(text))).toEqual({ geometry });
  });
});

describe('whatever is written comes back as it was', () => {
  const two = Float64Array.of(0, 0, 1, 1);
  test.each<[string, LonLatGeometry]>([
    ['two points', { kind: 'point', points: Float64Array.of(1, 2, 3, 4) }],
    ['a line', { kind: 'line', lines: [two] }],
    ['two lines', { kind: 'line', lines: [two, Float64Array.of(5, 5, 6, 7, 8, 8)] }],
    [
      'a hole',
      area([
        [0, 0, 9, 0, 9, 9],
        [1, 1, 1, 2, 2, 2],
      ]),
    ],
    ['two areas', area([[0, 0, 9, 0, 9, 9]], [[20, 20, 29, 20, 29, 29]])],
    ['a ring that ends where it begins', area([[0, 0, 9, 0, 9, 9, 0, 0]])],
    ['a ring of two vertices', area([[0, 0, 1, 1]])],
    ['an empty ring', area([[]])],
    ['no area', area()],
    ['no line', { kind: 'line', lines: [] }],
    ['positions that are no numbers', area([[Number.NaN, 0, 1, 0, 1, Number.POSITIVE_INFINITY]])],
    ['every digit and minus zero', point(-0, 52.12345678901234)],
  ])('%s', (_, geometry) => {
    const blob = geometryBlob(geometry);
    expect(readGeometryBlob(blob ?? new Uint8Array())).toEqual({ geometry });
  });

  test('no geometry is no blob', () => expect(geometryBlob({ kind: 'none' })).toBeNull());
});

describe('blobs of other writers', () => {
  // ISO well-known binary (ISO 13249-3): Z adds 1000 to the type, M 2000; the older form sets high bits.
  test.each([
    ['big-endian throughout', '475000000000 10e6 0000000001 3ff0000000000000 4000000000000000'],
    ['with an altitude', '47500001e6100000 01e9030000 000000000000f03f 0000000000000040 0000000000001440'],
    ['with a measure', '47500001e6100000 01d1070000 000000000000f03f 0000000000000040 0000000000001440'],
    ['with an altitude, old form', '47500001e6100000 0101000080 000000000000f03f 0000000000000040 0000000000001440'],
    [
      'with an envelope of three axes',
      `47500005e6100000 ${'000000000000f03f'.repeat(6)} 0101000000 000000000000f03f 0000000000000040`,
    ],
    ['as a collection of one', '47500001e6100000 0107000000 01000000 0101000000 000000000000f03f 0000000000000040'],
  ])('%s', (_, text) => {
    expect(readGeometryBlob(bytes(text.replaceAll(' ', '')))).toEqual({ geometry: point(1, 2) });
  });

  test.each([
    ['nothing', '', 'no GeoPackage geometry'],
    ['plain well-known binary', '0101000000000000000000f03f0000000000000040', 'no GeoPackage geometry'],
    ['an extension of its own', '47500021e6100000474d4600', 'no GeoPackage geometry'],
    ['a curve', '47500001e6100000010800000000000000', 'geometry of type 8'],
    ['cut off', '47500001e61000000101000000000000000000', 'the geometry ends too soon'],
    ['a count beyond the blob', '47500001e610000001020000 00ffffffff', 'the geometry ends too soon'],
    [
      'members of two kinds',
      '47500001e6100000 0107000000 02000000 0101000000 000000000000f03f 0000000000000040 0102000000 00000000',
      'collection of several kinds',
    ],
  ])('%s cannot be read, and says why', (_, text, problem) => {
    expect(readGeometryBlob(bytes(text.replaceAll(' ', '')))).toEqual({ geometry: { kind: 'none' }, problem });
  });
});

test('the envelope is taken from the header, else from the positions', () => {
  expect(blobEnvelope(bytes(PUBLISHED[2][2]))).toEqual([0, 3, 0, 2]);
  expect(blobEnvelope(bytes(PUBLISHED[0][2]))).toEqual([1, 1, 2, 2]);
  expect(blobEnvelope(bytes(PUBLISHED[3][2]))).toBeNull();
});
