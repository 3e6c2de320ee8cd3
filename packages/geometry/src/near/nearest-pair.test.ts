import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearestPair } from './nearest-pair.ts';

const square = (x: number, y: number, side: number) =>
  Float64Array.of(x, y, x + side, y, x + side, y + side, x, y + side, x, y);

describe('nearestPair', () => {
  test('point to edge, corner to corner, worked by hand', () => {
    expect(nearestPair([Float64Array.of(3, 5)], [square(0, 0, 4)])).toEqual({ from: [3, 5], to: [3, 4], distanceM: 1 });
    expect(nearestPair([square(0, 0, 1)], [square(4, 5, 1)])).toEqual({ from: [1, 1], to: [4, 5], distanceM: 5 });
  });

  test('a line between two points far apart passes nearer than either', () => {
    const pair = nearestPair([Float64Array.of(0, 2)], [Float64Array.of(-100, 0, 100, 0)]);
    expect(pair).toEqual({ from: [0, 2], to: [0, 0], distanceM: 2 });
  });

  test('nothing is near nothing', () => {
    expect(nearestPair([], [square(0, 0, 1)])).toBeNull();
    expect(nearestPair([square(0, 0, 1)], [])).toBeNull();
  });

  test('law: exchanging the two exchanges the ends; the ends are as far apart as said', () => {
    const place = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(place, place, place, place, (x, y, u, v) => {
        const [a, b] = [[square(x, y, 3)], [square(u, v, 7)]];
        const [there, back] = [nearestPair(a, b), nearestPair(b, a)];
        expect(back?.distanceM).toBeCloseTo(there?.distanceM ?? Number.NaN, 9);
        if (there === null) return;
        expect(Math.hypot(there.to[0] - there.from[0], there.to[1] - there.from[1])).toBeCloseTo(there.distanceM, 9);
      }),
      { seed: 5, numRuns: 200 },
    );
  });
});
