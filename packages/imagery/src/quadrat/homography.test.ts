import { wilsonInterval } from '@crownfall/statistics';
import { describe, expect, test } from 'vitest';
import { countedShare, gridPoints } from './counted-share.ts';
import { groundToPhoto, inverseOf, pixelsPerMetre, projected } from './homography.ts';
import type { PhotoPoint, QuadratFrame } from './photo.ts';

/** A pinhole at (0.2, −0.6, 1.1) m, looking down by 60°, focal length 900 px: closed form, no four corners needed. */
function camera(x: number, y: number): PhotoPoint {
  const [sin, cos] = [Math.sin(Math.PI / 3), Math.cos(Math.PI / 3)];
  const [dx, dy, dz] = [x - 0.2, y + 0.6, -1.1];
  const depth = dy * cos - dz * sin;
  return [400 + (900 * dx) / depth, 300 - (900 * (dy * sin + dz * cos)) / depth];
}

const frame: QuadratFrame = {
  corners: [camera(0, 0.4), camera(0.5, 0.4), camera(0.5, 0), camera(0, 0)],
  widthM: 0.5,
  heightM: 0.4,
};

describe('ground to photo from four corners', () => {
  const map = groundToPhoto(frame);
  if (map === null) throw new Error('not convex');

  test('every other point lies where a camera built from its pose puts it, and comes back', () => {
    for (const [x, y] of [
      [0.1, 0.1],
      [0.25, 0.2],
      [0.44, 0.37],
      [-0.2, 0.6],
    ] as const) {
      const [u, v, w] = projected(map, x, y);
      const seen = camera(x, 0.4 - y);
      expect([u, v]).toEqual([expect.closeTo(seen[0], 8), expect.closeTo(seen[1], 8)]);
      const [bx, by, bw] = projected(inverseOf(map), u, v);
      expect([bx, by, bw > 0, w > 0]).toEqual([expect.closeTo(x, 10), expect.closeTo(y, 10), true, true]);
    }
  });

  test('pixels per metre agree with small steps on the ground', () => {
    const { least, most } = pixelsPerMetre(map, 0.2, 0.1);
    const [u, v] = projected(map, 0.2, 0.1);
    const steps = Array.from({ length: 360 }, (_, k) => {
      const [a, b] = projected(map, 0.2 + 1e-6 * Math.cos(k / 57.3), 0.1 + 1e-6 * Math.sin(k / 57.3));
      return Math.hypot(a - u, b - v) / 1e-6;
    });
    expect(Math.min(...steps) / least).toBeCloseTo(1, 3);
    expect(Math.max(...steps) / most).toBeCloseTo(1, 3);
  });

  test('grid points are the middles of equal parts of the ground, not of the photo', () => {
    const points = gridPoints(frame, 2, 2);
    expect(points).toHaveLength(4);
    expect(points[0]).toEqual([expect.closeTo(camera(0.125, 0.3)[0], 8), expect.closeTo(camera(0.125, 0.3)[1], 8)]);
    expect(() => gridPoints(frame, 0, 2)).toThrow(RangeError);
    expect(
      gridPoints(
        {
          ...frame,
          corners: [
            [0, 0],
            [1, 1],
            [2, 2],
            [3, 3],
          ],
        },
        2,
        2,
      ),
    ).toEqual([]);
  });

  test("counted points give Wilson's interval (Newcombe 1998, table I, method 3: 81 of 263 is 0.2553 to 0.3662)", () => {
    const counted = countedShare(81, 263);
    if (!counted.defined) throw new Error(counted.reason);
    expect(counted.value.share).toBeCloseTo(0.308, 3);
    expect(counted.value.interval.lower).toBeCloseTo(0.2553, 4);
    expect(counted.value.interval.upper).toBeCloseTo(0.3662, 4);
    expect(countedShare(0, 0)).toEqual(wilsonInterval(0, 0));
  });
});
