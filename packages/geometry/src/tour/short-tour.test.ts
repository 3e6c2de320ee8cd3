import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shortTour, shortWalk, tourCost } from './short-tour.ts';

interface Case {
  readonly name: string;
  readonly inputs: {
    readonly edge_weight_type: string;
    readonly coords?: readonly (readonly [number, number])[];
    readonly coords_lat_lon_DDD_MM?: readonly (readonly [number, number])[];
    readonly distance_matrix?: readonly (readonly number[])[];
  };
  readonly expected: { readonly optimum: number };
}

const shared = process.env.CROWNFALL_SHARED ?? join(import.meta.dirname, '../../../../../shared');
const file = join(shared, 'references/vectors/tsp_tsplib.json');
const cases: readonly Case[] = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')).cases : [];
if (cases.length === 0) console.warn(`skipped: published trips not found at ${file}`);

/** Reinelt G (1991) TSPLIB, ORSA Journal on Computing 3:376–384: distances EUC_2D and GEO. */
function costsOf({ inputs }: Case): { readonly costs: Float64Array; readonly n: number } {
  const points = inputs.coords ?? inputs.coords_lat_lon_DDD_MM ?? [];
  const n = points.length;
  const costs = new Float64Array(n * n);
  const distance = inputs.edge_weight_type === 'GEO' ? geo : euclid;
  for (let a = 0; a < n; a++)
    for (let b = 0; b < n; b++) if (a !== b) costs[a * n + b] = distance(points[a], points[b]);
  return { costs, n };
}

function euclid(p: readonly [number, number], q: readonly [number, number]): number {
  return Math.round(Math.hypot(p[0] - q[0], p[1] - q[1]));
}

function geo(p: readonly [number, number], q: readonly [number, number]): number {
  const radians = (value: number) => {
    const whole = Math.trunc(value);
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the published rule has this π.
    return (3.141592 * (whole + (5 * (value - whole)) / 3)) / 180;
  };
  const [lat1, lon1, lat2, lon2] = [...p, ...q].map(radians);
  const q1 = Math.cos(lon1 - lon2);
  const q2 = Math.cos(lat1 - lat2);
  const q3 = Math.cos(lat1 + lat2);
  return Math.trunc(6378.388 * Math.acos(0.5 * ((1 + q1) * q2 - (1 - q1) * q3)) + 1);
}

describe.skipIf(cases.length === 0)('published trips (TSPLIB)', () => {
  const named = (name: string) => cases.find((each) => each.name === name) as Case;

  test.each(['burma14', 'ulysses16'])('%s: the optimum, proved by dynamic programming', (name) => {
    const { costs, n } = costsOf(named(name));
    expect(named(name).inputs.distance_matrix?.flat()).toEqual(Array.from(costs));
    expect(tourCost(costs, shortTour(costs, n))).toBe(named(name).expected.optimum);
  });

  test.each(['ulysses22', 'berlin52', 'eil51', 'st70'])('%s: within 3 %% of the listed optimum', (name) => {
    const { costs, n } = costsOf(named(name));
    const tour = shortTour(costs, n);
    expect(new Set(tour).size).toBe(n);
    const cost = tourCost(costs, tour);
    expect(cost).toBeGreaterThanOrEqual(named(name).expected.optimum);
    expect(cost).toBeLessThanOrEqual(1.03 * named(name).expected.optimum);
  });

  test('the same trip each time', () => {
    const { costs, n } = costsOf(named('st70'));
    expect(shortTour(costs, n)).toEqual(shortTour(costs, n));
  });
});

/** Costs among points, as a matrix. */
function flat(points: readonly (readonly [number, number])[]): Float64Array {
  return Float64Array.from(points.flatMap((p) => points.map((q) => Math.hypot(p[0] - q[0], p[1] - q[1]))));
}

function orders(items: readonly number[]): number[][] {
  if (items.length < 2) return [[...items]];
  return items.flatMap((first) => orders(items.filter((item) => item !== first)).map((rest) => [first, ...rest]));
}

describe('few places, against all orders', () => {
  const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 })), {
    minLength: 1,
    maxLength: 7,
  });
  const lengthOf = (costs: Float64Array, n: number, walk: ArrayLike<number>) =>
    Array.from(walk)
      .slice(1)
      .reduce((sum, to, i) => sum + costs[walk[i] * n + to], 0);

  test('round trips, walks free and bound at either or both ends are the shortest', () => {
    fc.assert(
      fc.property(points, fc.nat(), fc.nat(), (at, s, e) => {
        const [n, costs] = [at.length, flat(at)];
        const all = orders([...at.keys()]);
        const least = (lengths: readonly number[]) => Math.min(...lengths);
        expect(tourCost(costs, shortTour(costs, n))).toBeCloseTo(least(all.map((o) => tourCost(costs, o))), 6);
        const [start, end] = [s % n, e % n];
        for (const ends of [{}, { start }, { end }, { start, end }]) {
          const walk = shortWalk(costs, n, ends);
          expect(Array.from(walk).sort((a, b) => a - b)).toEqual([...at.keys()]);
          if ('start' in ends) expect(walk[0]).toBe(start);
          if ('start' in ends && 'end' in ends && start === end) continue;
          if ('end' in ends) expect(walk[n - 1]).toBe(end);
          const fitting = all.filter(
            (o) => (!('start' in ends) || o[0] === start) && (!('end' in ends) || o[n - 1] === end),
          );
          expect(lengthOf(costs, n, walk)).toBeCloseTo(least(fitting.map((o) => lengthOf(costs, n, o))), 6);
        }
      }),
      { seed: 20260501, numRuns: 60 },
    );
  });

  test('wrong use is told', () => {
    expect(() => shortTour(new Float64Array(5), 2)).toThrow('expected 2 × 2 costs, got 5');
    expect(() => shortWalk(new Float64Array(4), 2, { start: 2 })).toThrow('expected a place from 0 to 1, got 2');
    expect(shortTour(new Float64Array(0), 0).length).toBe(0);
  });
});
