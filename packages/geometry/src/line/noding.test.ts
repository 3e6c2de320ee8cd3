import { describe, expect, test } from 'vitest';
import { nodedLines } from './noding.ts';

const pieces = (segments: number[]) => {
  const noded = nodedLines(Float64Array.from(segments));
  return Array.from(noded.from, (a, e) => [noded.x[a], noded.y[a], noded.x[noded.to[e]], noded.y[noded.to[e]]]);
};

describe('line work is cut where it meets', () => {
  test('two segments that cross share the crossing', () => {
    expect(pieces([0, 0, 10, 10, 0, 10, 10, 0])).toEqual([
      [0, 0, 5, 5],
      [5, 5, 10, 10],
      [0, 10, 5, 5],
      [5, 5, 10, 0],
    ]);
  });

  test('an end on a segment cuts it, also when a segment of no length vanishes beside it', () => {
    expect(pieces([3, 7, 3, 7, 0, 0, 10, 0, 4, 0, 4, 9])).toEqual([
      [0, 0, 4, 0],
      [4, 0, 10, 0],
      [4, 0, 4, 9],
    ]);
  });

  test('overlapping stretches become the same pieces', () => {
    expect(pieces([0, 0, 6, 0, 3, 0, 9, 0])).toEqual([
      [0, 0, 3, 0],
      [3, 0, 6, 0],
      [3, 0, 6, 0],
      [6, 0, 9, 0],
    ]);
  });

  test('nothing in, nothing out', () => {
    expect(pieces([])).toEqual([]);
    expect(pieces([1, 1, 1, 1])).toEqual([]);
  });
});
