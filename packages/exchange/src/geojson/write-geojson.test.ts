import { type LonLatGeometry, signedArea } from '@crownfall/geometry';
import { describe, expect, test } from 'vitest';
import { type OutFeature, writeGeoJson } from './write-geojson.ts';

const text = (...features: OutFeature[]) => [...writeGeoJson(features)].join('');
const only = (geometry: LonLatGeometry) => JSON.parse(text({ geometry, properties: {} })).features[0].geometry;
const flat = (...numbers: number[]) => Float64Array.from(numbers);

// Clauses of RFC 7946 (Butler et al. 2016), section numbers as in our references.
describe('RFC 7946', () => {
  const shell = [0, 0, 0, 3, 3, 3, 3, 0]; // clockwise
  const hole = [1, 1, 2, 1, 2, 2, 1, 2]; // counter-clockwise

  test('3.1.6: rings are closed, shells counter-clockwise, holes clockwise', () => {
    const { type, coordinates } = only({ kind: 'area', polygons: [[flat(...shell), flat(...hole)]] });
    expect(type).toBe('Polygon');
    const areas = coordinates.map((ring: number[][]) => signedArea(Float64Array.from(ring.flat())));
    expect(areas).toEqual([9, -1]);
    for (const ring of coordinates) {
      expect(ring.length).toBeGreaterThanOrEqual(4);
      expect(ring[0]).toEqual(ring.at(-1));
    }
  });

  test('3.1: one part is written as the single type, several as the Multi type, none as null', () => {
    expect(only({ kind: 'point', points: flat(1, 2) })).toEqual({ type: 'Point', coordinates: [1, 2] });
    expect(only({ kind: 'point', points: flat(1, 2, 3, 4) }).type).toBe('MultiPoint');
    expect(only({ kind: 'line', lines: [flat(1, 2, 3, 4), flat(1, 2, 3, 4)] }).type).toBe('MultiLineString');
    expect(only({ kind: 'area', polygons: [[flat(...shell)], [flat(...shell)]] }).type).toBe('MultiPolygon');
    expect(only({ kind: 'none' })).toBeNull();
  });

  test('4: no crs member; 3.3: a FeatureCollection even when empty', () => {
    expect(JSON.parse(text())).toEqual({ type: 'FeatureCollection', features: [] });
  });

  // Vector "precision": 1e-6° is 0.111320 m, so the ninth decimal is 0.1 mm.
  test('11.2: coordinates are cut to 9 decimals', () => {
    expect(only({ kind: 'point', points: flat(13.123456789123, -1e-12) }).coordinates).toEqual([13.123456789, 0]);
    expect(text({ geometry: { kind: 'point', points: flat(-1e-12, 0) }, properties: {} })).not.toContain('-0');
  });

  test('3.1.4, 3.1.6: lines and rings too short to be valid are left out', () => {
    expect(only({ kind: 'line', lines: [flat(1, 2)] })).toBeNull();
    expect(only({ kind: 'area', polygons: [[flat(1, 2, 3, 4)]] })).toBeNull();
    expect(only({ kind: 'area', polygons: [[flat(...shell), flat(1, 2, 3, 4)]] }).coordinates).toHaveLength(1);
    expect(only({ kind: 'line', lines: [flat(1, 2, NaN, 4)] })).toBeNull();
  });
});

test('one feature a line, properties in their order, numbers that are none as null', () => {
  const feature = { geometry: { kind: 'none' }, properties: { b: 1, a: Number.NaN, c: undefined } } as const;
  expect(text(feature, feature)).toBe(
    '{"type":"FeatureCollection","features":[\n' +
      '{"type":"Feature","properties":{"b":1,"a":null},"geometry":null},\n' +
      '{"type":"Feature","properties":{"b":1,"a":null},"geometry":null}\n]}\n',
  );
});
