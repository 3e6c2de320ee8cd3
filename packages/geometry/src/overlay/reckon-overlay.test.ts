import { describe, expect, test } from 'vitest';
import type { Region } from '../ring.ts';
import type { OverlayLedger } from './ledger.ts';
import { reckonOverlay } from './reckon-overlay.ts';

/** Rounding of a few dozen edge integrals over shapes of some ten metres. */
const ROUNDING_M2 = 1e-10;

const box = (x0: number, y0: number, x1: number, y1: number): Region => [
  Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1),
];
const hole = (x0: number, y0: number, x1: number, y1: number): Region => [
  Float64Array.of(x0, y0, x0, y1, x1, y1, x1, y0),
];

function regularPolygon(radius: number, x: number, y: number, sides: number): Region {
  const ring = new Float64Array(2 * sides);
  for (let i = 0; i < sides; i++) {
    ring[2 * i] = x + radius * Math.cos((2 * Math.PI * i) / sides);
    ring[2 * i + 1] = y + radius * Math.sin((2 * Math.PI * i) / sides);
  }
  return [ring];
}

function turned(region: Region, angle: number, dx = 0, dy = 0): Region {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return region.map((ring) => {
    const out = new Float64Array(ring.length);
    for (let i = 0; i < ring.length; i += 2) {
      out[i] = ring[i] * c - ring[i + 1] * s + dx;
      out[i + 1] = ring[i] * s + ring[i + 1] * c + dy;
    }
    return out;
  });
}

/** Cells as text and number: `{ 'piece/block/zone.layer+…': area }`. */
function cellsOf(ledger: OverlayLedger): Record<string, number> {
  const cells: Record<string, number> = {};
  for (let i = 0; i < ledger.cellCount; i++) {
    const cover: string[] = [];
    for (let j = ledger.coverStart[i]; j < ledger.coverStart[i + 1]; j++) {
      cover.push(`${ledger.zone[j]}.${ledger.layer[j]}`);
    }
    cells[`${ledger.piece[i]}/${ledger.block[i]}/${cover.join('+')}`] = ledger.areaM2[i];
  }
  return cells;
}

function expectCells(ledger: OverlayLedger, expected: Record<string, number>): void {
  const got = cellsOf(ledger);
  expect(Object.keys(got).sort()).toEqual(Object.keys(expected).sort());
  for (const [key, area] of Object.entries(expected)) {
    expect(Math.abs(got[key] - area), `${key}: got ${got[key]}, expected ${area}`).toBeLessThan(ROUNDING_M2);
  }
}

const crown = (...layers: Region[]) => ({ layers });

describe('cells of pavement', () => {
  test('a crown over half a square', () => {
    expectCells(reckonOverlay({ zones: [crown(box(1, 0, 3, 2))], pieces: [box(0, 0, 2, 2)], blocks: [] }), {
      '0/-1/': 2,
      '0/-1/0.0': 2,
    });
  });

  test('overlapping crowns: each cover once', () => {
    const ledger = reckonOverlay({
      zones: [crown(box(0, 0, 4, 4)), crown(box(2, 0, 6, 4))],
      pieces: [box(0, 1, 10, 3)],
      blocks: [],
    });
    expectCells(ledger, { '0/-1/': 8, '0/-1/0.0': 4, '0/-1/0.0+1.0': 4, '0/-1/1.0': 4 });
  });

  test('drift rings count at their innermost layer', () => {
    const zones = [crown(box(4, 4, 6, 6), box(3, 3, 7, 7), box(2, 2, 8, 8))];
    expectCells(reckonOverlay({ zones, pieces: [box(0, 0, 10, 10)], blocks: [] }), {
      '0/-1/': 64,
      '0/-1/0.0': 4,
      '0/-1/0.1': 12,
      '0/-1/0.2': 20,
    });
  });

  test('pavement on a block border is split; overlap of blocks goes to the first', () => {
    const ledger = reckonOverlay({
      zones: [],
      pieces: [box(0, 0, 10, 1)],
      blocks: [box(-5, -5, 4, 5), box(3, -5, 8, 5)],
    });
    expectCells(ledger, { '0/-1/': 2, '0/0/': 4, '0/1/': 4 });
  });

  test('overlapping pieces: the shared part belongs to the first', () => {
    const ledger = reckonOverlay({
      zones: [],
      pieces: [box(0, 0, 4, 4), box(2, 2, 6, 6), box(0, 0, 4, 4)],
      blocks: [],
    });
    expectCells(ledger, { '0/-1/': 16, '1/-1/': 12 });
  });

  test('holes in pavement and in crowns', () => {
    const plaza = [...box(0, 0, 10, 10), ...hole(4, 4, 6, 6)];
    const ring = [...box(3, 3, 7, 7), ...hole(3.5, 3.5, 6.5, 6.5)];
    expectCells(reckonOverlay({ zones: [crown(ring)], pieces: [plaza], blocks: [] }), { '0/-1/': 89, '0/-1/0.0': 7 });
  });

  test('empty and vanishing input', () => {
    expect(reckonOverlay({ zones: [], pieces: [], blocks: [] }).cellCount).toBe(0);
    const flat = [Float64Array.of(0, 0, 5, 0, 9, 0)];
    const upright = [Float64Array.of(1, 0, 1, 5, 1, 9)];
    const point = [Float64Array.of(3, 3)];
    const pieces = [flat, upright, point, [new Float64Array(0)], [], box(0, 0, 1, 1)];
    expectCells(reckonOverlay({ zones: [crown(flat), crown(), crown(point)], pieces, blocks: [upright] }), {
      '5/-1/': 1,
    });
  });

  test('coordinates that are not finite spoil nothing else', () => {
    const broken = [Float64Array.of(0, 0, Number.NaN, 0, 4, 4, 0, Infinity)];
    const { areaM2 } = reckonOverlay({
      zones: [crown(broken), crown(box(0, 0, 1, 1))],
      pieces: [box(0, 0, 2, 2)],
      blocks: [],
    });
    expect(areaM2.every(Number.isFinite)).toBe(true);
  });
});

describe('closed forms', () => {
  // Circle–circle lens and circular segment, elementary geometry; values of the closed forms beside polygons that
  // approach the circle: the relative error of a regular n-gon's area is (2π/n)²/6, 1.6e-8 at n = 20,000.
  const SIDES = 20_000;

  test.each([
    [5, 4, 6, 13.79946],
    [3, 3, 3, 11.055327],
  ])('two crowns of radius %f and %f at distance %f', (r1, r2, distance, lens) => {
    const ledger = reckonOverlay({
      zones: [crown(regularPolygon(r1, 0, 0, SIDES)), crown(regularPolygon(r2, distance, 0, SIDES))],
      pieces: [box(-20, -20, 20, 20)],
      blocks: [],
    });
    expect(cellsOf(ledger)['0/-1/0.0+1.0']).toBeCloseTo(lens, 5);
  });

  test('a crown over a strip: r = 5 over x = 2 … 3.5', () => {
    const zones = [crown(regularPolygon(5, 0, 0, SIDES))];
    const ledger = reckonOverlay({ zones, pieces: [box(2, -9, 3.5, 9)], blocks: [] });
    expect(cellsOf(ledger)['0/-1/0.0']).toBeCloseTo(12.429364623619929, 5);
  });

  test('the same with a 64-gon, as GEOS 3.11.1 has it', () => {
    const zones = [crown(regularPolygon(5, 0, 0, 64))];
    const ledger = reckonOverlay({ zones, pieces: [box(2, -9, 3.5, 9)], blocks: [] });
    expect(cellsOf(ledger)['0/-1/0.0']).toBeCloseTo(12.414096704161015, 9);
  });
});

describe.each([0, 0.3, Math.PI / 4, 1.234567, 1e-12, Math.PI / 2])('coincidence, turned by %f rad', (angle) => {
  describe.each([0, 3e4])('%d m from the origin', (shift) => {
    const at = (region: Region) => turned(region, angle, shift, -shift);
    const areaOf = (zones: Region[], piece: Region, key: string) =>
      cellsOf(reckonOverlay({ zones: zones.map((zone) => crown(at(zone))), pieces: [at(piece)], blocks: [] }))[key] ??
      0;
    /** 3e4 m from the origin a coordinate is known to 4e-12 m: over 40 m of edge, 1.5e-10 m². */
    const tolerance = shift === 0 ? ROUNDING_M2 : 1e-9;
    const near = (got: number, expected: number) => expect(Math.abs(got - expected), `${got}`).toBeLessThan(tolerance);

    test('three identical crowns', () => {
      const square = box(1, 1, 3, 3);
      near(areaOf([square, square, square], box(0, 0, 4, 4), '0/-1/0.0+1.0+2.0'), 4);
      near(areaOf([square, square, square], box(0, 0, 4, 4), '0/-1/'), 12);
    });

    test('a crown equal to the pavement, and one equal to its hole', () => {
      near(areaOf([box(0, 0, 4, 4)], box(0, 0, 4, 4), '0/-1/0.0'), 16);
      near(areaOf([box(1, 1, 2, 2)], [...box(0, 0, 4, 4), ...hole(1, 1, 2, 2)], '0/-1/'), 15);
      near(areaOf([box(1, 1, 2, 2)], [...box(0, 0, 4, 4), ...hole(1, 1, 2, 2)], '0/-1/0.0'), 0);
    });

    test('fully and partly shared edges, vertex on vertex, vertex on edge', () => {
      near(areaOf([box(4, 0, 6, 4)], box(0, 0, 4, 4), '0/-1/0.0'), 0);
      near(areaOf([box(2, 1, 4, 3)], box(0, 0, 4, 4), '0/-1/0.0'), 4);
      near(areaOf([box(4, 4, 6, 6)], box(0, 0, 4, 4), '0/-1/'), 16);
      near(areaOf([[Float64Array.of(4, 2, 6, 1, 6, 3)]], box(0, 0, 4, 4), '0/-1/'), 16);
      near(areaOf([[Float64Array.of(0, 2, 2, 1, 2, 3)]], box(0, 0, 4, 4), '0/-1/0.0'), 2);
    });

    test('a hole filled exactly by another crown', () => {
      const ring = [...box(0, 0, 4, 4), ...hole(1, 1, 3, 3)];
      near(areaOf([ring, box(1, 1, 3, 3)], box(0, 0, 4, 4), '0/-1/'), 0);
      near(areaOf([ring, box(1, 1, 3, 3)], box(0, 0, 4, 4), '0/-1/0.0+1.0'), 0);
    });

    test('slivers, spikes and repeated vertices', () => {
      near(areaOf([box(0, 0, 4, 1e-9)], box(0, 0, 4, 4), '0/-1/0.0'), 4e-9);
      near(areaOf([[Float64Array.of(1, 1, 3, 1, 3, 9, 3, 1, 3, 3, 3, 3, 1, 3)]], box(0, 0, 4, 4), '0/-1/0.0'), 4);
      near(areaOf([[Float64Array.of(0, 1, 4, 1 + 1e-12, 4, 2, 0, 2)]], box(0, 0, 4, 4), '0/-1/0.0'), 4);
    });

    test('self-crossing rings cover where they wind', () => {
      const bowTie: Region = [Float64Array.of(0, 0, 4, 4, 4, 0, 0, 4)];
      near(areaOf([bowTie], box(0, 0, 4, 4), '0/-1/0.0'), 8);
      const twice: Region = [Float64Array.of(0, 0, 2, 0, 2, 2, 0, 2, 0, 0, 2, 0, 2, 2, 0, 2)];
      near(areaOf([twice], box(0, 0, 4, 4), '0/-1/0.0'), 4);
    });
  });
});

describe('many crowns', () => {
  test('200 crowns over one point', () => {
    const zones = Array.from({ length: 200 }, (_, i) => crown(regularPolygon(3 + i / 100, 0, 0, 40)));
    const ledger = reckonOverlay({ zones, pieces: [box(-6, -6, 6, 6)], blocks: [] });
    const largest = 0.5 * 40 * 4.99 ** 2 * Math.sin((2 * Math.PI) / 40);
    const uncovered = cellsOf(ledger)['0/-1/'];
    expect(uncovered).toBeCloseTo(144 - largest, 9);
    expect(ledger.areaM2.reduce((sum, area) => sum + area, 0)).toBeCloseTo(144, 9);
  });

  test('a crown of 100,000 vertices', () => {
    const zones = [crown(regularPolygon(5, 0, 0, 100_000))];
    const ledger = reckonOverlay({ zones, pieces: [box(-9, -9, 0, 9)], blocks: [] });
    expect(cellsOf(ledger)['0/-1/0.0']).toBeCloseTo(12.5 * Math.PI, 6);
  });
});
