/** A short walk past all trees of a block: nearest neighbour, then two-edge exchanges until none shortens it. */
import type { Position } from './sketch.ts';

/** Croes GA (1958) Operations Research 6:791–812 (2-opt). Rounds are bounded: a block has a few dozen trees. */
const ROUNDS_MOST = 60;

/**
 * Indices in walking order, an open walk from the most north-western tree. Distances on a plane scaled at the first
 * latitude, which is enough within a block. Deterministic.
 * @example walkingOrder([[0, 0], [2, 0], [1, 0]]) // [0, 2, 1]
 */
export function walkingOrder(trees: readonly Position[]): number[] {
  if (trees.length < 3) return [...trees.keys()];
  const scale = Math.cos((trees[0][1] * Math.PI) / 180);
  const at = trees.map(([lon, lat]) => [lon * scale, lat] as const);
  const order = nearestFirst(at);
  for (let round = 0; round < ROUNDS_MOST && shortened(order, at); round++);
  return order;
}

type Places = readonly (readonly [x: number, y: number])[];

function nearestFirst(at: Places): number[] {
  const left = new Set(at.keys());
  let here = [...left].reduce((best, i) => (at[i][1] - at[i][0] > at[best][1] - at[best][0] ? i : best));
  const order = [here];
  left.delete(here);
  while (left.size > 0) {
    here = [...left].reduce((best, i) => (distance(at, here, i) < distance(at, here, best) ? i : best));
    order.push(here);
    left.delete(here);
  }
  return order;
}

/** Turns stretches round where that shortens the walk; its start stays. True when it found one. */
function shortened(order: number[], at: Places): boolean {
  let found = false;
  for (let i = 0; i + 2 < order.length; i++) {
    for (let j = i + 2; j < order.length; j++) {
      const end = j + 1 < order.length;
      const now = distance(at, order[i], order[i + 1]) + (end ? distance(at, order[j], order[j + 1]) : 0);
      const then = distance(at, order[i], order[j]) + (end ? distance(at, order[i + 1], order[j + 1]) : 0);
      if (then >= now - 1e-12) continue;
      order.splice(i + 1, j - i, ...order.slice(i + 1, j + 1).reverse());
      found = true;
    }
  }
  return found;
}

function distance(at: Places, a: number, b: number): number {
  return Math.hypot(at[a][0] - at[b][0], at[a][1] - at[b][1]);
}
