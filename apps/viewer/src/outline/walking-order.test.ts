import { describe, expect, test } from 'vitest';
import type { Position } from './sketch.ts';
import { walkingOrder } from './walking-order.ts';

describe('the walking order', () => {
  test('goes round a block and does not cross it', () => {
    // Eight trees round a square; the shortest open walk leaves out one side: 7 sides (closed form).
    const ring: Position[] = [
      [0, 2],
      [2, 0],
      [1, 2],
      [0, 0],
      [2, 2],
      [1, 0],
      [0, 1],
      [2, 1],
    ];
    const order = walkingOrder(ring);
    const steps = order.slice(1).map((to, i) => {
      const [a, b] = [ring[order[i]], ring[to]];
      return Math.hypot(a[0] - b[0], a[1] - b[1]);
    });
    expect(steps.reduce((sum, step) => sum + step, 0)).toBeCloseTo(7, 9);
    expect(new Set(order).size).toBe(8);
  });

  test('few trees, and the same trees twice, are no trouble', () => {
    expect(walkingOrder([])).toEqual([]);
    expect(
      walkingOrder([
        [0, 0],
        [1, 1],
      ]),
    ).toEqual([0, 1]);
    expect(
      walkingOrder([
        [1, 1],
        [1, 1],
        [1, 1],
      ]).length,
    ).toBe(3);
  });
});
