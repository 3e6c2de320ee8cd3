/** Outline errors without geometry against the geometry itself: crowns over pavement, redrawn larger and smaller. */
import { falloutZone, type Region, reckonOverlay } from '@crownfall/geometry';
import { describe, expect, test } from 'vitest';
import { stainedShares } from '../stained-share.ts';
import { depthOf, shiftedShares } from './outline-shift.ts';
import { stainPlan } from './stain-plan.ts';

const RINGS = [
  { to_m: 0.5, share: 0.5 },
  { to_m: 1, share: 0.25 },
];
const LAYER_SHARE = Float64Array.of(1, 0.5, 0.25);
const RING_TO = Float64Array.of(0.5, 1);
const DOSE = 0.8;
const RADIUS = 4;

const walk: Region = [Float64Array.of(-50, 1, 50, 1, 50, 3, -50, 3)];
const plaza: Region = [Float64Array.of(-50, -50, 50, -50, 50, 50, -50, 50)];

function disc(radius: number): Region {
  return [
    Float64Array.from({ length: 400 }, (_, i) => {
      const angle = (2 * Math.PI * Math.floor(i / 2)) / 200;
      return radius * (i % 2 === 0 ? Math.cos(angle) : Math.sin(angle));
    }),
  ];
}

const overlay = (radius: number, pavement: Region) =>
  reckonOverlay({ zones: [falloutZone(disc(radius), RINGS, 0.001)], pieces: [pavement], blocks: [] });

function redrawnM2(radius: number, pavement: Region): number {
  const ledger = overlay(radius, pavement);
  const share = stainedShares({ ledger, layerShare: LAYER_SHARE, dose: Float64Array.of(DOSE) });
  return share.reduce((sum, stained, cell) => sum + stained * ledger.areaM2[cell], 0);
}

function shiftedM2(shiftM: number, pavement: Region): number {
  const ledger = overlay(RADIUS, pavement);
  const crowns = [{ tree: 0, spreadM: 2 * RADIUS, outlineSdM: 0.3 }];
  const plan = stainPlan(
    ledger,
    crowns,
    { layerShare: LAYER_SHARE, ringToM: RING_TO },
    { mayStain: () => true, keys: { blockCount: 0 } },
  );
  const stained = LAYER_SHARE.map((share) => -Math.expm1(-share * DOSE));
  const shifted = new Float64Array(3);
  shiftedShares(stained, { depthM: plan.depthM[0], ringToM: RING_TO }, shiftM, shifted);
  let sum = 0;
  for (let cell = 0; cell < plan.areaM2.length; cell++) {
    sum += plan.areaM2[cell] * shifted[plan.cover[plan.coverStart[cell]]];
  }
  return sum;
}

describe('a crown drawn too small or too large', () => {
  // The approximation's own error: pavement is not spread evenly across the rings, and borders curve. Stated in
  // docs/methods/uncertainty.md: to one standard deviation of the assumed 0.3 m, and to three.
  test.each([
    ['sidewalk', walk, 0.006, 0.025],
    ['plaza', plaza, 0.01, 0.05],
  ] as const)('over a %s stains as much as when redrawn, nearly', (_, pavement, toOne, toThree) => {
    for (const shiftM of [-0.9, -0.6, -0.3, -0.1, 0.1, 0.3, 0.6, 0.9]) {
      const exact = redrawnM2(RADIUS + shiftM, pavement);
      const tolerance = Math.abs(shiftM) <= 0.3 ? toOne : toThree;
      expect(Math.abs(shiftedM2(shiftM, pavement) / exact - 1), `${shiftM} m`).toBeLessThan(tolerance);
    }
  });

  test('drawn rightly stains what it stains', () => {
    expect(shiftedM2(0, walk)).toBeCloseTo(redrawnM2(RADIUS, walk), 9);
  });
});

describe('shifted shares', () => {
  const stained = [0.6, 0.35, 0.2];
  const shifted = (shiftM: number, depthM = 2): number[] => {
    const out = new Float64Array(3);
    shiftedShares(stained, { depthM, ringToM: RING_TO }, shiftM, out);
    return [...out];
  };

  test('half a ring outwards (by hand)', () => {
    const [under, first, second] = shifted(0.25);
    expect(under).toBeCloseTo(0.6, 12);
    expect(first).toBeCloseTo((0.6 + 0.35) / 2, 12);
    // The last ring, and the 0.25 m beyond it that come under its share.
    expect(second).toBeCloseTo((0.35 + 0.2) / 2 + 0.5 * 0.2, 12);
  });

  test('half a ring inwards (by hand)', () => {
    const [under, first, second] = shifted(-0.25);
    expect(under).toBeCloseTo(0.6 - (0.25 / 2) * (0.6 - 0.35), 12);
    expect(first).toBeCloseTo((0.35 + 0.2) / 2, 12);
    expect(second).toBeCloseTo(0.2 / 2, 12);
  });

  test('a shift of metres leaves shares between 0 and 1', () => {
    for (const shiftM of [-30, -3, 3, 30]) {
      for (const share of shifted(shiftM)) {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThan(1);
      }
    }
  });

  test('a crown whose border meets no pavement keeps what lies under it', () => {
    expect(depthOf([10, 0, 0], RING_TO, 8)).toBe(Number.POSITIVE_INFINITY);
    expect(shifted(-0.4, Number.POSITIVE_INFINITY)[0]).toBe(0.6);
  });

  test('without drift rings the crown is taken as an evenly paved disc', () => {
    const out = new Float64Array(1);
    shiftedShares([0.5], { depthM: depthOf([50], [], 8), ringToM: [] }, 0.1, out);
    // A disc of 4 m radius grows by 2 · 0.1/4 of its area, to first order.
    expect(out[0]).toBeCloseTo(0.5 * 1.05, 12);
  });
});
