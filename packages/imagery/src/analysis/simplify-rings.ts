/**
 * Simplifies rings that share borders, all together: the vertex whose loss changes areas least goes first, and none whose
 * loss would make lines cross. Source: Visvalingam and Whyatt 1993, The Cartographic Journal 30, 46–51 (from memory).
 */
import type { SharedRings } from './label-rings.ts';

export interface SimplifyOptions {
  /** Vertices are given up while the triangle they span is smaller than this, in square cells. */
  readonly areaBelow: number;
  /** And, whatever their triangle, until no ring has more vertices than this. */
  readonly mostVertices: number;
  /** Points that no ring may move across, flat; such as those along fixed outlines nearby. */
  readonly keepClear?: ArrayLike<number>;
}

/**
 * The rings with fewer vertices; borders stay shared and lines do not cross. A ring keeps at least four vertices.
 * A ring that cannot reach `mostVertices` (more corners where three labels meet, or lines in the way) keeps what it must.
 */
export function simplifyRings(shared: SharedRings, options: SimplifyOptions): readonly (readonly number[])[] {
  return new Simplifier(shared, options).run();
}

interface Link {
  readonly ring: number;
  before: number;
  after: number;
}

interface Candidate {
  readonly vertex: number;
  readonly area: number;
}

class Simplifier {
  readonly #shared: SharedRings;
  readonly #options: SimplifyOptions;
  readonly #links = new Map<number, Link[]>();
  readonly #counts: number[];
  readonly #grid = new Map<number, Set<number>>();
  readonly #x: number[];
  readonly #y: number[];
  /** Vertices by the area of their triangle, smallest first; entries whose area is out of date are skipped. */
  readonly #heap: Candidate[] = [];

  constructor(shared: SharedRings, options: SimplifyOptions) {
    this.#shared = shared;
    this.#options = options;
    this.#counts = shared.rings.map((ring) => ring.length);
    const clear = options.keepClear ?? [];
    this.#x = [...shared.x];
    this.#y = [...shared.y];
    for (let i = 0; i + 1 < clear.length; i += 2) {
      this.#x.push(clear[i]);
      this.#y.push(clear[i + 1]);
    }
    for (let v = 0; v < this.#x.length; v++) this.#place(v);
    shared.rings.forEach((ring, r) => {
      ring.forEach((v, i) => {
        const link = { ring: r, before: ring[(i + ring.length - 1) % ring.length], after: ring[(i + 1) % ring.length] };
        const links = this.#links.get(v);
        if (links) links.push(link);
        else this.#links.set(v, [link]);
      });
    });
  }

  run(): readonly (readonly number[])[] {
    const { areaBelow, mostVertices } = this.#options;
    for (const v of this.#links.keys()) this.#enter(v);
    // Vertices refused because of a line in the way may go once that line has moved: tried again until nothing changes.
    for (let changed = true; changed; ) {
      changed = false;
      const refused: number[] = [];
      for (let next = this.#pop(); next !== null; next = this.#pop()) {
        const links = this.#links.get(next.vertex);
        if (links === undefined || this.#areaOf(next.vertex) !== next.area) continue;
        const crowded = links.some(({ ring }) => this.#counts[ring] > mostVertices);
        const needed = links.some(({ ring }) => this.#counts[ring] <= 4);
        if ((next.area >= areaBelow && !crowded) || needed) continue;
        if (this.#isInTheWay(next.vertex, links[0])) {
          refused.push(next.vertex);
          continue;
        }
        this.#remove(next.vertex, links);
        changed = true;
      }
      if (changed) for (const v of refused) this.#enter(v);
    }
    return this.#shared.rings.map((ring) => ring.filter((v) => this.#links.has(v)));
  }

  /** NaN for a vertex that must stay: where borders part. */
  #areaOf(v: number): number {
    const links = this.#links.get(v);
    if (links === undefined) return Number.NaN;
    const [{ before, after }] = links;
    const together = links.every(
      (link) => (link.before === before && link.after === after) || (link.before === after && link.after === before),
    );
    if (!together || before === after) return Number.NaN;
    return Math.abs(this.#cross(before, v, after)) / 2;
  }

  #cross(a: number, b: number, c: number): number {
    const [x, y] = [this.#x, this.#y];
    return (x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a]);
  }

  /** Whether another vertex lies in the triangle that would be given up, its sides included. */
  #isInTheWay(v: number, { before, after }: Link): boolean {
    const corners = [before, v, after];
    const [xs, ys] = [corners.map((c) => this.#x[c]), corners.map((c) => this.#y[c])];
    for (let row = Math.floor(Math.min(...ys)); row <= Math.max(...ys); row++) {
      for (let column = Math.floor(Math.min(...xs)); column <= Math.max(...xs); column++) {
        for (const other of this.#grid.get(gridKey(column, row)) ?? []) {
          if (!corners.includes(other) && this.#isInside(other, before, v, after)) return true;
        }
      }
    }
    return false;
  }

  #isInside(p: number, a: number, b: number, c: number): boolean {
    const [u, v, w] = [this.#cross(a, b, p), this.#cross(b, c, p), this.#cross(c, a, p)];
    return (u >= 0 && v >= 0 && w >= 0) || (u <= 0 && v <= 0 && w <= 0);
  }

  #remove(v: number, links: readonly Link[]): void {
    this.#links.delete(v);
    this.#grid.get(gridKey(Math.floor(this.#x[v]), Math.floor(this.#y[v])))?.delete(v);
    for (const { ring, before, after } of links) {
      this.#counts[ring]--;
      for (const link of this.#links.get(before) ?? []) if (link.ring === ring && link.after === v) link.after = after;
      for (const link of this.#links.get(after) ?? [])
        if (link.ring === ring && link.before === v) link.before = before;
    }
    this.#enter(links[0].before);
    this.#enter(links[0].after);
  }

  #place(v: number): void {
    const key = gridKey(Math.floor(this.#x[v]), Math.floor(this.#y[v]));
    const cell = this.#grid.get(key);
    if (cell) cell.add(v);
    else this.#grid.set(key, new Set([v]));
  }

  #enter(v: number): void {
    const area = this.#areaOf(v);
    if (Number.isNaN(area)) return;
    const heap = this.#heap;
    let at = heap.length;
    const entry = { vertex: v, area };
    while (at > 0 && comesBefore(entry, heap[(at - 1) >> 1])) {
      heap[at] = heap[(at - 1) >> 1];
      at = (at - 1) >> 1;
    }
    heap[at] = entry;
  }

  #pop(): Candidate | null {
    const heap = this.#heap;
    const top = heap[0];
    const moved = heap.pop();
    if (moved === undefined) return null;
    if (heap.length === 0) return moved;
    let at = 0;
    for (let child = 1; child < heap.length; child = 2 * at + 1) {
      if (child + 1 < heap.length && comesBefore(heap[child + 1], heap[child])) child++;
      if (!comesBefore(heap[child], moved)) break;
      heap[at] = heap[child];
      at = child;
    }
    heap[at] = moved;
    return top;
  }
}

function comesBefore(one: Candidate, other: Candidate): boolean {
  return one.area < other.area || (one.area === other.area && one.vertex < other.vertex);
}

function gridKey(column: number, row: number): number {
  return (row + 4) * 2 ** 20 + column + 4;
}
