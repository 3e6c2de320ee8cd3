/**
 * The drift-ring offset against its definition: a point belongs to it exactly when it lies within the distance of the region.
 * The oracle measures distance and containment point by point and shares no code with the offset.
 */
import {
  cleanRegion,
  offsetRegion,
  type Region,
  regionArea,
  reversed,
  translated,
  widenLine,
} from '@crownfall/geometry';
import fc from 'fast-check';
import { union } from 'polyclip-ts';
import { describe, expect, test } from 'vitest';

const TOLERANCE_M = 0.01;
/** Rounding of coordinates of tens of metres, and of the 1 µm grid on which crossing rings are resolved. */
const ROUNDING_M = 3e-6;
/** Area that the rounding of vertices can move along a few hundred metres of border. */
const AREA_ROUNDING_M2 = 1e-3;

function winding(region: Region, x: number, y: number): number {
  let turns = 0;
  for (const ring of region) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [ax, ay, bx, by] = [ring[j] - x, ring[j + 1] - y, ring[i] - x, ring[i + 1] - y];
      if (ay <= 0 && by > 0 && ax * by - ay * bx > 0) turns++;
      else if (by <= 0 && ay > 0 && ax * by - ay * bx < 0) turns--;
    }
  }
  return turns;
}

function distanceToSegments(lines: readonly Float64Array[], isClosed: boolean, x: number, y: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (const line of lines) {
    for (let i = isClosed ? 0 : 2; i < line.length; i += 2) {
      const j = i === 0 ? line.length - 2 : i - 2;
      const [ax, ay, dx, dy] = [line[j], line[j + 1], line[i] - line[j], line[i + 1] - line[j + 1]];
      const square = dx * dx + dy * dy;
      const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square));
      best = Math.min(best, Math.hypot(x - ax - t * dx, y - ay - t * dy));
    }
  }
  return best;
}

/** 0 inside. */
function distanceToRegion(region: Region, x: number, y: number): number {
  return winding(region, x, y) !== 0 ? 0 : distanceToSegments(region, true, x, y);
}

function boundsOf(lines: readonly Float64Array[], marginM: number): [number, number, number, number] {
  const all = lines.flatMap((line) => [...line]);
  const xs = all.filter((_, i) => i % 2 === 0);
  const ys = all.filter((_, i) => i % 2 === 1);
  return [Math.min(...xs) - marginM, Math.min(...ys) - marginM, Math.max(...xs) + marginM, Math.max(...ys) + marginM];
}

/** A low-discrepancy lattice: the same points on every run, none of them on a grid line. */
function sampled(box: readonly [number, number, number, number], count: number): [number, number][] {
  return Array.from({ length: count }, (_, i) => [
    box[0] + ((i * 0.7548776662466927 + 0.5) % 1) * (box[2] - box[0]),
    box[1] + ((i * 0.5698402909980532 + 0.5) % 1) * (box[3] - box[1]),
  ]);
}

function expectOffset(
  result: Region,
  distance: (x: number, y: number) => number,
  at: { deltaM: number; lines: Region },
): void {
  for (const [x, y] of sampled(boundsOf(at.lines, 1.3 * at.deltaM + 0.1), 400)) {
    const away = distance(x, y);
    const turns = winding(result, x, y);
    if (turns < 0) expect.fail(`winding ${turns} at ${x}, ${y}`);
    if (away <= at.deltaM - ROUNDING_M && turns === 0) expect.fail(`missed a point ${away} m away at ${x}, ${y}`);
    if (away > at.deltaM + TOLERANCE_M + ROUNDING_M && turns !== 0) {
      expect.fail(`took a point ${away} m away at ${x}, ${y}`);
    }
  }
}

const star = (radii: readonly number[], x = 0, y = 0): Float64Array =>
  Float64Array.from(
    radii.flatMap((r, i) => {
      const angle = (2 * Math.PI * i) / radii.length;
      return [x + r * Math.cos(angle), y + r * Math.sin(angle)];
    }),
  );

const radii = fc.array(fc.double({ min: 0.3, max: 6, noNaN: true }), { minLength: 3, maxLength: 40 });
const distance = fc.oneof(fc.constantFrom(0.5, 1), fc.double({ min: 0.02, max: 12, noNaN: true }));
const wander = fc.array(fc.tuple(fc.integer({ min: 0, max: 24 }), fc.integer({ min: 0, max: 24 })), {
  minLength: 1,
  maxLength: 14,
});
const flat = (points: readonly (readonly [number, number])[]) =>
  Float64Array.from(points.flatMap(([x, y]) => [x / 2, y / 2]));
/** Two equal lobes: the signed areas cancel, the set does not. */
const BOW_TIE: [number, number][] = [
  [19, 0],
  [8, 0],
  [19, 1],
  [8, 1],
];
const RUNS = { seed: 20260407, numRuns: 150 };

describe('a point is in the offset exactly when it is within the distance', () => {
  test('star-shaped crowns, convex and jagged, edges shorter and longer than the distance', () => {
    fc.assert(
      fc.property(radii, distance, (r, deltaM) => {
        const crown = [star(r)];
        expectOffset(offsetRegion(crown, deltaM, TOLERANCE_M), (x, y) => distanceToRegion(crown, x, y), {
          deltaM,
          lines: crown,
        });
      }),
      RUNS,
    );
  });

  test('crowns with a hole, several crowns overlapping', () => {
    fc.assert(
      fc.property(radii, radii, distance, (outer, inner, deltaM) => {
        const shell = star(outer.map((r) => r + 6.5));
        const hole = reversed(star(inner));
        const crown = [shell, hole, star(inner, 11, 3)];
        expectOffset(offsetRegion(crown, deltaM, TOLERANCE_M), (x, y) => distanceToRegion(crown, x, y), {
          deltaM,
          lines: crown,
        });
      }),
      RUNS,
    );
  });

  test('rings that cross themselves, repeat vertices, run back on themselves', () => {
    fc.assert(
      fc.property(wander, distance, (points, deltaM) => {
        const scribble = [flat(points)];
        const clean = cleanRegion(scribble);
        const result = offsetRegion(scribble, deltaM, TOLERANCE_M);
        expectOffset(result, (x, y) => distanceToRegion(clean, x, y), { deltaM, lines: scribble });
      }),
      { ...RUNS, examples: [[BOW_TIE, 0.5]] },
    );
  });

  test('widened lines that cross themselves, close, turn sharply', () => {
    fc.assert(
      fc.property(wander, distance, (points, deltaM) => {
        const line = flat(points);
        const result = widenLine(line, 2 * deltaM, { chordToleranceM: TOLERANCE_M });
        const lines = [line.length === 2 ? Float64Array.of(line[0], line[1], line[0], line[1]) : line];
        expectOffset(result, (x, y) => distanceToSegments(lines, false, x, y), { deltaM, lines });
      }),
      RUNS,
    );
  });
});

test('resolving rings keeps the set that the non-zero rule reads', () => {
  fc.assert(
    fc.property(wander, wander, (a, b) => {
      const region = [flat(a), flat(b)];
      const clean = cleanRegion(region);
      for (const [x, y] of sampled(boundsOf(region, 0.5), 300)) {
        if (distanceToSegments(region, true, x, y) < ROUNDING_M) continue;
        expect(winding(clean, x, y)).toBe(winding(region, x, y) === 0 ? 0 : 1);
      }
    }),
    RUNS,
  );
});

describe('a second opinion: the union of a region and a capsule about each edge, by polyclip-ts', () => {
  const closed = (ring: Float64Array): [number, number][] => {
    const out: [number, number][] = [];
    for (let i = 0; i <= ring.length; i += 2) out.push([ring[i % ring.length], ring[(i + 1) % ring.length]]);
    return out;
  };
  const area = (rings: [number, number][]) =>
    rings.reduce((sum, [x, y], i) => {
      const [u, v] = rings[(i + 1) % rings.length];
      return sum + (x * v - u * y) / 2;
    }, 0);

  test.each([
    ['C-shaped crown whose gap closes', Float64Array.of(0, 0, 10, 0, 10, 4, 3, 4, 3, 5, 10, 5, 10, 9, 0, 9), 0.6],
    [
      'C-shaped crown whose mouth closes over a hole',
      Float64Array.of(0, 0, 10, 0, 10, 4.2, 8, 4.2, 8, 2, 2, 2, 2, 8, 8, 8, 8, 5, 10, 5, 10, 9, 0, 9),
      0.5,
    ],
    ['jagged star, distance wider than every edge', star([3, 1, 3.5, 1.2, 2.8, 0.9, 3.1, 1.1, 2.9, 1]), 4],
  ])('%s', (_, crown, deltaM) => {
    const pieces = [[closed(crown)]];
    for (let i = 0, j = crown.length - 2; i < crown.length; j = i, i += 2) {
      const edge = Float64Array.of(crown[j], crown[j + 1], crown[i], crown[i + 1]);
      pieces.push([closed(widenLine(edge, 2 * deltaM, { chordToleranceM: 1e-4 })[0])]);
    }
    const [first, ...rest] = pieces as Parameters<typeof union>;
    const joined = union(first, ...rest).flat();
    const expected = joined.reduce((sum, ring) => sum + area(ring), 0);
    const result = cleanRegion(offsetRegion([crown], deltaM, 1e-4));
    // The capsules' arcs start at other angles: both are within 1e-4 m outside of the true border, of at most 60 m.
    expect(Math.abs(regionArea(result) - expected)).toBeLessThan(60 * 1e-4);
  });
});

describe('laws', () => {
  test('area by Steiner: A + Pδ + πδ² for convex crowns, and the excess the docstring states', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 60 }), distance, (n, deltaM) => {
        const crown = [star(Array.from({ length: n }, () => 4))];
        const perimeter = 2 * n * 4 * Math.sin(Math.PI / n);
        const exact = regionArea(crown) + perimeter * deltaM + Math.PI * deltaM ** 2;
        const excess = regionArea(offsetRegion(crown, deltaM, TOLERANCE_M)) - exact;
        expect(excess).toBeGreaterThan(-1e-9);
        expect(excess).toBeLessThan(2 * Math.PI * (deltaM + TOLERANCE_M) * TOLERANCE_M);
      }),
      RUNS,
    );
  });

  test('nested: the smaller offset adds nothing to the larger', () => {
    fc.assert(
      fc.property(radii, (r) => {
        const crown = [star(r)];
        const half = offsetRegion(crown, 0.5, TOLERANCE_M);
        const whole = offsetRegion(crown, 1, TOLERANCE_M);
        const both = regionArea(cleanRegion([...crown, ...half, ...whole]));
        expect(Math.abs(both - regionArea(cleanRegion(whole)))).toBeLessThan(1e-4);
      }),
      RUNS,
    );
  });

  test('moves with the crown: 500 km away the area is the same', () => {
    fc.assert(
      fc.property(radii, (r) => {
        const crown = [star(r)];
        const far = offsetRegion(translated(crown, 500_000, -500_000), 0.5, TOLERANCE_M);
        const near = offsetRegion(crown, 0.5, TOLERANCE_M);
        const farArea = regionArea(cleanRegion(translated(far, -500_000, 500_000)));
        expect(Math.abs(farArea - regionArea(cleanRegion(near)))).toBeLessThan(AREA_ROUNDING_M2);
      }),
      RUNS,
    );
  });
});
