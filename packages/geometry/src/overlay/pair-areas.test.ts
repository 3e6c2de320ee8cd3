/** Two ways to the same areas: chain by chain, and as sums of the ledger's cells. */
import { describe, expect, test } from 'vitest';
import type { Region } from '../ring.ts';
import { pairAreas } from './pair-areas.ts';
import { reckonOverlay } from './reckon-overlay.ts';

const ROUNDING_M2 = 1e-10;

function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}

function star(next: () => number, sides: number): Region {
  const [x, y, radius] = [30 * next(), 30 * next(), 1 + 5 * next()];
  const ring = new Float64Array(2 * sides);
  for (let i = 0; i < sides; i++) {
    const r = radius * (0.6 + 0.4 * next());
    ring.set([x + r * Math.cos((2 * Math.PI * i) / sides), y + r * Math.sin((2 * Math.PI * i) / sides)], 2 * i);
  }
  return [ring];
}

/** A strip at any angle with a hole across its middle. */
function strip(next: () => number): Region {
  const [x, y, angle] = [30 * next(), 30 * next(), 2 * Math.PI * next()];
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const turn = (points: number[]) =>
    Float64Array.from(points, (_, i) =>
      i % 2 === 0 ? x + points[i] * c - points[i + 1] * s : y + points[i - 1] * s + points[i] * c,
    );
  return [turn([0, 0, 20, 0, 20, 3, 0, 3]), turn([8, 1, 8, 2, 12, 2, 12, 1])];
}

describe('pair areas', () => {
  test('equal the cells of the ledger that hold the crown', () => {
    const next = random(11);
    const crowns = Array.from({ length: 60 }, () => star(next, 24));
    for (const piece of Array.from({ length: 40 }, () => strip(next))) {
      const ledger = reckonOverlay({
        zones: crowns.map((crown) => ({ layers: [crown] })),
        pieces: [piece],
        blocks: [],
      });
      const byCrown = new Float64Array(crowns.length);
      for (let cell = 0; cell < ledger.cellCount; cell++) {
        for (let i = ledger.coverStart[cell]; i < ledger.coverStart[cell + 1]; i++) {
          byCrown[ledger.zone[i]] += ledger.areaM2[cell];
        }
      }
      const pairs = pairAreas([piece], crowns);
      const got = new Float64Array(crowns.length);
      pairs.crown.forEach((crown, i) => {
        got[crown] = pairs.areaM2[i];
      });
      for (let crown = 0; crown < crowns.length; crown++) {
        expect(Math.abs(got[crown] - byCrown[crown])).toBeLessThan(ROUNDING_M2);
      }
    }
  });

  test('closed form: a crown of radius 5 over a strip from 2 to 3.5, any way round', () => {
    const ring = new Float64Array(40_000);
    for (let i = 0; i < 20_000; i++) {
      ring.set([5 * Math.cos((Math.PI * i) / 10_000), 5 * Math.sin((Math.PI * i) / 10_000)], 2 * i);
    }
    const upright = [Float64Array.of(2, -9, 3.5, -9, 3.5, 9, 2, 9)];
    const level = [Float64Array.of(-9, 2, 9, 2, 9, 3.5, -9, 3.5)];
    const { areaM2 } = pairAreas([upright, level], [[ring]]);
    expect(areaM2[0]).toBeCloseTo(12.429364623619929, 5);
    expect(areaM2[1]).toBeCloseTo(12.429364623619929, 5);
  });

  test('nothing in common, nothing told', () => {
    const square = (x: number): Region => [Float64Array.of(x, 0, x + 1, 0, x + 1, 1, x, 1)];
    expect(pairAreas([square(0), []], [square(5), []]).piece).toEqual([]);
  });
});
