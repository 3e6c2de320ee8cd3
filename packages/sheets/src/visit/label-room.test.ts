import { describe, expect, test } from 'vitest';
import { labelRoom, overlaps } from './label-room.ts';

const box = (x: number, y: number, wide: number, high: number, turnDeg = 0): Float64Array => {
  const turn = (turnDeg * Math.PI) / 180;
  const corners = [-wide / 2, -high / 2, wide / 2, -high / 2, wide / 2, high / 2, -wide / 2, high / 2];
  return Float64Array.from(corners, (_, i) => {
    const [dx, dy] = [corners[i - (i % 2)], corners[i - (i % 2) + 1]];
    return i % 2 === 0 ? x + dx * Math.cos(turn) - dy * Math.sin(turn) : y + dx * Math.sin(turn) + dy * Math.cos(turn);
  });
};

describe('rooms', () => {
  test('upright ones overlap when both their extents do', () => {
    expect(overlaps(box(0, 0, 2, 2), box(1.9, 0, 2, 2))).toBe(true);
    expect(overlaps(box(0, 0, 2, 2), box(2, 0, 2, 2))).toBe(false);
    expect(overlaps(box(0, 0, 2, 2), box(1.9, 2.1, 2, 2))).toBe(false);
  });

  test('turned ones do not overlap just because their upright boxes do', () => {
    // Two parallel strips at 45°, their middles √2 / 2 · 3 = 2.12 apart across, each 2 wide.
    expect(overlaps(box(0, 0, 20, 2, 45), box(3, 0, 20, 2, 45))).toBe(false);
    expect(overlaps(box(0, 0, 20, 2, 45), box(2.7, 0, 20, 2, 45))).toBe(true);
    expect(overlaps(box(0, 0, 20, 2, 45), box(0, 0, 20, 2, -45))).toBe(true);
  });

  test('are free inside the frame only, until taken', () => {
    const room = labelRoom(10, 10);
    expect(room.isFree(box(1, 5, 4, 2))).toBe(false);
    expect(room.isFree(box(5, 5, 4, 2))).toBe(true);
    room.take(box(5, 5, 4, 2));
    expect(room.isFree(box(6, 5, 4, 2))).toBe(false);
  });
});
