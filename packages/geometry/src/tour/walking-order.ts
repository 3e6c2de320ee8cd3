/** In which order trees are walked to, and blocks of a day: docs/methods/walking-order.md. */
import { MOST_PLACES, shortWalk, type WalkEnds } from './short-tour.ts';
import { type StreetWalkOptions, streetCosts, type WalkPlace } from './street-walk.ts';

/** Where one comes from and goes on to: positions in the plane, m, which need not be places of the walk. */
export interface DayEnds {
  readonly from?: { readonly x: number; readonly y: number };
  readonly to?: { readonly x: number; readonly y: number };
}

/**
 * Positions of the places in the order of a short walk along the streets' sides. It begins and ends at the places told as
 * `start` and `end`; with `from` and `to` at whichever make the way from there and on to there shortest together. More than
 * 1,500 places are split in halves, west and east or south and north, and walked one part after another. No places give none.
 * @throws RangeError for ends that are no place
 * @example walkingOrder([{ x: 0, y: 0 }, { x: 9, y: 0 }, { x: 4, y: 0 }], { start: 1 }) // [1, 2, 0]
 */
export function walkingOrder(
  places: readonly WalkPlace[],
  options: StreetWalkOptions & WalkEnds & DayEnds = {},
): readonly number[] {
  if (places.length === 0) return [];
  if (places.length >= MOST_PLACES - 2) return walkInGroups(halved(places), options);
  const { from, to } = options;
  const all = [...places];
  const ends: { start?: number; end?: number } = {};
  if (options.start !== undefined) ends.start = options.start;
  if (options.end !== undefined) ends.end = options.end;
  if (from !== undefined) ends.start = all.push(from) - 1;
  if (to !== undefined) ends.end = all.push(to) - 1;
  const order = Array.from(shortWalk(inOnePass(streetCosts(all, options)), all.length, ends));
  return order.filter((place) => place < places.length);
}

/** (A) Weight of the root of a way beside the way itself, metres to the root of a metre. */
const ONE_PASS = 0.5;

/**
 * Where a stretch must be walked twice, its places cost the same metres on either pass, or shared between both. Adding a
 * little of each way's root makes many short ways and one long one the cheapest: all are done on one pass.
 */
function inOnePass(costs: Float64Array): Float64Array {
  return costs.map((metres) => metres + ONE_PASS * Math.sqrt(metres));
}

/**
 * Positions of the places of several groups (blocks), group after group: the groups in the order of a short walk between
 * their middles, each walked on the way from where the one before ended to the middle of the next.
 * @example walkInGroups([{ x: 0, y: 0, group: 'a' }, { x: 50, y: 0, group: 'b' }, { x: 5, y: 0, group: 'a' }]) // [0, 2, 1]
 */
export function walkInGroups(
  places: readonly (WalkPlace & { readonly group: string | number })[],
  options: StreetWalkOptions & DayEnds = {},
): readonly number[] {
  const groups = new Map<string | number, number[]>();
  places.forEach(({ group }, i) => {
    const own = groups.get(group);
    if (own === undefined) groups.set(group, [i]);
    else own.push(i);
  });
  const members = orderedGroups([...groups.values()], places, options);
  const out: number[] = [];
  members.forEach((own, k) => {
    const next = members[k + 1]?.map((i) => places[i]);
    const from = k === 0 ? options.from : places[out[out.length - 1]];
    const to = next === undefined ? options.to : middleOf(next);
    const { streets, crossingM } = options;
    const order = walkingOrder(
      own.map((i) => places[i]),
      {
        ...(streets === undefined ? {} : { streets }),
        ...(crossingM === undefined ? {} : { crossingM }),
        ...(from === undefined ? {} : { from: pointOf(from) }),
        ...(to === undefined ? {} : { to }),
      },
    );
    for (const i of order) out.push(own[i]);
  });
  return out;
}

/** Of a place only where it is: on the way in nobody stands on its open ground. */
function pointOf({ x, y }: Point): Point {
  return { x, y };
}

type Point = { readonly x: number; readonly y: number };

function orderedGroups(
  groups: readonly (readonly number[])[],
  places: readonly WalkPlace[],
  { from, to, ...streets }: StreetWalkOptions & DayEnds,
): readonly (readonly number[])[] {
  const stops: Point[] = groups.map((own) => {
    const here = own.map((i) => places[i]);
    return pointOf(here[nearest(here, middleOf(here))]);
  });
  const ends = { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
  return walkingOrder(stops, { ...streets, ...ends }).map((i) => groups[i]);
}

function middleOf(points: readonly Point[]): Point {
  const sum = points.reduce((total, { x, y }) => ({ x: total.x + x, y: total.y + y }), { x: 0, y: 0 });
  return { x: sum.x / points.length, y: sum.y / points.length };
}

function nearest(points: readonly Point[], { x, y }: Point): number {
  const away = (i: number) => Math.hypot(points[i].x - x, points[i].y - y);
  return points.reduce((best, _, i) => (away(i) < away(best) ? i : best), 0);
}

/** Each half in turn, cut across the longer side, until none has too many. */
function halved(places: readonly WalkPlace[]): (WalkPlace & { group: number })[] {
  const out: (WalkPlace & { group: number })[] = places.map((place) => ({ ...place, group: 0 }));
  let groups = 0;
  const cut = (own: readonly number[]) => {
    if (own.length < MOST_PLACES) {
      const group = groups++;
      for (const i of own) out[i].group = group;
      return;
    }
    const span = (axis: 'x' | 'y') => {
      const values = own.map((i) => places[i][axis]);
      return values.reduce((a, b) => Math.max(a, b)) - values.reduce((a, b) => Math.min(a, b));
    };
    const axis = span('x') >= span('y') ? 'x' : 'y';
    const sorted = own.toSorted((i, k) => places[i][axis] - places[k][axis] || i - k);
    cut(sorted.slice(0, sorted.length >> 1));
    cut(sorted.slice(sorted.length >> 1));
  };
  cut([...places.keys()]);
  return out;
}
