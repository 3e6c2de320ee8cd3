/**
 * Crowns grow from their seeds over the leaves, all at once: each cell goes to the seed that reaches it most cheaply.
 * A step costs its length, more where the surface (brightness or height) changes, so that fronts meet in the dark or low
 * seams between crowns. This is seeded region growing by shortest paths (Dijkstra), whose fronts are a watershed with
 * markers. Sources (from memory): Adams and Bischof 1994, IEEE Transactions on Pattern Analysis 16, 641–647 (seeded
 * region growing); Meyer 1994, Signal Processing 38, 113–125 (topographic distance and watershed lines).
 */
import type { FoliageScene } from './foliage-scene.ts';

/** (A) Length added by a change of the surface, m per unit of relative change. */
const CHANGE_COSTS_M = 6;

const NEIGHBOURS = [
  [1, 0, 1],
  [-1, 0, 1],
  [0, 1, 1],
  [0, -1, 1],
  [1, 1, Math.SQRT2],
  [1, -1, Math.SQRT2],
  [-1, 1, Math.SQRT2],
  [-1, -1, Math.SQRT2],
] as const;

export interface GrownCrowns {
  /** Number of the seed (from 1) that owns each cell; 0 = nobody. */
  readonly labels: Int32Array;
  /** Cost from the owner's seed, m. */
  readonly costs: Float32Array;
}

/**
 * Grows crowns from cells. Cells farther than `reachM` from their seed (straight) are not taken. Ties go to the lower
 * number, so the outcome does not depend on anything else.
 */
export function growCrowns(scene: FoliageScene, seeds: readonly number[], reachM: readonly number[]): GrownCrowns {
  const { width, height, foliage, surface, cellM } = scene;
  const labels = new Int32Array(width * height);
  const costs = new Float32Array(width * height).fill(Infinity);
  const level = mean(surface, foliage);
  const queue = new CostQueue();
  seeds.forEach((cell, i) => {
    if (cell < 0 || foliage[cell] === 0 || costs[cell] === 0) return;
    costs[cell] = 0;
    labels[cell] = i + 1;
    queue.push(0, cell);
  });
  for (let cell = queue.pop(); cell >= 0; cell = queue.pop()) {
    const cost = queue.poppedCost;
    if (cost > costs[cell]) continue;
    const label = labels[cell];
    const [column, row] = [cell % width, Math.floor(cell / width)];
    const seed = seeds[label - 1];
    const reach = reachM[label - 1] / cellM;
    for (const [dc, dr, length] of NEIGHBOURS) {
      const [c, r] = [column + dc, row + dr];
      if (c < 0 || r < 0 || c >= width || r >= height) continue;
      const next = r * width + c;
      if (foliage[next] === 0) continue;
      if (Math.hypot(c - (seed % width), r - Math.floor(seed / width)) > reach) continue;
      const change = Math.abs(surface[next] - surface[cell]) / level;
      const reached = Math.fround(cost + length * cellM + CHANGE_COSTS_M * change);
      if (reached > costs[next] || (reached === costs[next] && label >= labels[next])) continue;
      costs[next] = reached;
      labels[next] = label;
      queue.push(reached, next);
    }
  }
  return { labels, costs };
}

function mean(surface: Float32Array, foliage: Uint8Array): number {
  let [sum, count] = [0, 0];
  for (let i = 0; i < surface.length; i++) {
    if (foliage[i] === 0) continue;
    sum += surface[i];
    count++;
  }
  return sum > 0 ? sum / count : 1;
}

/** Binary heap of cells by cost; equal costs leave in no particular order, which the tie rule above makes harmless. */
class CostQueue {
  readonly #costs: number[] = [];
  readonly #cells: number[] = [];
  poppedCost = 0;

  push(cost: number, cell: number): void {
    let at = this.#costs.length;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (this.#costs[parent] <= cost) break;
      this.#costs[at] = this.#costs[parent];
      this.#cells[at] = this.#cells[parent];
      at = parent;
    }
    this.#costs[at] = cost;
    this.#cells[at] = cell;
  }

  /** The cheapest cell, −1 when none is left. */
  pop(): number {
    if (this.#costs.length === 0) return -1;
    const cell = this.#cells[0];
    this.poppedCost = this.#costs[0];
    const cost = this.#costs.pop() as number;
    const moved = this.#cells.pop() as number;
    const size = this.#costs.length;
    if (size === 0) return cell;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= size) break;
      if (child + 1 < size && this.#costs[child + 1] < this.#costs[child]) child++;
      if (this.#costs[child] >= cost) break;
      this.#costs[at] = this.#costs[child];
      this.#cells[at] = this.#cells[child];
      at = child;
    }
    this.#costs[at] = cost;
    this.#cells[at] = moved;
    return cell;
  }
}
