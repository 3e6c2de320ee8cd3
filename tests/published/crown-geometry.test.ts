/**
 * Crown outlines, drift rings and widened lines against published formulas and closed forms.
 *
 * Numbers: crown area conventions for n radii, Pretzsch et al. 2015, Urban For. Urban Green. 14:466–479 [formulas from
 * memory; values computed independently with shapely 1.8.5]; mean of two diameters, GTR-SRS-102 [from memory]; offset of a
 * convex polygon, Steiner's formula A + Pδ + πδ²; offsets of GEOS 3.11.1 with 8, 16 and 64 segments to a quadrant.
 */
import {
  cleanRegion,
  crownArea,
  crownAreaFromRadii,
  crownOutline,
  falloutZone,
  meanSpread,
  offsetRegion,
  quadraticMeanRadius,
  type Region,
  regionArea,
  regionCentroid,
  reversed,
  widenLine,
} from '@crownfall/geometry';
import { describe, expect, test } from 'vitest';

const RECTANGLE: Region = [Float64Array.of(0, 0, 10, 0, 10, 6, 0, 6)];
const AT = { x: 0, y: 0 };

const perimeter = (ring: Float64Array) => {
  let sum = 0;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    sum += Math.hypot(ring[i] - ring[j], ring[i + 1] - ring[j + 1]);
  }
  return sum;
};

describe('crown area from n radii, by convention', () => {
  test.each([
    {
      radii: [4.1, 3.8, 4.6, 5.0, 4.4, 3.9, 3.5, 4.0],
      polygon: 49.239380707925235,
      meanCircle: 54.43251058811227,
      quadratic: 55.06819222661209,
      radius: 4.186735004750122,
      diameter: 8.325,
      centroid: [0.39830307594599973, -0.264315536220722],
      around: 25.740009512582073,
    },
    {
      radii: [5, 4, 3, 4],
      polygon: 32,
      meanCircle: 50.26548245743669,
      quadratic: 51.836278784231595,
      radius: 4.06201920231798,
      diameter: 8,
      centroid: [0, 2 / 3],
      around: 22.806248474865697,
    },
    {
      radii: [2.5, 3.75, 6.1, 4.2, 0.8, 1.9, 3.3, 2.2],
      polygon: 28.913596282717933,
      meanCircle: 30.06909140413434,
      quadratic: 37.36237238052086,
      radius: 3.448595728698857,
      diameter: 6.1875,
      centroid: [1.5995624288694834, 0.17166801770593035],
      around: 22.978635015265013,
    },
  ])('$radii', (published) => {
    const shape = { from: 'radii', ...AT, radiiM: published.radii } as const;
    expect(crownAreaFromRadii(published.radii, 'polygon')).toBeCloseTo(published.polygon, 9);
    expect(crownAreaFromRadii(published.radii, 'mean_radius')).toBeCloseTo(published.meanCircle, 9);
    expect(crownAreaFromRadii(published.radii, 'quadratic_mean')).toBeCloseTo(published.quadratic, 9);
    expect(quadraticMeanRadius(published.radii)).toBeCloseTo(published.radius, 9);
    expect(meanSpread(shape)).toBeCloseTo(published.diameter, 9);

    const straight = crownOutline(shape, { segments: published.radii.length }).region;
    expect(regionArea(straight)).toBeCloseTo(published.polygon, 9);
    expect(regionCentroid(straight)[0]).toBeCloseTo(published.centroid[0], 9);
    expect(regionCentroid(straight)[1]).toBeCloseTo(published.centroid[1], 9);
    expect(perimeter(straight[0])).toBeCloseTo(published.around, 9);

    // The smooth outline has the area of the quadratic mean radius, whatever the tolerance it is drawn with.
    for (const chordToleranceM of [0.1, 0.01, 0.001]) {
      expect(regionArea(crownOutline(shape, { chordToleranceM }).region)).toBeCloseTo(published.quadratic, 9);
    }
  });
});

describe('crown area from one spread and from two diameters', () => {
  test('9.2 m by 7.4 m: ellipse 53.469907 m², mean spread 8.3 m, circle of that spread 54.106079 m²', () => {
    const ellipse = { from: 'diameters', ...AT, aM: 9.2, bM: 7.4, bearingDeg: 30 } as const;
    const circle = { from: 'spread', ...AT, spreadM: 8.3 } as const;
    expect(meanSpread(ellipse)).toBeCloseTo(8.3, 12);
    expect(crownArea(ellipse)).toBeCloseTo(53.46990696409827, 9);
    expect(regionArea(crownOutline(ellipse).region)).toBeCloseTo(53.46990696409827, 9);
    expect(regionArea(crownOutline(circle).region)).toBeCloseTo(54.10607947645022, 9);
  });

  test('a 64-gon inscribed in r = 6 m has the area of 64 triangles, less than the circle', () => {
    const { region } = crownOutline({ from: 'spread', ...AT, spreadM: 12 }, { segments: 64 });
    // The strip −6…6 of crown_pavement_overlap: 64-gon with a vertex at angle 0.
    expect(regionArea(region)).toBeCloseTo(112.9157456596538, 9);
    expect([region[0][0], region[0][1]]).toEqual([6, expect.closeTo(0, 12)]);
  });
});

describe("drift ring of a 10 m × 6 m crown, Steiner's formula", () => {
  test.each([
    [0.5, 76.78539816339745],
    [1, 95.1415926535898],
    [2.5, 159.6349540849362],
  ])('δ = %f m: %f m², approached from above as the tolerance tightens', (deltaM, exact) => {
    const excess = [0.1, 0.01, 1e-3, 1e-4, 1e-6].map((t) => regionArea(offsetRegion(RECTANGLE, deltaM, t)) - exact);
    for (let i = 0; i < excess.length; i++) expect(excess[i]).toBeGreaterThan(0);
    for (let i = 1; i < excess.length; i++) expect(excess[i]).toBeLessThan(excess[i - 1]);
    // The whole excess lies within the tolerance of the four quarter arcs.
    expect(excess[1]).toBeLessThan(2 * Math.PI * (deltaM + 0.01) * 0.01);
    expect(excess[4]).toBeLessThan(2e-5);
  });

  test('worked example of docs/methods/drift-rings.md: δ = 1 m, tolerance 1 cm', () => {
    const ring = offsetRegion(RECTANGLE, 1, 0.01);
    expect(ring).toHaveLength(1);
    expect(ring[0].length / 2).toBe(24);
    expect(regionArea(ring)).toBeCloseTo(92 + 24 * Math.tan(Math.PI / 24), 9);
  });
});

describe('widened lines, chords inside the circle as GEOS 3.11.1 draws them', () => {
  test.each([8, 16, 64])('%i segments to a quadrant: two half discs and a rectangle', (segmentsPerQuadrant) => {
    const inscribed = 2 * segmentsPerQuadrant * Math.sin(Math.PI / 2 / segmentsPerQuadrant);
    const region = widenLine(Float64Array.of(0, 0, 10, 0), 3, { segmentsPerQuadrant });
    expect(regionArea(region)).toBeCloseTo(30 + inscribed * 1.5 ** 2, 9);
  });

  test('the rectangle published with GEOS areas: border widened, hole filled', () => {
    const border = Float64Array.of(0, 0, 10, 0, 10, 6, 0, 6, 0, 0);
    for (const [segmentsPerQuadrant, geos] of [
      [8, 95.12144515225806],
      [16, 95.13654849054593],
      [64, 95.1412772509327],
    ]) {
      const region = cleanRegion([...RECTANGLE, ...widenLine(border, 2, { segmentsPerQuadrant })]);
      // The joint of a closed line is drawn by its two end caps, whose chords start at the same angles here.
      expect(regionArea(region)).toBeCloseTo(geos, 5);
    }
  });
});

describe('closed forms for shapes that are not convex', () => {
  test('a square hole shrinks by the distance on every side and vanishes at half its width', () => {
    const hole = reversed(Float64Array.of(3, 1, 7, 1, 7, 5, 3, 5));
    const crown = [...RECTANGLE, hole];
    const outer = (d: number) => regionArea(offsetRegion(RECTANGLE, d, 1e-4));
    for (const d of [0.5, 1, 1.9]) {
      const left = (4 - 2 * d) ** 2;
      expect(regionArea(cleanRegion(offsetRegion(crown, d, 1e-4)))).toBeCloseTo(outer(d) - left, 4);
    }
    for (const d of [2.01, 2.5, 2.9, 5]) {
      expect(regionArea(cleanRegion(offsetRegion(crown, d, 1e-4)))).toBeCloseTo(outer(d), 4);
    }
  });

  test('an L: inner corner stays sharp, A + Pδ + (5/4)πδ² − δ²', () => {
    const ell = [Float64Array.of(0, 0, 8, 0, 8, 3, 3, 3, 3, 8, 0, 8)];
    // Five outer corners of a quarter disc each; the strips along the inner corner overlap in a square.
    const exact = 39 + 32 * 1 + (5 / 4) * Math.PI - 1;
    const region = offsetRegion(ell, 1, 1e-5);
    expect(regionArea(region)).toBeCloseTo(exact, 3);
    expect(regionArea(cleanRegion(region))).toBeCloseTo(exact, 3);
  });
});

test('layers of a fallout zone hold one another, with and without wind', () => {
  const rings = [
    { to_m: 0.5, share: 0.5 },
    { to_m: 1, share: 0.25 },
  ];
  for (const distance_m of [0, 0.4, 0.8, 5, 40]) {
    const { layers } = falloutZone(RECTANGLE, rings, 0.01, { towards_deg: 60, distance_m });
    expect(layers).toHaveLength(3);
    for (let i = 1; i < layers.length; i++) {
      const own = regionArea(cleanRegion(layers[i]));
      expect(regionArea(cleanRegion([...layers[i], ...layers[i - 1]]))).toBeCloseTo(own, 4);
      expect(own).toBeGreaterThan(regionArea(cleanRegion(layers[i - 1])));
    }
  }
});
