/** An order in which places can be walked: block by block, each by a short path. */

export interface Place {
  readonly x: number;
  readonly y: number;
  readonly block: number;
}

/** Paths of up to so many places are shortened by exchanges; longer ones stay as the nearest-next path. */
const MOST_EXCHANGED = 200;

/**
 * Positions of the places in walking order: from the south-west, always to the nearest block not yet walked, and within a
 * block to the nearest tree, then shortened by 2-opt exchanges (Croes 1958, Operations Research 6:791–812, from memory). A
 * good order, not the shortest. No places give none.
 */
export function walkingOrder(places: readonly Place[]): number[] {
  const blocks = new Map<number, number[]>();
  places.forEach(({ block }, i) => {
    blocks.set(block, [...(blocks.get(block) ?? []), i]);
  });
  const left = new Set(blocks.keys());
  const order: number[] = [];
  let at = southWest(places);
  while (left.size > 0) {
    const block = nearestBlock(left, blocks, places, at);
    left.delete(block);
    const path = shortened(nearestNext(blocks.get(block) as number[], places, at), places);
    order.push(...path);
    at = places[path[path.length - 1]];
  }
  return order;
}

type Point = Pick<Place, 'x' | 'y'>;

function southWest(places: readonly Place[]): Point {
  return places.reduce((least, { x, y }) => ({ x: Math.min(least.x, x), y: Math.min(least.y, y) }), {
    x: Number.POSITIVE_INFINITY,
    y: Number.POSITIVE_INFINITY,
  });
}

function nearestBlock(
  left: ReadonlySet<number>,
  blocks: ReadonlyMap<number, number[]>,
  places: readonly Place[],
  at: Point,
): number {
  const distance = (block: number) => Math.min(...(blocks.get(block) as number[]).map((i) => gap(places[i], at)));
  return [...left].reduce((best, block) => (distance(block) < distance(best) ? block : best));
}

function nearestNext(own: readonly number[], places: readonly Place[], start: Point): number[] {
  const left = [...own];
  const path: number[] = [];
  let at = start;
  while (left.length > 0) {
    let best = 0;
    for (let i = 1; i < left.length; i++) if (gap(places[left[i]], at) < gap(places[left[best]], at)) best = i;
    const [next] = left.splice(best, 1);
    path.push(next);
    at = places[next];
  }
  return path;
}

/** Turns stretches of an open path round while that shortens it; the first place stays first. */
function shortened(path: number[], places: readonly Place[]): number[] {
  if (path.length > MOST_EXCHANGED) return path;
  const step = (i: number, j: number) => (j < path.length ? gap(places[path[i]], places[path[j]]) : 0);
  for (let improved = true; improved; ) {
    improved = false;
    for (let i = 1; i < path.length - 1; i++) {
      for (let j = i + 1; j < path.length; j++) {
        if (step(i - 1, j) + step(i, j + 1) >= step(i - 1, i) + step(j, j + 1) - 1e-9) continue;
        path.splice(i, j - i + 1, ...path.slice(i, j + 1).reverse());
        improved = true;
      }
    }
  }
  return path;
}

function gap(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
