/** Small shapes on the plan and questions about them. Metres; rings open. */
import type { Point } from './loop.ts';

export type Ring = readonly Point[];

export function circle([x, y]: Point, radius: number, vertices = 32): Ring {
  return Array.from({ length: vertices }, (_, i) => {
    const angle = (2 * Math.PI * i) / vertices;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}

/** A rectangle about `at`, `length` along the direction (east, north) and `width` across. */
export function rectangle(at: Point, [ux, uy]: Point, [length, width]: Point): Ring {
  const corner = (a: number, b: number): Point => [
    at[0] + (a * length * ux) / 2 - (b * width * uy) / 2,
    at[1] + (a * length * uy) / 2 + (b * width * ux) / 2,
  ];
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}

export function isInside(ring: Ring, [x, y]: Point): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [xi, yi] = ring[i];
    const [xj, yj] = ring[j];
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
}

/** Distance from a point to the ring's line. */
export function distanceToRing(ring: Ring, point: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++)
    least = Math.min(least, toSegment(ring[j], ring[i], point));
  return least;
}

function toSegment(a: Point, b: Point, p: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const t = Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy || 1)));
  return Math.sqrt((p[0] - a[0] - t * dx) ** 2 + (p[1] - a[1] - t * dy) ** 2);
}

export function areaOf(ring: Ring): number {
  let twice = 0;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++)
    twice += ring[j][0] * ring[i][1] - ring[i][0] * ring[j][1];
  return twice / 2;
}

export function centroid(ring: Ring): Point {
  let [x, y, twice] = [0, 0, 0];
  const [ox, oy] = ring[0];
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [ax, ay, bx, by] = [ring[j][0] - ox, ring[j][1] - oy, ring[i][0] - ox, ring[i][1] - oy];
    const cross = ax * by - bx * ay;
    x += (ax + bx) * cross;
    y += (ay + by) * cross;
    twice += cross;
  }
  return [ox + x / (3 * twice), oy + y / (3 * twice)];
}

/** True when two convex rings share ground (separating axes). */
export function convexOverlap(a: Ring, b: Ring): boolean {
  return [a, b].every((ring) => ring.every((p, i) => !separates(p, ring[(i + 1) % ring.length], a, b)));
}

function separates(p: Point, q: Point, a: Ring, b: Ring): boolean {
  const [nx, ny] = [q[1] - p[1], p[0] - q[0]];
  const span = (ring: Ring) => {
    const values = ring.map(([x, y]) => x * nx + y * ny);
    return [Math.min(...values), Math.max(...values)];
  };
  const [aLo, aHi] = span(a);
  const [bLo, bHi] = span(b);
  return aHi <= bLo || bHi <= aLo;
}

export function boundsOf(ring: Ring): readonly [x0: number, y0: number, x1: number, y1: number] {
  const xs = ring.map((p) => p[0]);
  const ys = ring.map((p) => p[1]);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}
