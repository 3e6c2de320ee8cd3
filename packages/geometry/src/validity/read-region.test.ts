import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { equalAreaPlane } from '../plane/local-plane.ts';
import { type Region, signedArea } from '../ring.ts';
import { readRegion } from './read-region.ts';

/** Vertices of resolved polygons move by up to 0.7 µm; the rings here are a few metres around. */
const RESOLVED_M2 = 1e-4;

const area = (region: Region) => region.reduce((sum, ring) => sum + signedArea(ring), 0);
const codes = (polygons: number[][][], closing: 'expected' | 'either' = 'either') =>
  readRegion(polygons, { closing }).findings.map((one) => one.code);
const square = (x: number, y: number, side: number) => [x, y, x + side, y, x + side, y + side, x, y + side];
const backwards = (ring: number[]) => {
  const out: number[] = [];
  for (let i = ring.length - 2; i >= 0; i -= 2) out.push(ring[i], ring[i + 1]);
  return out;
};

describe('rings are made usable without a word where nothing they enclose changes', () => {
  test('closed or open, wound either way, with repeated vertices: the same square', () => {
    const ways = [
      square(0, 0, 2),
      [...square(0, 0, 2), 0, 0],
      backwards(square(0, 0, 2)),
      [0, 0, 0, 0, 2, 0, 2, 2, 2, 2, 2, 2, 0, 2, 0, 0, 0, 0],
    ];
    for (const ring of ways) {
      const { region, findings } = readRegion([[ring]]);
      expect(findings).toEqual([]);
      expect(region.map((one) => one.length)).toEqual([8]);
      expect(area(region)).toBe(4);
    }
  });

  test('spikes are cut off, at the seam too', () => {
    const spiked = [
      [0, 0, 2, 0, 5, 0, 2, 0, 2, 2, 0, 2],
      [0, 0, 2, 0, 2, 2, 0, 2, 0, 9],
      [-3, 0, 2, 0, 2, 2, 0, 2, 0, 0],
    ];
    for (const ring of spiked) {
      const { region, findings } = readRegion([[ring]]);
      expect(findings).toEqual([]);
      expect(region.map((one) => one.length)).toEqual([8]);
      expect(area(region)).toBe(4);
    }
  });

  test('holes are wound clockwise, whichever way they came', () => {
    for (const hole of [square(1, 1, 1), backwards(square(1, 1, 1))]) {
      const { region } = readRegion([[square(0, 0, 4), hole]]);
      expect(region.map(signedArea)).toEqual([16, -1]);
    }
  });

  test('a ring that touches itself at a vertex, or along a bridge to its hole, is kept as it is', () => {
    const pinched = [0, 0, 2, 0, 1, 1, 2, 2, 0, 2, 1, 1];
    const keyhole = [0, 0, 6, 0, 6, 6, 0, 6, 0, 0, 2, 2, 2, 4, 4, 4, 4, 2, 2, 2];
    expect(readRegion([[pinched]])).toEqual({ region: [Float64Array.from(pinched)], findings: [] });
    expect(area(readRegion([[keyhole]]).region)).toBe(32);
    expect(codes([[keyhole]])).toEqual([]);
  });
});

describe('findings say which vertex and where', () => {
  test('a ring without its closing vertex, in formats that repeat it', () => {
    expect(codes([[square(0, 0, 2)]], 'expected')).toEqual(['ring-unclosed']);
    expect(codes([[[...square(0, 0, 2), 0, 0]]], 'expected')).toEqual([]);
  });

  test('coordinates that are not finite are skipped and counted', () => {
    const { region, findings } = readRegion([[[0, 0, Number.NaN, 0, 2, 0, 2, 2, 0, 2, Number.POSITIVE_INFINITY, 1]]]);
    expect(area(region)).toBe(4);
    expect(findings).toMatchObject([
      { code: 'coordinates-not-finite', effect: 'mended', where: { vertex: 2 }, facts: { count: 2 } },
    ]);
  });

  test('too short and without area are left out, a shell with its holes', () => {
    expect(codes([[[0, 0, 1, 1, 0, 0]]])).toEqual(['ring-too-short']);
    expect(codes([[[]]])).toEqual(['ring-too-short']);
    expect(codes([[[0, 0, 1, 1, 3, 3, 2, 2]]])).toEqual(['ring-zero-area']);
    expect(codes([[[0, 0, 1, 0, 1, 1, 1, 0]]])).toEqual(['ring-zero-area']);
    const { region, findings } = readRegion([[[0, 0, 1, 1], square(0, 0, 1)], [square(5, 5, 1)]]);
    expect(area(region)).toBe(1);
    expect(findings).toMatchObject([{ facts: { polygon: 1, ring: 'shell', holes: 1 } }]);
  });

  test('the crossing of a bow-tie is placed, in longitude and latitude too', () => {
    const plane = equalAreaPlane({ lon: -80.2, lat: 25.8 });
    const { findings } = readRegion([[[0, 0, 2, 2, 2, 0, 0, 2]]], { plane, where: { feature: 'T-7' } });
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ code: 'ring-self-crosses', effect: 'kept', facts: { x: 1, y: 1 } });
    expect(findings[0].where).toMatchObject({ feature: 'T-7', vertex: 1 });
    expect(Array.from(plane.forward([findings[0].where.lon ?? 0, findings[0].where.lat ?? 0]))).toEqual([
      expect.closeTo(1, 6),
      expect.closeTo(1, 6),
    ]);
  });
});

describe('self-crossing polygons count as what they wind around (closed forms)', () => {
  test('both lobes of a bow-tie, crossing between or at vertices', () => {
    const between = [0, 0, 2, 2, 2, 0, 0, 2];
    const atVertex = [0, 0, 1, 1, 2, 2, 2, 0, 1, 1, 0, 2];
    for (const ring of [between, atVertex]) {
      const { region, findings } = readRegion([[ring]]);
      expect(area(region)).toBeCloseTo(2, 6);
      expect(findings.map((one) => one.code)).toEqual(['ring-self-crosses']);
      expect(region.every((one) => signedArea(one) > 0)).toBe(true);
    }
  });

  test('the middle of a five-pointed star counts once', () => {
    const star: number[] = [];
    for (let i = 0; i < 5; i++) star.push(Math.cos((4 * Math.PI * i) / 5), Math.sin((4 * Math.PI * i) / 5));
    // Ten triangles about the middle: outer radius 1, inner radius 1/φ² = (3 − √5)/2, 36° apart.
    const expected = (10 / 2) * Math.sin(Math.PI / 5) * ((3 - Math.sqrt(5)) / 2);
    expect(area(readRegion([[star]]).region)).toBeCloseTo(expected, 5);
  });

  test('a lobe wound backwards takes nothing from the polygon beside it', () => {
    const { region } = readRegion([[[0, 0, 2, 2, 2, 0, 0, 2]], [square(0, 0, 2)]]);
    expect(region.every((ring) => signedArea(ring) > 0)).toBe(true);
  });

  test('holes: overlapping, doubled, outside, across the shell, self-crossing', () => {
    const shell = square(0, 0, 10);
    const cases: [number[][], number, string[]][] = [
      [[square(1, 1, 4), square(3, 3, 4)], 100 - 28, ['ring-self-crosses']],
      [[square(1, 1, 4), square(1, 1, 4)], 100 - 16, []],
      [[square(1, 1, 6), square(2, 2, 2)], 100 - 36, []],
      [[square(20, 20, 4)], 100, []],
      [[square(8, 8, 4)], 100 - 4, ['ring-self-crosses']],
      [[[2, 2, 4, 4, 4, 2, 2, 4]], 100 - 2, ['ring-self-crosses']],
      [[square(0, 0, 2)], 100 - 4, []],
    ];
    for (const [holes, expected, found] of cases) {
      const { region, findings } = readRegion([[shell, ...holes]]);
      expect(Math.abs(area(region) - expected)).toBeLessThan(RESOLVED_M2);
      expect(findings.map((one) => one.code)).toEqual(found);
    }
  });

  test('degrees: the same shares at a hundred-thousandth of the size', () => {
    const ring = [0, 0, 2, 2, 2, 0, 0, 4].map((value, i) => value * 1e-5 + (i % 2 ? 25.8 : -80.2));
    const { region, findings } = readRegion([[ring]], { frame: 'lonlat' });
    // Triangles on bases 2 and 4 that meet at (4/3, 4/3).
    expect(area(region) * 1e10).toBeCloseTo(2 / 3 + 8 / 3, 4);
    expect(findings[0].where.lon).toBeCloseTo(-80.2 + (4 / 3) * 1e-5, 9);
  });
});

describe('robustness', () => {
  const anything = fc.oneof(
    fc.double(),
    fc.integer({ min: -3, max: 3 }),
    fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -0, 1e300, 1e-320),
  );

  test('never throws; rings are finite and of three vertices or more', () => {
    const polygons = fc.array(fc.array(fc.array(anything, { maxLength: 16 }), { maxLength: 3 }), { maxLength: 3 });
    fc.assert(
      fc.property(polygons, (given) => {
        for (const ring of readRegion(given).region) {
          expect(ring.length).toBeGreaterThanOrEqual(6);
          expect(ring.every(Number.isFinite)).toBe(true);
        }
      }),
      { seed: 20260201, numRuns: 2000 },
    );
  });

  test('what is no list at all gives an empty region', () => {
    for (const junk of [null, undefined, 7, 'x', [null], [[null]], [[{}]], [[[[0, 0]]]], [['abcdef']]]) {
      expect(readRegion(junk as never).region).toEqual([]);
    }
  });

  test('reading what was read changes nothing more', () => {
    const coordinate = fc.integer({ min: 0, max: 8 });
    const ring = fc.array(coordinate, { minLength: 6, maxLength: 14 });
    fc.assert(
      fc.property(ring, (given) => {
        const once = readRegion([[given]]).region;
        const again = readRegion(once.map((one) => [one]));
        const total = once.reduce((sum, one) => sum + Math.abs(signedArea(one)), 0);
        expect(again.region.length).toBeGreaterThanOrEqual(Math.min(1, once.length));
        expect(again.region.reduce((sum, one) => sum + Math.abs(signedArea(one)), 0)).toBeCloseTo(total, 4);
      }),
      { seed: 20260202, numRuns: 500 },
    );
  });

  test('a ring of 100,000 vertices is searched by index: few pairs of edges are compared', () => {
    const ring: number[] = [];
    for (let i = 0; i < 100_000; i++) {
      const angle = (2 * Math.PI * i) / 100_000;
      const radius = 500 + 20 * Math.sin(97 * angle);
      ring.push(radius * Math.cos(angle), radius * Math.sin(angle));
    }
    const [far, there] = [ring.slice(20_100, 20_102), ring.slice(20_000, 20_002)];
    ring.splice(20_000, 2, ...far);
    ring.splice(20_100, 2, ...there);
    const { region, findings } = readRegion([[ring]]);
    expect(findings.map((one) => one.code)).toEqual(['ring-self-crosses']);
    expect(findings[0].where.vertex).toBeCloseTo(10_000, -2);
    expect(area(region)).toBeGreaterThan(0);
  });
});
