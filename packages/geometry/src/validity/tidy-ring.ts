/** A ring as it came, made usable: finite, open, without repeated vertices and spikes. What was mended is told. */
import { orient2d } from 'robust-predicates';

export interface TidyRing {
  /** Flat and open; any winding; empty when nothing usable is left. */
  readonly ring: Float64Array;
  /** For each vertex of `ring` its number in the ring as it came, counted from 1. */
  readonly vertexNumbers: Int32Array;
  /** Vertices in the ring as it came, the closing one not counted. */
  readonly given: number;
  /** Distinct finite vertices in a row, before spikes went. */
  readonly distinct: number;
  readonly closed: boolean;
  /** Number of the first vertex with a coordinate that cannot be used, from 1; 0 when there is none. */
  readonly firstUnusable: number;
  readonly unusable: number;
}

/** Beyond every coordinate on Earth in metres, feet or degrees; such values are damage, like NaN. */
const FARTHEST = 1e8;

/**
 * Tidies one flat ring. Vertices that are not finite (or beyond 1e8) are skipped, the closing vertex and repeated vertices dropped,
 * and spikes (an edge that runs back exactly over the one before) cut off: none of these changes what the ring
 * encloses, save the first. Anything that is not a list of numbers gives an empty ring.
 */
export function tidyRing(raw: ArrayLike<number>): TidyRing {
  const count = Math.ceil((raw?.length ?? 0) / 2) || 0;
  const numbers: number[] = [];
  let firstUnusable = 0;
  for (let i = 0; i < count; i++) {
    if (usable(raw[2 * i]) && usable(raw[2 * i + 1])) numbers.push(i + 1);
    else firstUnusable ||= i + 1;
  }
  const same = (a: number, b: number) => raw[2 * a - 2] === raw[2 * b - 2] && raw[2 * a - 1] === raw[2 * b - 1];
  const unusable = count - numbers.length;
  const closed = numbers.length > 1 && same(numbers[0], numbers[numbers.length - 1]);
  const distinct = numbers.filter((number, i) => i === 0 || !same(number, numbers[i - 1]));
  while (distinct.length > 1 && same(distinct[0], distinct[distinct.length - 1])) distinct.pop();
  const kept = withoutSpikes(raw, distinct, same);
  return {
    ring: Float64Array.from(kept.flatMap((number) => [raw[2 * number - 2], raw[2 * number - 1]])),
    vertexNumbers: Int32Array.from(kept),
    given: closed ? count - 1 : count,
    distinct: distinct.length,
    closed,
    firstUnusable,
    unusable,
  };
}

function usable(value: unknown): boolean {
  return typeof value === 'number' && Math.abs(value) <= FARTHEST;
}

/** One pass with a stack, then the seam between the last and the first vertex. */
function withoutSpikes(
  raw: ArrayLike<number>,
  vertices: readonly number[],
  same: (a: number, b: number) => boolean,
): number[] {
  const stack: number[] = [];
  for (const next of vertices) {
    while (stack.length > 1 && runsBack(raw, stack[stack.length - 2], stack[stack.length - 1], next)) stack.pop();
    if (stack.length === 0 || !same(stack[stack.length - 1], next)) stack.push(next);
  }
  let first = 0;
  for (let changed = true; changed && stack.length - first > 2; ) {
    const last = stack.length - 1;
    changed = true;
    if (same(stack[last], stack[first])) stack.pop();
    else if (runsBack(raw, stack[last - 1], stack[last], stack[first])) stack.pop();
    else if (runsBack(raw, stack[last], stack[first], stack[first + 1])) first++;
    else changed = false;
  }
  return stack.slice(first);
}

/** Whether a → b → c turns straight back at b. */
function runsBack(raw: ArrayLike<number>, a: number, b: number, c: number): boolean {
  const [ax, ay, bx, by, cx, cy] = [a, b, c].flatMap((number) => [raw[2 * number - 2], raw[2 * number - 1]]);
  return (bx - ax) * (cx - bx) + (by - ay) * (cy - by) < 0 && orient2d(ax, ay, bx, by, cx, cy) === 0;
}
