/** Path data: hundredths of a millimetre, relative, without what the eye cannot see at the drawing's scale. */

/** A vertex nearer than this to the line through its neighbours is left out, mm. A hair is 0.07. */
const TOLERANCE_MM = 0.025;

/**
 * The path of a line in millimetres (flat x, y). `closed` ends it at its start. Fewer than two distinct points give ''.
 * @example pathText(Float64Array.of(0, 0, 10, 0, 10, 5), true) // 'M0 0h10v5z'
 */
export function pathText(points: Float64Array, closed: boolean): string {
  const kept = simplified(points, closed);
  const at = (i: number) => [Math.round(kept[i] * 100), Math.round(kept[i + 1] * 100)] as const;
  if (kept.length < 4) return '';
  let [x, y] = at(0);
  let text = `M${hundredths(x)}${joined(y)}`;
  let steps = 0;
  for (let i = 2; i < kept.length; i += 2) {
    const [nx, ny] = at(i);
    if (nx === x && ny === y) continue;
    text += step(nx - x, ny - y);
    steps++;
    [x, y] = [nx, ny];
  }
  return steps === 0 ? '' : text + (closed ? 'z' : '');
}

function step(dx: number, dy: number): string {
  if (dy === 0) return `h${hundredths(dx)}`;
  if (dx === 0) return `v${hundredths(dy)}`;
  return `l${hundredths(dx)}${joined(dy)}`;
}

function hundredths(value: number): string {
  const text = String(value / 100);
  return text.replace(/^(-?)0\./, '$1.');
}

function joined(value: number): string {
  return value < 0 ? hundredths(value) : ` ${hundredths(value)}`;
}

/**
 * The line's vertices that are seen, flat. Ramer 1972, Douglas and Peucker 1973. A closed line is cut at its first point
 * and the one farthest from it.
 */
export function simplified(points: Float64Array, closed: boolean): readonly number[] {
  const count = points.length / 2;
  if (count < 3) return Array.from(points);
  const keep = new Uint8Array(count);
  const last = count - 1;
  keep[0] = 1;
  keep[last] = 1;
  if (closed) {
    const far = farthest(0, last, (i) => Math.hypot(points[2 * i] - points[0], points[2 * i + 1] - points[1]));
    keep[far.index] = 1;
    thin(points, keep, 0, far.index);
    thin(points, keep, far.index, last);
  } else thin(points, keep, 0, last);
  const out: number[] = [];
  for (let i = 0; i < count; i++) if (keep[i] === 1) out.push(points[2 * i], points[2 * i + 1]);
  return out;
}

function thin(points: Float64Array, keep: Uint8Array, from: number, to: number): void {
  const stack = [[from, to] as const];
  for (let span = stack.pop(); span !== undefined; span = stack.pop()) {
    const [a, b] = span;
    const far = farthest(a, b, (i) => offLine(points, i, a, b));
    if (far.index < 0 || far.distance <= TOLERANCE_MM) continue;
    keep[far.index] = 1;
    stack.push([a, far.index], [far.index, b]);
  }
}

/** The vertex strictly between `a` and `b` with the greatest distance; index -1 when there is none. */
function farthest(a: number, b: number, distanceOf: (i: number) => number) {
  let index = -1;
  let distance = -1;
  for (let i = a + 1; i < b; i++) {
    const own = distanceOf(i);
    if (own > distance) [index, distance] = [i, own];
  }
  return { index, distance };
}

function offLine(points: Float64Array, i: number, a: number, b: number): number {
  const [ax, ay] = [points[2 * a], points[2 * a + 1]];
  const [dx, dy] = [points[2 * b] - ax, points[2 * b + 1] - ay];
  const [px, py] = [points[2 * i] - ax, points[2 * i + 1] - ay];
  const length = dx * dx + dy * dy;
  const t = length === 0 ? 0 : Math.max(0, Math.min(1, (px * dx + py * dy) / length));
  return Math.hypot(px - t * dx, py - t * dy);
}
