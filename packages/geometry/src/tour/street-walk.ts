/**
 * How far it is on foot from place to place when nobody walks through houses: along the side of the street on which one
 * is, round corners, over the carriageway only at junctions.
 *
 * Each side of a street between two junctions is one stretch of sidewalk; at a junction the stretches left of two
 * neighbouring streets meet in a corner, and neighbouring corners are joined by a crossing. So a walk round a block crosses
 * nothing, and the trees of one side stay together.
 */
import { cyclesOf } from '../line/planar-faces.ts';
import { CELLS_PER_METRE, planarStreets } from '../streets/planar-streets.ts';

export interface WalkPlace {
  readonly x: number;
  readonly y: number;
  /** Places with the same open ground (a plaza, a car park) are walked to in a straight line. */
  readonly open?: string;
}

export interface StreetWalkOptions {
  /** Centre lines in the plane of the places, m. Without any, all ways are straight lines. */
  readonly streets?: readonly Float64Array[];
  /** What crossing a carriageway counts, in metres of walking. (A) 30. */
  readonly crossingM?: number;
}

const CROSSING_M = 30;
/** (A) Streets this far beyond the places still serve as ways, m. */
const STREETS_AROUND_M = 300;
/** (A) A place farther from any street than this belongs to none, m. */
const MOST_OFF_M = 100;
/** (A) Where no way along streets is known, a straight line times this. */
const DETOUR = 1.4;

/**
 * Costs in metres between all places, symmetric, row by row. Between places on one side of a street: the straight way
 * between their feet on its line and their distances from it. Between others: along the sidewalks and over crossings, never
 * less than the straight line.
 * @throws RangeError for a crossing cost that is negative or NaN
 * @example streetCosts([{ x: 10, y: 5 }, { x: 40, y: 5 }], { streets: [Float64Array.of(0, 0, 100, 0)] }) // 0, 30, 30, 0
 */
export function streetCosts(places: readonly WalkPlace[], options: StreetWalkOptions = {}): Float64Array {
  const crossingM = options.crossingM ?? CROSSING_M;
  if (!(crossingM >= 0)) throw new RangeError(`streetCosts: expected a crossing cost from 0 m, got ${crossingM}`);
  const near = streetsNear(options.streets ?? [], places);
  const walks = near.length === 0 ? null : sidewalksOf(near, crossingM);
  const stands = places.map((place) => (walks === null ? null : standOf(walks, place)));
  const between = walks === null ? () => Infinity : cornerDistances(walks, stands);
  const n = places.length;
  const costs = new Float64Array(n * n);
  for (let a = 0; a < n; a++) {
    for (let b = 0; b < a; b++) {
      const cost = costOf([places[a], stands[a]], [places[b], stands[b]], between, walks === null);
      costs[a * n + b] = cost;
      costs[b * n + a] = cost;
    }
  }
  return costs;
}

type Standing = readonly [place: WalkPlace, stand: Stand | null];
type Between = (a: number, b: number) => number;

function costOf([p, a]: Standing, [q, b]: Standing, between: Between, noStreets: boolean): number {
  const straight = Math.hypot(p.x - q.x, p.y - q.y);
  if (noStreets || (p.open !== undefined && p.open === q.open)) return straight;
  if (a === null || b === null) return straight * DETOUR;
  if (a.walk === b.walk) return Math.hypot(a.along - b.along, a.off - b.off);
  let least = Infinity;
  for (const [here, toHere] of endsOf(a)) {
    for (const [there, toThere] of endsOf(b)) least = Math.min(least, toHere + between(here, there) + toThere);
  }
  return Math.max(straight, Number.isFinite(least) ? least : straight * DETOUR);
}

function endsOf({ walk, along }: Stand): readonly (readonly [corner: number, metres: number])[] {
  return [
    [walk.from, along],
    [walk.to, walk.length - along],
  ];
}

/** One side of a street from junction to junction. */
interface Sidewalk {
  /** Corners at its ends. */
  readonly from: number;
  to: number;
  length: number;
}

interface Sidewalks {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly tail: Int32Array;
  /** Of each half-edge: the sidewalk to its left, and how far along it begins, m. */
  readonly walkOf: readonly Sidewalk[];
  readonly alongOf: Float64Array;
  readonly ways: ReadonlyMap<number, readonly (readonly [corner: number, metres: number])[]>;
}

/** Where a place lies beside the streets. */
interface Stand {
  readonly walk: Sidewalk;
  readonly along: number;
  readonly off: number;
}

function streetsNear(streets: readonly Float64Array[], places: readonly WalkPlace[]): readonly Float64Array[] {
  const xs = places.map(({ x }) => x);
  const ys = places.map(({ y }) => y);
  const [west, east] = [Math.min(...xs) - STREETS_AROUND_M, Math.max(...xs) + STREETS_AROUND_M];
  const [south, north] = [Math.min(...ys) - STREETS_AROUND_M, Math.max(...ys) + STREETS_AROUND_M];
  return streets.filter((line) => {
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = 0; i + 1 < line.length; i += 2) {
      minX = Math.min(minX, line[i]);
      maxX = Math.max(maxX, line[i]);
      minY = Math.min(minY, line[i + 1]);
      maxY = Math.max(maxY, line[i + 1]);
    }
    return minX <= east && maxX >= west && minY <= north && maxY >= south;
  });
}

/** A corner is named by the half-edge that leaves the junction on its right hand. */
function sidewalksOf(streets: readonly Float64Array[], crossingM: number): Sidewalks {
  const { network } = planarStreets(streets);
  const { next } = cyclesOf(network);
  const halfEdges = next.length;
  const tail = Int32Array.from({ length: halfEdges }, (_, h) =>
    h % 2 === 0 ? network.from[h >> 1] : network.to[h >> 1],
  );
  const degree = new Int32Array(network.x.length);
  for (const node of tail) degree[node]++;
  const x = network.x.map((cells) => cells / CELLS_PER_METRE);
  const y = network.y.map((cells) => cells / CELLS_PER_METRE);
  const walkOf: Sidewalk[] = new Array(halfEdges);
  const alongOf = new Float64Array(halfEdges);
  const ways = new Map<number, [number, number][]>();
  const join = (a: number, b: number, metres: number) => {
    for (const [from, to] of [
      [a, b],
      [b, a],
    ])
      ways.set(from, [...(ways.get(from) ?? []), [to, metres]]);
  };
  const junctionsFirst = Array.from(tail.keys()).sort(
    (g, h) => Number(degree[tail[g]] === 2) - Number(degree[tail[h]] === 2) || g - h,
  );
  // What is left after the junctions are loops without any: their first node serves as one.
  for (const start of junctionsFirst) {
    if (walkOf[start] !== undefined) continue;
    const walk: Sidewalk = { from: start, to: start, length: 0 };
    let h = start;
    do {
      walkOf[h] = walk;
      alongOf[h] = walk.length;
      walk.length += Math.hypot(x[tail[h]] - x[tail[h ^ 1]], y[tail[h]] - y[tail[h ^ 1]]);
      h = next[h];
    } while (degree[tail[h]] === 2 && h !== start);
    walk.to = h;
    join(walk.from, walk.to, walk.length);
    if (degree[tail[start]] > 2) join(start, next[start ^ 1], crossingM);
  }
  return { x, y, tail, walkOf, alongOf, ways };
}

function standOf({ x, y, tail, walkOf, alongOf }: Sidewalks, place: WalkPlace): Stand | null {
  let [best, off, part, left] = [-1, MOST_OFF_M, 0, true];
  for (let h = 0; h < tail.length; h += 2) {
    const [a, b] = [tail[h], tail[h + 1]];
    const [dx, dy] = [x[b] - x[a], y[b] - y[a]];
    const [px, py] = [place.x - x[a], place.y - y[a]];
    const t = Math.max(0, Math.min(1, (px * dx + py * dy) / (dx * dx + dy * dy)));
    const distance = Math.hypot(px - t * dx, py - t * dy);
    if (distance < off) [best, off, part, left] = [h, distance, t, dx * py - dy * px >= 0];
  }
  if (best < 0) return null;
  const own = left ? best : best + 1;
  const length = Math.hypot(x[tail[best]] - x[tail[best + 1]], y[tail[best]] - y[tail[best + 1]]);
  return { walk: walkOf[own], along: alongOf[own] + (left ? part : 1 - part) * length, off };
}

/** Distances over the network from all corners that places need: Dijkstra 1959, Numerische Mathematik 1:269–271. */
function cornerDistances({ ways }: Sidewalks, stands: readonly (Stand | null)[]): Between {
  const corners = new Set(stands.flatMap((stand) => (stand === null ? [] : [stand.walk.from, stand.walk.to])));
  const found = new Map<number, ReadonlyMap<number, number>>();
  for (const corner of corners) found.set(corner, distancesFrom(corner, ways));
  return (a, b) => found.get(a)?.get(b) ?? Infinity;
}

function distancesFrom(source: number, ways: Sidewalks['ways']): ReadonlyMap<number, number> {
  const settled = new Map<number, number>();
  const open = new Map<number, number>([[source, 0]]);
  while (open.size > 0) {
    let [corner, metres] = [-1, Infinity];
    for (const [each, own] of open) if (own < metres) [corner, metres] = [each, own];
    open.delete(corner);
    settled.set(corner, metres);
    for (const [next, more] of ways.get(corner) ?? []) {
      if (settled.has(next)) continue;
      open.set(next, Math.min(open.get(next) ?? Infinity, metres + more));
    }
  }
  return settled;
}
