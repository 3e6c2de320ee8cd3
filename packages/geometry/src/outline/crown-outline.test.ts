import { describe, expect, test } from 'vitest';
import { equalAreaPlane } from '../plane/local-plane.ts';
import { crownArea } from './crown-measures.ts';
import { crownOutline } from './crown-outline.ts';
import { crownShapeInPlane, type PlaneCrownShape } from './plane-crown-shape.ts';
import { radiusAt } from './radii-outline.ts';
import { regionArea, regionCentroid } from './region-measures.ts';

const AT = { x: 500, y: -300 };
const codes = (shape: PlaneCrownShape) => crownOutline(shape).findings.map(({ code }) => code);

const radiusFromTrunk = (ring: Float64Array, k: number) => Math.hypot(ring[2 * k] - AT.x, ring[2 * k + 1] - AT.y);

describe('circle', () => {
  test.each([
    [8, 0.01],
    [8, 0.001],
    [0.6, 0.01],
    [24, 0.05],
  ])('spread %f m at tolerance %f m: area exact, border within the tolerance', (spreadM, chordToleranceM) => {
    const { region, findings } = crownOutline({ from: 'spread', ...AT, spreadM }, { chordToleranceM });
    expect(findings).toEqual([]);
    expect(regionArea(region)).toBeCloseTo((Math.PI * spreadM ** 2) / 4, 9);
    const [ring] = region;
    const count = ring.length / 2;
    const corner = radiusFromTrunk(ring, 0);
    expect(corner - spreadM / 2).toBeLessThanOrEqual(chordToleranceM);
    expect(spreadM / 2 - corner * Math.cos(Math.PI / count)).toBeLessThanOrEqual(chordToleranceM);
  });

  test('8 m at 1 cm: the 40 vertices of the docstring', () => {
    expect(crownOutline({ from: 'spread', ...AT, spreadM: 8 }).region[0]).toHaveLength(80);
  });
});

describe('ellipse', () => {
  test('the bearing of a turns clockwise from north', () => {
    const [ring] = crownOutline({ from: 'diameters', ...AT, aM: 10, bM: 4, bearingDeg: 90 }, { segments: 64 }).region;
    // Inscribed, first vertex at the end of a: due east.
    expect(ring[0]).toBeCloseTo(AT.x + 5, 9);
    expect(ring[1]).toBeCloseTo(AT.y, 9);
    const [tilted] = crownOutline({ from: 'diameters', ...AT, aM: 10, bM: 4, bearingDeg: 30 }, { segments: 64 }).region;
    expect(tilted[0]).toBeCloseTo(AT.x + 5 * Math.sin(Math.PI / 6), 9);
    expect(tilted[1]).toBeCloseTo(AT.y + 5 * Math.cos(Math.PI / 6), 9);
  });

  test('equal diameters are the circle', () => {
    const ellipse = crownOutline({ from: 'diameters', ...AT, aM: 7, bM: 7, bearingDeg: 90 }).region;
    const circle = crownOutline({ from: 'spread', ...AT, spreadM: 7 }).region;
    expect(ellipse).toEqual(circle);
  });
});

describe('radii', () => {
  test('equal radii are exactly the circle', () => {
    for (const n of [3, 4, 8, 12]) {
      const shape = { from: 'radii', ...AT, radiiM: Array.from({ length: n }, () => 6) } as const;
      const [ring] = crownOutline(shape).region;
      expect(regionArea([ring])).toBeCloseTo(Math.PI * 36, 9);
      for (let k = 1; k < ring.length / 2; k++)
        expect(radiusFromTrunk(ring, k)).toBeCloseTo(radiusFromTrunk(ring, 0), 9);
    }
  });

  test('the outline passes through every radius, at its bearing, and is counter-clockwise', () => {
    const radiiM = [5, 4, 3, 4, 6, 2, 0.5, 1];
    const [ring] = crownOutline({ from: 'radii', ...AT, radiiM }, { segments: 64 }).region;
    expect(regionArea([ring])).toBeGreaterThan(0);
    radiiM.forEach((r, i) => {
      const k = (64 - 8 * i) % 64;
      expect(radiusFromTrunk(ring, k)).toBeCloseTo(r, 9);
      const bearing = Math.atan2(ring[2 * k] - AT.x, ring[2 * k + 1] - AT.y);
      expect(Math.cos(bearing - (Math.PI / 4) * i)).toBeCloseTo(1, 9);
    });
  });

  test('between two radii the outline is neither wider nor narrower than both', () => {
    const radiiM = [9, 0.2, 8, 0, 0, 3, 3, 7];
    for (let u = 0; u < 8; u += 1 / 64) {
      const [a, b] = [radiiM[Math.floor(u)], radiiM[(Math.floor(u) + 1) % 8]];
      expect(radiusAt(radiiM, u)).toBeGreaterThanOrEqual(Math.min(a, b) - 1e-12);
      expect(radiusAt(radiiM, u)).toBeLessThanOrEqual(Math.max(a, b) + 1e-12);
    }
  });

  test('the area is ½∫r² dθ of the curve, by midpoint quadrature', () => {
    const radiiM = [2.5, 3.75, 6.1, 4.2, 0.8, 1.9, 3.3, 2.2];
    let integral = 0;
    const steps = 80_000;
    for (let k = 0; k < steps; k++) integral += radiusAt(radiiM, ((k + 0.5) * 8) / steps) ** 2;
    const quadrature = (integral * Math.PI) / steps;
    expect(crownArea({ from: 'radii', ...AT, radiiM })).toBeCloseTo(quadrature, 6);
    expect(regionArea(crownOutline({ from: 'radii', ...AT, radiiM }).region)).toBeCloseTo(quadrature, 6);
  });

  test('a trunk on the drip line: radii of 0 leave no repeated vertices', () => {
    const [ring] = crownOutline({ from: 'radii', ...AT, radiiM: [4, 3, 0, 0, 0, 0, 0, 3] }).region;
    expect(regionArea([ring])).toBeCloseTo((Math.PI / 8) * 34, 9);
  });
});

describe('sizes that draw nothing are findings', () => {
  test.each([
    [{ from: 'spread', ...AT, spreadM: 0 }, 'outline-zero-size'],
    [{ from: 'spread', ...AT, spreadM: -3 }, 'outline-zero-size'],
    [{ from: 'spread', ...AT, spreadM: Number.NaN }, 'outline-zero-size'],
    [{ from: 'spread', x: Number.NaN, y: 0, spreadM: 3 }, 'coordinates-not-finite'],
    [{ from: 'diameters', ...AT, aM: 4, bM: 0, bearingDeg: 0 }, 'outline-zero-size'],
    [{ from: 'radii', ...AT, radiiM: [4, 5] }, 'outline-radii-too-few'],
    [{ from: 'radii', ...AT, radiiM: [4, -5, 3] }, 'outline-zero-size'],
    [{ from: 'radii', ...AT, radiiM: [0, 0, 0] }, 'outline-zero-size'],
  ] as const)('%o', (shape, code) => {
    expect(codes(shape)).toEqual([code]);
    expect(crownOutline(shape).region).toEqual([]);
  });

  test('wrong options are misuse', () => {
    const shape = { from: 'spread', ...AT, spreadM: 8 } as const;
    expect(() => crownOutline(shape, { chordToleranceM: 0 })).toThrow(RangeError);
    expect(() => crownOutline(shape, { segments: 2 })).toThrow(RangeError);
  });
});

describe('into the plane', () => {
  test('bearings follow true north: an axis towards a point due north of the trunk stays on it', () => {
    // 40 km east of the centre at latitude 52° the plane's y axis is off true north by about half a degree.
    const plane = equalAreaPlane({ lon: 13, lat: 52 });
    const at = { lon: 13.6, lat: 52 };
    const shape = crownShapeInPlane({ from: 'diameters', at, aM: 2000, bM: 1, bearingDeg: 0 }, plane);
    const [ring] = crownOutline(shape, { segments: 64 }).region;
    const tip = plane.inverse(ring.slice(0, 2));
    expect(tip[0]).toBeCloseTo(13.6, 6);
    expect(tip[1]).toBeGreaterThan(52.008);
  });

  test('polygons and radii', () => {
    const plane = equalAreaPlane({ lon: -80.2, lat: 25.77 });
    const at = { lon: -80.2, lat: 25.77 };
    const radii = crownShapeInPlane({ from: 'radii', at, radiiM: [3, 3, 3] }, plane);
    const centre = regionCentroid(crownOutline(radii).region);
    expect(Math.hypot(...centre)).toBeLessThan(1e-6);
    const ring = Float64Array.of(-80.2, 25.77, -80.1999, 25.77, -80.1999, 25.7701);
    const drawn = crownShapeInPlane({ from: 'polygon', polygons: [[ring]] }, plane);
    expect(crownOutline(drawn).region[0]).toHaveLength(6);
  });
});
