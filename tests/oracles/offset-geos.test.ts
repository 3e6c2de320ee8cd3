/** Drift rings laid over pavement, against GEOS 3.13.0: the whole way from a crown's outline to square metres. */
import { falloutZone, type Region, reckonOverlay } from '@crownfall/geometry';
import { RandomStream } from '@crownfall/statistics';
import { expect, test } from 'vitest';
import { cellsOf, exactCells, WRONG_M2, worstCell } from './exact-area.ts';
import { geosOffsetArea } from './geos-wasm-areas.ts';
import { logUniform, randomPolygon } from './random-regions.ts';

const CHORD_TOLERANCE_M = 1e-3;
const QUADRANT_SEGMENTS = 64;
/** The 1 µm grid on which rings that cross are resolved, along some hundred metres of border. */
const ROUNDING_M2 = 1e-4;

const box = (x0: number, y0: number, x1: number, y1: number): Region => [
  Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1),
];
const ALL = box(-100, -100, 100, 100);
const STRIP = box(-100, 1, 100, 3.5);

/** An open ring of given outer radius with a gap: its offset closes the gap and leaves a hole. */
function horseshoe(radius: number, gapRad: number): Region {
  const outline: number[] = [];
  for (let i = 0; i <= 40; i++) {
    const angle = gapRad / 2 + ((2 * Math.PI - gapRad) * i) / 40;
    outline.push(radius * Math.cos(angle), radius * Math.sin(angle));
  }
  const inner = Array.from({ length: 41 }, (_, i) => [0.6 * outline[80 - 2 * i], 0.6 * outline[81 - 2 * i]]).flat();
  return [Float64Array.from([...outline, ...inner])];
}

/** On both pavements: GEOS, whose arcs are chords, is never above; ours, whose arcs are tangents, never below. */
function expectOffset(crown: Region, distanceM: number): void {
  const zone = falloutZone(crown, [{ to_m: distanceM, share: 0.5 }], CHORD_TOLERANCE_M);
  const sagittaM = distanceM * (1 - Math.cos(Math.PI / 4 / QUADRANT_SEGMENTS));
  const between = (CHORD_TOLERANCE_M + sagittaM) * arcLengthM(crown, distanceM) + ROUNDING_M2;
  for (const pavement of [ALL, STRIP]) {
    const input = { zones: [zone], pieces: [pavement], blocks: [] };
    const cells = cellsOf(reckonOverlay(input));
    const ours = (cells.get('0/-1/0.0') ?? 0) + (cells.get('0/-1/0.1') ?? 0);
    const theirs = geosOffsetArea(pavement, crown, distanceM, QUADRANT_SEGMENTS);
    expect(ours).toBeGreaterThan(theirs - ROUNDING_M2);
    expect(ours).toBeLessThan(theirs + between);
    expect(worstCell(cells, exactCells(input)).offM2).toBeLessThan(WRONG_M2);
  }
}

/** At most: every corner as if it were convex and all its arc on the border. */
function arcLengthM(region: Region, distanceM: number): number {
  let turns = 0;
  for (const ring of region) {
    const n = ring.length;
    for (let i = 0; i < n; i += 2) {
      const [ax, ay] = [ring[i] - ring[(i + n - 2) % n], ring[i + 1] - ring[(i + n - 1) % n]];
      const [bx, by] = [ring[(i + 2) % n] - ring[i], ring[(i + 3) % n] - ring[i + 1]];
      turns += Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
    }
  }
  return distanceM * turns;
}

test.each([0.05, 0.3, 0.8, 1.5, 4])('a horseshoe crown, offset by %f m', (distanceM) => {
  expectOffset(horseshoe(3, 0.2), distanceM);
});

test('an offset wider than every edge', () => {
  expectOffset(randomPolygon(new RandomStream(5, 1), 0, 0, 0.4), 6);
});

test('random crowns, offsets from a twentieth of the radius to twice it', () => {
  for (let number = 0; number < 120; number++) {
    const random = new RandomStream(5, 100, number);
    const radius = logUniform(random, 0.5, 8);
    expectOffset(randomPolygon(random, 0, 0, radius), radius * logUniform(random, 0.05, 2));
  }
});
