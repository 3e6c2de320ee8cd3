import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reversed, signedArea } from '../ring.ts';
import { CoverageWorkspace, pixelCoverage, pixelSpans } from './pixel-coverage.ts';

const ring = (...xy: number[]) => Float64Array.of(...xy);
const total = (weights: Float64Array) => weights.reduce((sum, weight) => sum + weight, 0);
const GRID = { width: 40, height: 40 };
/** The issue's own bound; what is measured is about 1e-14. */
const AREA_TOLERANCE = 1e-9;

/** A star-shaped ring with n vertices about (cx, cy). */
function star(cx: number, cy: number, radii: readonly number[], turn = 0): Float64Array {
  return Float64Array.from(
    radii.flatMap((r, i) => {
      const angle = turn + (2 * Math.PI * i) / radii.length;
      return [cx + r * Math.cos(angle), cy + r * Math.sin(angle)];
    }),
  );
}

describe('closed forms', () => {
  test('a rectangle between pixel borders', () => {
    const { pixels, weights } = pixelCoverage([ring(0.5, 0.25, 2, 0.25, 2, 1.75, 0.5, 1.75)], { width: 4, height: 3 });
    expect(Array.from(pixels)).toEqual([0, 1, 4, 5]);
    expect(Array.from(weights)).toEqual([0.375, 0.75, 0.375, 0.75]);
  });

  test('edges on pixel borders touch nothing beyond them', () => {
    const { pixels, weights } = pixelCoverage([ring(1, 1, 3, 1, 3, 2, 1, 2)], GRID);
    expect(Array.from(pixels)).toEqual([41, 42]);
    expect(Array.from(weights)).toEqual([1, 1]);
  });

  test('a diagonal halves the pixels it runs through, and sixteenths come out exact', () => {
    const half = pixelCoverage([ring(0, 0, 2, 2, 0, 2)], GRID);
    expect(Array.from(half.weights)).toEqual([0.5, 1, 0.5]);
    // A line from (0, 0) to (4, 1): pixel k is covered below it by (2 k + 1) / 8.
    const slope = pixelCoverage([ring(0, 0, 4, 1, 4, 0)], GRID);
    expect(Array.from(slope.weights)).toEqual([1 / 8, 3 / 8, 5 / 8, 7 / 8]);
  });

  test('the pixels of a circle approach π r²; its inscribed polygon is met exactly', () => {
    const n = 720;
    const { weights } = pixelCoverage([star(20, 20, Array<number>(n).fill(10))], GRID);
    // Area of a regular n-gon: ½ n r² sin(2π/n).
    expect(Math.abs(total(weights) / (0.5 * n * 100 * Math.sin((2 * Math.PI) / n)) - 1)).toBeLessThan(1e-13);
  });

  test('either orientation, and holes either way round', () => {
    const shell = ring(2, 2, 12, 2, 12, 12, 2, 12);
    const hole = ring(4, 4, 4, 10, 10, 10, 10, 4);
    expect(total(pixelCoverage([shell, hole], GRID).weights)).toBe(64);
    expect(total(pixelCoverage([reversed(shell), reversed(hole)], GRID).weights)).toBe(64);
  });
});

describe('the non-zero winding rule', () => {
  test('two shells that overlap count once, nested shells too', () => {
    const a = ring(1, 1, 5, 1, 5, 5, 1, 5);
    const b = ring(3.5, 3.5, 7.5, 3.5, 7.5, 7.5, 3.5, 7.5);
    expect(total(pixelCoverage([a, b], GRID).weights)).toBeCloseTo(16 + 16 - 2.25, 9);
    expect(total(pixelCoverage([a, ring(2, 2, 3, 2, 3, 3, 2, 3)], GRID).weights)).toBeCloseTo(16, 9);
  });

  test('a figure of eight has both of its halves, a doubled ring its area once', () => {
    expect(total(pixelCoverage([ring(0, 0, 4, 4, 4, 0, 0, 4)], GRID).weights)).toBeCloseTo(8, 9);
    expect(total(pixelCoverage([ring(1, 1, 4, 1, 4, 4, 1, 4, 1, 1, 4, 1, 4, 4, 1, 4)], GRID).weights)).toBeCloseTo(
      9,
      9,
    );
  });

  test('shells that share an edge or a corner', () => {
    const rings = [ring(1, 1, 3, 1, 3, 3, 1, 3), ring(3, 1, 5, 1, 5, 3, 3, 3), ring(5, 3, 6, 3, 6, 4, 5, 4)];
    expect(total(pixelCoverage(rings, GRID).weights)).toBeCloseTo(9, 9);
  });
});

describe('what is outside the grid', () => {
  test('is left out on every side', () => {
    const { pixels, weights } = pixelCoverage([ring(-5, -5, 50, -5, 50, 50, -5, 50)], { width: 3, height: 2 });
    expect(Array.from(pixels)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(total(weights)).toBe(6);
    expect(pixelCoverage([ring(-5, 0, -1, 0, -1, 3)], GRID).pixels.length).toBe(0);
    // The part of a triangle with x > 0: legs 3 and 3 where it once had 4 and 4.
    expect(total(pixelCoverage([ring(-1, 0, 3, 0, -1, 4)], GRID).weights)).toBeCloseTo(4.5, 12);
    // Its part with x < 2 alone, in a grid two pixels wide.
    expect(total(pixelCoverage([ring(0, 0, 4, 0, 0, 4)], { width: 2, height: 9 }).weights)).toBeCloseTo(6, 12);
  });

  test('nothing gives nothing', () => {
    expect(pixelCoverage([], GRID).pixels.length).toBe(0);
    expect(pixelCoverage([ring(1, 1, 2, 2)], GRID).pixels.length).toBe(0);
    expect(pixelCoverage([ring(Number.NaN, 1, 2, 2, 1, 2)], GRID).pixels.length).toBe(0);
    expect(() => pixelCoverage([], { width: 1.5, height: 2 })).toThrow('got 1.5 × 2');
  });
});

describe('random polygons with holes', () => {
  const radius = fc.double({ min: 4, max: 9, noNaN: true });
  const holeRadius = fc.double({ min: 0.3, max: 1.4, noNaN: true });
  const middle = fc.double({ min: 12, max: 28, noNaN: true });
  const shape = fc.record({
    cx: middle,
    cy: middle,
    outer: fc.array(radius, { minLength: 8, maxLength: 60 }),
    holes: fc.array(fc.array(holeRadius, { minLength: 3, maxLength: 9 }), { maxLength: 2 }),
  });
  /** Radii of at least 4 with at least 8 vertices keep 4 · cos(π/8) = 3.7 free: holes at ±1.7 reach 3.1. */
  const regionOf = ({ cx, cy, outer, holes }: { cx: number; cy: number; outer: number[]; holes: number[][] }) => [
    star(cx, cy, outer),
    ...holes.map((radii, i) => reversed(star(cx + (i === 0 ? -1.7 : 1.7), cy, radii, 0.3))),
  ];

  test('cover their area', () => {
    fc.assert(
      fc.property(shape, (s) => {
        const region = regionOf(s);
        const area = region.reduce((sum, r) => sum + signedArea(r), 0);
        const { weights } = pixelCoverage(region, GRID);
        expect(Math.abs(total(weights) / area - 1)).toBeLessThan(AREA_TOLERANCE);
        expect(Math.max(...weights)).toBeLessThanOrEqual(1);
      }),
      { seed: 41, numRuns: 300 },
    );
  });

  test('are the same as runs, and with arrays used again', () => {
    const workspace = new CoverageWorkspace();
    fc.assert(
      fc.property(shape, (s) => {
        const region = regionOf(s);
        const one = pixelCoverage(region, GRID);
        const again = pixelCoverage(region, GRID, workspace);
        expect([Array.from(again.pixels), Array.from(again.weights)]).toEqual([
          Array.from(one.pixels),
          Array.from(one.weights),
        ]);
        const { pixels, weights, spans } = pixelSpans(region, GRID, workspace);
        const shares = new Map(Array.from(pixels, (pixel, i) => [pixel, weights[i]]));
        for (let i = 0; i < spans.length; i += 2) {
          for (let pixel = spans[i]; pixel < spans[i + 1]; pixel++) shares.set(pixel, 1);
        }
        expect([...shares].sort((a, b) => a[0] - b[0])).toEqual(Array.from(one.pixels, (p, i) => [p, one.weights[i]]));
      }),
      { seed: 43, numRuns: 100 },
    );
  });

  test('agree with brute-force supersampling', () => {
    const side = 64;
    fc.assert(
      fc.property(shape, (s) => {
        const region = regionOf(s);
        const { pixels, weights } = pixelCoverage(region, GRID);
        const share = new Map(Array.from(pixels, (pixel, i) => [pixel, weights[i]]));
        for (let row = 4; row < 36; row += 5) {
          for (let column = 4; column < 36; column += 5) {
            let hits = 0;
            for (let i = 0; i < side * side; i++) {
              const x = column + ((i % side) + 0.5) / side;
              const y = row + (Math.floor(i / side) + 0.5) / side;
              if (isInside(region, x, y)) hits++;
            }
            // Wrong samples lie along the edges through the pixel: a few per row of samples.
            expect(Math.abs(hits / side ** 2 - (share.get(row * GRID.width + column) ?? 0))).toBeLessThan(6 / side);
          }
        }
      }),
      { seed: 42, numRuns: 25 },
    );
  });
});

/** Even-odd by ray casting: the same as non-zero for shells with holes. */
function isInside(region: readonly Float64Array[], x: number, y: number): boolean {
  let inside = false;
  for (const r of region) {
    for (let i = 0, j = r.length - 2; i < r.length; j = i, i += 2) {
      if (r[i + 1] > y !== r[j + 1] > y && x < ((r[j] - r[i]) * (y - r[i + 1])) / (r[j + 1] - r[i + 1]) + r[i])
        inside = !inside;
    }
  }
  return inside;
}
