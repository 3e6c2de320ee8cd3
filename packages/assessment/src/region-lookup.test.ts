import { describe, expect, test } from 'vitest';
import { distanceTo, holdsPoint, RegionLookup } from './region-lookup.ts';

const square = (x: number, y: number, side: number) =>
  Float64Array.of(x, y, x + side, y, x + side, y + side, x, y + side);
const hole = (x: number, y: number, side: number) =>
  Float64Array.of(x, y, x, y + side, x + side, y + side, x + side, y);
const ringed = [square(0, 0, 10), hole(4, 4, 2)];

describe('point in region', () => {
  // Closed form: squares with a square hole.
  test('inside, in the hole, outside', () => {
    expect(holdsPoint(ringed, 1, 1)).toBe(true);
    expect(holdsPoint(ringed, 5, 5)).toBe(false);
    expect(holdsPoint(ringed, 11, 1)).toBe(false);
    expect(holdsPoint([], 0, 0)).toBe(false);
  });

  test('overlapping shells still hold the point (non-zero winding)', () => {
    expect(holdsPoint([square(0, 0, 10), square(2, 2, 4)], 3, 3)).toBe(true);
  });

  test('a point on a border between two squares is in exactly one of them', () => {
    for (const [x, y] of [
      [10, 3],
      [10, 0],
      [3, 10],
    ]) {
      const holders = [square(0, 0, 10), square(10, 0, 10), square(0, 10, 10), square(0, -10, 10), square(10, -10, 10)];
      expect(holders.filter((ring) => holdsPoint([ring], x, y))).toHaveLength(1);
    }
  });

  test('distance to the border, 0 inside, from the hole to its rim', () => {
    expect(distanceTo(ringed, 13, 14)).toBe(5);
    expect(distanceTo(ringed, 5, -3)).toBe(3);
    expect(distanceTo(ringed, 5, 5)).toBe(1);
    expect(distanceTo(ringed, 1, 1)).toBe(0);
    expect(distanceTo([], 1, 1)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('lookup', () => {
  const lookup = new RegionLookup([[square(0, 0, 10)], [square(5, 0, 10)], [square(30, 0, 10)], []]);

  test('the first listed holder wins', () => {
    expect(lookup.holding(7, 5)).toBe(0);
    expect(lookup.holding(12, 5)).toBe(1);
    expect(lookup.holding(20, 5)).toBe(-1);
  });

  test('nearest within reach', () => {
    expect(lookup.holdingOrNearest(18, 5, 25)).toBe(1);
    expect(lookup.holdingOrNearest(24, 5, 25)).toBe(2);
    expect(lookup.holdingOrNearest(18, 5, 2)).toBe(-1);
    expect(lookup.within(20, 5, 5)).toEqual([{ region: 1, distanceM: 5 }]);
  });

  test('an index over nothing finds nothing', () => {
    expect(new RegionLookup([]).holdingOrNearest(0, 0, 1e9)).toBe(-1);
  });
});
