import { bboxPolygon, booleanDisjoint, feature } from '@turf/turf';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type GeoJsonGeometry, meetsBox } from './meets-box.ts';

/** A grid of whole numbers: touching, lying in a row and running through corners happen all the time. */
const at = fc.integer({ min: 0, max: 6 });
const position = fc.tuple(at, at);
const triangle = fc
  .tuple(position, position, position)
  .filter(([[ax, ay], [bx, by], [cx, cy]]) => (bx - ax) * (cy - ay) !== (by - ay) * (cx - ax))
  .map(([a, b, c]) => ({ type: 'Polygon', coordinates: [[a, b, c, a]] }));
const line = fc
  .array(position, { minLength: 2, maxLength: 4 })
  .map((coordinates) => ({ type: 'LineString', coordinates }));
const point = position.map((coordinates) => ({ type: 'Point', coordinates }));
const box = fc
  .tuple(at, at, fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 }))
  .map(([x, y, width, height]) => [x, y, x + width, y + height] as const);

describe('geometries and boxes', () => {
  test('agrees with Turf 7.4 (booleanDisjoint)', () => {
    fc.assert(
      fc.property(fc.oneof(triangle, line, point), box, (geometry, [west, south, east, north]) => {
        const apart = booleanDisjoint(feature(geometry as GeoJSON.Geometry), bboxPolygon([west, south, east, north]));
        expect(meetsBox(geometry as GeoJsonGeometry, [west, south, east, north])).toBe(!apart);
      }),
      { numRuns: 2000 },
    );
  });

  test('a box inside a hole does not meet the polygon, one inside its ring does', () => {
    const outer = [
      [0, 0],
      [9, 0],
      [9, 9],
      [0, 9],
      [0, 0],
    ];
    const hole = [
      [3, 3],
      [3, 6],
      [6, 6],
      [6, 3],
      [3, 3],
    ];
    const holed = { type: 'Polygon', coordinates: [outer, hole] };
    expect(meetsBox(holed, [4, 4, 5, 5])).toBe(false);
    expect(meetsBox(holed, [1, 1, 2, 2])).toBe(true);
    expect(meetsBox({ type: 'MultiPolygon', coordinates: [holed.coordinates] }, [4, 4, 5, 5])).toBe(false);
  });
});
