/** Random valid polygons: stars, C shapes, polygons with holes, spiky and blunt ones, at any size. */
import type { Region } from '@crownfall/geometry';
import type { RandomStream } from '@crownfall/statistics';

/** A value between two bounds, its logarithm uniform. */
export function logUniform(random: RandomStream, low: number, high: number): number {
  return low * (high / low) ** random.uniform();
}

/**
 * One polygon of about `radius` around a middle, as `[shell, …holes]`: valid by construction, since every ring is made of
 * points that follow one another by angle, at shares of one radius per angle that do not meet.
 */
export function randomPolygon(random: RandomStream, x: number, y: number, radius: number): Region {
  const n = 4 + random.wholeBelow(random.wholeBelow(4) === 0 ? 60 : 12);
  const roughness = random.uniform() * 0.9;
  const angles = spreadAngles(random, n);
  const radii = angles.map(() => radius * (1 - roughness * random.uniform()));
  const ring = (from: number, to: number, share: (i: number) => number) =>
    Array.from({ length: to - from }, (_, k) => from + k).flatMap((i) => {
      const r = radii[i % n] * share(i);
      return [x + r * Math.cos(angles[i % n]), y + r * Math.sin(angles[i % n])];
    });
  const full = ring(0, n, () => 1);
  switch (random.wholeBelow(4)) {
    case 0:
      return [Float64Array.from(band(random, ring, 0, n - 1, { outer: 1 }))];
    case 1:
      return [Float64Array.from(full), clockwise(ring(0, n, () => 0.2 + 0.7 * random.uniform()))];
    case 2: {
      const half = n >> 1;
      const holes = [band(random, ring, 0, half, { outer: 0.9 }), band(random, ring, half + 1, n, { outer: 0.9 })];
      return [Float64Array.from(full), ...holes.filter((hole) => hole.length >= 8).map(clockwise)];
    }
    default:
      return [Float64Array.from(full)];
  }
}

type RingMaker = (from: number, to: number, share: (i: number) => number) => number[];

/** A strip along the angles: out along the outer shares, back along the inner ones. */
function band(random: RandomStream, ring: RingMaker, from: number, to: number, { outer }: { outer: number }): number[] {
  const inner = pairs(ring(from, to, () => 0.1 + 0.4 * random.uniform())).reverse();
  return [...ring(from, to, () => outer - 0.35 * random.uniform() * outer), ...inner.flat()];
}

/** Ascending, neighbours always less than half a turn apart. */
function spreadAngles(random: RandomStream, n: number): number[] {
  const steps = Array.from({ length: n }, () => 0.6 + random.uniform());
  const total = steps.reduce((sum, step) => sum + step, 0);
  let angle = 2 * Math.PI * random.uniform();
  return steps.map((step) => (angle += (2 * Math.PI * step) / total));
}

function clockwise(ring: number[]): Float64Array {
  return Float64Array.from(pairs(ring).reverse().flat());
}

function pairs(ring: number[]): [number, number][] {
  return Array.from({ length: ring.length / 2 }, (_, i) => [ring[2 * i], ring[2 * i + 1]]);
}
