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

/** Whether no two pieces cross and no node lies inside a piece, by whole-number arithmetic. */
function isPlanar(segments: number[]): boolean {
  const all = pieces(segments).map((piece) => piece.map(BigInt));
  const side = ([ax, ay, bx, by]: bigint[], x: bigint, y: bigint) => {
    const cross = (bx - ax) * (y - ay) - (by - ay) * (x - ax);
    return cross > 0n ? 1 : cross < 0n ? -1 : 0;
  };
  const within = ([ax, ay, bx, by]: bigint[], x: bigint, y: bigint) =>
    (x - ax) * (x - bx) <= 0n && (y - ay) * (y - by) <= 0n && !(x === ax && y === ay) && !(x === bx && y === by);
  return all.every((p) =>
    all.every((q) => {
      const [a, b] = [side(p, q[0], q[1]), side(p, q[2], q[3])];
      if ((a === 0 && within(p, q[0], q[1])) || (b === 0 && within(p, q[2], q[3]))) return false;
      return a * b >= 0 || side(q, p[0], p[1]) * side(q, p[2], p[3]) >= 0;
    }),
  );
}

describe('crossings half-way between two cells', () => {
  test('the diagonals of a square of odd side', () => {
    const d = 2748779;
    expect(pieces([0, 0, d, d, d, 0, 0, d])).toHaveLength(4);
    expect(pieces([0, 0, -d, -d, -d, 0, 0, -d])).toHaveLength(4);
  });

  test.each([
    [6, 0],
    [15, 0],
    [15, 2 ** 42],
    [2 ** 21, 2 ** 42],
    [2 ** 42, 0],
  ])('random segments in %d cells, shifted by %d', (extent, shift) => {
    let state = extent % 1000;
    const next = () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return Math.floor((state / 2 ** 32) * extent) - Math.floor(extent / 2) + shift;
    };
    for (let round = 0; round < 400; round++) {
      // The second of each two is the first mirrored, so that they cross at halves of whole numbers.
      const segments = [0, 1, 2].flatMap(() => {
        const [x0, y0, x1, y1] = [next(), next(), next(), next()];
        return [x0, y0, x1, y1, x1, y0, x0, y1];
      });
      expect(isPlanar(segments), segments.join()).toBe(true);
    }
  });
});
