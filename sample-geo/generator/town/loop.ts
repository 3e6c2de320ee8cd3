/**
 * Loops: closed lines that know their outward side, so that kerbs, sidewalks and driveways can be laid out as strips
 * "from here to there along the loop, from so far inside to so far outside". Metres on the plan.
 */
export type Point = readonly [x: number, y: number];

/** An edge chain of a face: each vertex with the name of the street whose line starts there. */
export interface Corner {
  readonly at: Point;
  readonly street: string;
}

export interface Loop {
  /** Counter-clockwise; not repeated at the end. */
  readonly points: readonly Point[];
  /** Outward, of unit length except at gentle bends, where it is longer so that parallels stay parallel. */
  readonly normals: readonly Point[];
  /** Way from the first point to each point; one more than points: the last is the whole length. */
  readonly along: readonly number[];
  readonly sides: readonly Side[];
}

/** The stretch of a loop along one street: from the middle of one rounded corner to the middle of the next. */
export interface Side {
  readonly street: string;
  readonly from: number;
  readonly to: number;
  /** The part between the roundings. */
  readonly straightFrom: number;
  readonly straightTo: number;
}

/** A face drawn inwards, each edge by its street's distance. Vertices keep their order and streets. */
export function inset(face: readonly Corner[], distance: (street: string) => number): readonly Corner[] {
  return face.map(({ at, street }, i) => {
    const before = face[(i + face.length - 1) % face.length];
    const after = face[(i + 1) % face.length];
    return { at: insetVertex(before, at, after.at, [distance(before.street), distance(street)]), street };
  });
}

function insetVertex(before: Corner, at: Point, after: Point, [d0, d1]: readonly [number, number]): Point {
  const u = unit(before.at, at);
  const v = unit(at, after);
  const cross = u[0] * v[1] - u[1] * v[0];
  if (Math.abs(cross) < 1e-3) return [at[0] - v[1] * d1, at[1] + v[0] * d1];
  const p: Point = [at[0] - u[1] * d0, at[1] + u[0] * d0];
  const q: Point = [at[0] - v[1] * d1, at[1] + v[0] * d1];
  const t = ((q[0] - p[0]) * v[1] - (q[1] - p[1]) * v[0]) / cross;
  return [p[0] + u[0] * t, p[1] + u[1] * t];
}

/** A face with its corners rounded, ready for strips. */
export function roundedLoop(face: readonly Corner[], radius: number): Loop {
  const points: Point[] = [];
  const normals: Point[] = [];
  const marks: { readonly street: string; readonly start: number; readonly middle: number; readonly end: number }[] =
    [];
  for (const [i, { at, street }] of face.entries()) {
    const before = face[(i + face.length - 1) % face.length].at;
    const after = face[(i + 1) % face.length].at;
    const arc = isBend(before, at, after) ? bend(before, at, after) : rounding([before, at, after], radius);
    if (arc.length > 1) {
      marks.push({
        street,
        start: points.length,
        middle: points.length + (arc.length >> 1),
        end: points.length + arc.length - 1,
      });
    }
    for (const [point, normal] of arc) {
      points.push(point);
      normals.push(normal);
    }
  }
  const along = [0];
  for (let i = 0; i < points.length; i++) along.push(along[i] + gap(points[i], points[(i + 1) % points.length]));
  const length = along[points.length];
  const sides = marks.map((mark, i) => {
    const next = marks[(i + 1) % marks.length];
    const turn = i + 1 === marks.length ? length : 0;
    return {
      street: mark.street,
      from: along[mark.middle],
      straightFrom: along[mark.end],
      straightTo: along[next.start] + turn,
      to: along[next.middle] + turn,
    };
  });
  return { points, normals, along, sides };
}

/** The point `s` metres along the loop and `d` metres outside it (negative: inside). */
export function onLoop(loop: Loop, s: number, d: number): Point {
  const { points, normals, along } = loop;
  const length = along[points.length];
  const way = ((s % length) + length) % length;
  let i = upperIndex(along, way);
  if (i >= points.length) i = points.length - 1;
  const j = (i + 1) % points.length;
  const t = (way - along[i]) / (along[i + 1] - along[i] || 1);
  const mix = (a: number, b: number) => a + (b - a) * t;
  const x = mix(points[i][0], points[j][0]) + mix(normals[i][0], normals[j][0]) * d;
  const y = mix(points[i][1], points[j][1]) + mix(normals[i][1], normals[j][1]) * d;
  return [x, y];
}

/** The line parallel to the loop at distance `d`, from `s0` to `s1` (s1 > s0), with every vertex between. */
export function parallel(loop: Loop, [s0, s1]: readonly [number, number], d: number): readonly Point[] {
  const length = loop.along[loop.points.length];
  const stops: number[] = [];
  for (let turn = -1; turn <= 1; turn++) {
    for (let i = 0; i < loop.points.length; i++) {
      const s = loop.along[i] + turn * length;
      if (s > s0 + 1e-6 && s < s1 - 1e-6) stops.push(s);
    }
  }
  return [s0, ...stops, s1].map((s) => onLoop(loop, s, d));
}

/** The strip between two parallels, counter-clockwise. */
export function strip(
  loop: Loop,
  span: readonly [number, number],
  [d0, d1]: readonly [number, number],
): readonly Point[] {
  return [...parallel(loop, span, d1), ...parallel(loop, span, d0).toReversed()];
}

/** The whole loop drawn outwards by `d`. */
export function drawnOut(loop: Loop, d: number): readonly Point[] {
  return loop.points.map(([x, y], i) => [x + loop.normals[i][0] * d, y + loop.normals[i][1] * d]);
}

export function gap(a: Point, b: Point): number {
  return Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2);
}

function unit(a: Point, b: Point): Point {
  const length = gap(a, b);
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}

function upperIndex(along: readonly number[], way: number): number {
  let lo = 0;
  let hi = along.length - 1;
  while (hi - lo > 1) {
    const middle = (lo + hi) >> 1;
    if (along[middle] <= way) lo = middle;
    else hi = middle;
  }
  return lo;
}

/** A turn of less than about 14 degrees is a bend of one street, not a corner. */
function isBend(before: Point, at: Point, after: Point): boolean {
  const u = unit(before, at);
  const v = unit(at, after);
  return u[0] * v[0] + u[1] * v[1] > 0.97;
}

/** The face without bends nearer than `reach` to a corner, which an inset would fold over. */
export function straightNearCorners(face: readonly Corner[], reach: number): readonly Corner[] {
  const around = (i: number) => face[(i + face.length) % face.length].at;
  const corners = face.filter((corner, i) => !isBend(around(i - 1), corner.at, around(i + 1)));
  return face.filter(
    (vertex) => corners.includes(vertex) || corners.every((corner) => gap(corner.at, vertex.at) > reach),
  );
}

function bend(before: Point, at: Point, after: Point): readonly (readonly [Point, Point])[] {
  const u = unit(before, at);
  const v = unit(at, after);
  const nx = u[1] + v[1];
  const ny = -(u[0] + v[0]);
  // The mean normal, lengthened by 1 / cos(half the turn).
  const scale = 2 / (nx * nx + ny * ny);
  return [[at, [nx * scale, ny * scale]]];
}

function rounding(
  [before, at, after]: readonly [Point, Point, Point],
  radius: number,
): readonly (readonly [Point, Point])[] {
  const u = unit(before, at);
  const v = unit(at, after);
  const turn = Math.atan2(u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1]);
  const back = radius * Math.tan(turn / 2);
  const start: Point = [at[0] - u[0] * back, at[1] - u[1] * back];
  const centre: Point = [start[0] - u[1] * radius, start[1] + u[0] * radius];
  const steps = 2 * Math.max(3, Math.ceil((turn / Math.PI) * 10));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = (turn * i) / steps;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const normal: Point = [u[1] * c + u[0] * s, -u[0] * c + u[1] * s];
    return [[centre[0] + normal[0] * radius, centre[1] + normal[1] * radius], normal];
  });
}
