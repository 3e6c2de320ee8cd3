import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pathText } from './svg-path.ts';

test('a rectangle takes the shortest words', () => {
  expect(pathText(Float64Array.of(0.5, 0, 10, 0, 10, 5, 0.5, 5), true)).toBe('M.5 0h9.5v5h-9.5z');
});

test('nothing without an extent', () => {
  expect(pathText(new Float64Array(0), true)).toBe('');
  expect(pathText(Float64Array.of(1, 1, 1.001, 1.001, 1, 1), true)).toBe('');
});

test('no vertex left out lies farther from the path than the eye sees', () => {
  const number = fc.double({ min: 0, max: 20, noNaN: true });
  fc.assert(
    fc.property(fc.array(fc.tuple(number, number), { minLength: 2, maxLength: 40 }), (vertices) => {
      const kept = verticesOf(pathText(Float64Array.from(vertices.flat()), false));
      fc.pre(kept.length > 1);
      // 0.025 mm of thinning, and rounding to 0.01 mm in both coordinates.
      for (const vertex of vertices) expect(distanceToLine(kept, vertex)).toBeLessThan(0.025 + 0.01);
    }),
    { seed: 5, numRuns: 200 },
  );
});

function verticesOf(path: string): readonly (readonly [number, number])[] {
  let [x, y] = [0, 0];
  return [...path.matchAll(/([Mlhv])([-\d. ]+)/g)].map(([, command, numbers]) => {
    const [a, b] = (numbers.match(/-?\d*\.?\d+/g) ?? []).map(Number);
    if (command === 'M') [x, y] = [a, b];
    else if (command === 'h') x += a;
    else if (command === 'v') y += a;
    else [x, y] = [x + a, y + b];
    return [x, y] as const;
  });
}

function distanceToLine(line: readonly (readonly [number, number])[], [px, py]: readonly [number, number]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 1 < line.length; i++) {
    const [[ax, ay], [bx, by]] = [line[i], line[i + 1]];
    const length = (bx - ax) ** 2 + (by - ay) ** 2;
    const t = length === 0 ? 0 : Math.max(0, Math.min(1, ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / length));
    least = Math.min(least, Math.hypot(ax + t * (bx - ax) - px, ay + t * (by - ay) - py));
  }
  return least;
}
