import type { LonLatGeometry } from '@crownfall/geometry';
import { bboxPolygon, booleanIntersects } from '@turf/turf';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { geometryToJson } from '../../geojson/geometry-to-json.ts';
import { geometryMeetsBox } from './geometry-meets-box.ts';

const line = (...flat: number[]): LonLatGeometry => ({ kind: 'line', lines: [Float64Array.from(flat)] });
const area = (...rings: number[][]): LonLatGeometry => ({
  kind: 'area',
  polygons: [rings.map((ring) => Float64Array.from(ring))],
});
const WITH_HOLE = area([0, 0, 9, 0, 9, 9, 0, 9], [3, 3, 3, 6, 6, 6, 6, 3]);

describe('by hand', () => {
  test.each<[string, LonLatGeometry, readonly [number, number, number, number], boolean]>([
    ['a point on a corner', { kind: 'point', points: Float64Array.of(1, 2) }, [0, 0, 1, 2], true],
    ['a point outside', { kind: 'point', points: Float64Array.of(1, 2.1) }, [0, 0, 1, 2], false],
    ['a line across, no vertex inside', line(-1, 0.5, 2, 0.7), [0, 0, 1, 1], true],
    ['a line past a corner', line(-1, 0.5, 0.5, 2), [0, 0, 1, 1], false],
    ['a line along an edge', line(1, -5, 1, 5), [0, 0, 1, 1], true],
    ['a box inside an area', WITH_HOLE, [1, 1, 2, 2], true],
    ['a box inside a hole', WITH_HOLE, [4, 4, 5, 5], false],
    ['a box over a hole and its rim', WITH_HOLE, [4, 4, 7, 5], true],
    ['an area inside a box', WITH_HOLE, [-1, -1, 10, 10], true],
    ['the closing edge counts', area([0, 0, 4, 0, 4, 4]), [1, 1, 1.5, 3], true],
    ['a box of no size', WITH_HOLE, [2, 2, 2, 2], true],
    ['nothing', { kind: 'none' }, [-180, -90, 180, 90], false],
    ['across the 180th meridian, west of it', line(179, 0, 179.5, 0), [178, -1, -178, 1], true],
    ['across the 180th meridian, far from it', line(0, 0, 1, 0), [178, -1, -178, 1], false],
  ])('%s', (_, geometry, box, meets) => expect(geometryMeetsBox(geometry, box)).toBe(meets));
});

test('it says what turf 7 says of stars and boxes at random', () => {
  const star = fc.array(fc.double({ min: 0.5, max: 4, noNaN: true }), { minLength: 3, maxLength: 9 }).map((radii) => {
    const ring = radii.flatMap((radius, i) => {
      const turn = (2 * Math.PI * i) / radii.length;
      return [radius * Math.cos(turn), radius * Math.sin(turn)];
    });
    return area(ring);
  });
  // Whole thousandths: doubles at large would be drawn around zero, where every box meets.
  const thousandths = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 1000);
  const box = fc.tuple(thousandths(-5000, 5000), thousandths(-5000, 5000), thousandths(1, 2000), thousandths(1, 2000));
  let met = 0;
  let asked = 0;
  fc.assert(
    fc.property(star, box, (geometry, [west, south, width, height]) => {
      const edges = [west, south, west + width, south + height] as const;
      const json = geometryToJson(geometry, (value) => value) as GeoJSON.Polygon;
      const ours = geometryMeetsBox(geometry, edges);
      asked++;
      if (ours) met++;
      expect(ours).toBe(booleanIntersects(json, bboxPolygon([...edges])));
    }),
    { numRuns: 2000 },
  );
  // Neither answer may be so rare that the other is right by chance.
  expect(met / asked).toBeGreaterThan(0.2);
  expect(met / asked).toBeLessThan(0.9);
});
