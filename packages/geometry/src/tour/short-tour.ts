/**
 * A short round trip over places with given costs between them.
 *
 * Nearest neighbour, then exchanges of two edges (2-opt, Croes 1958, Operations Research 6:791–812) and moves of stretches
 * of up to three places (Or-opt, Or 1976, thesis, Northwestern University) among near neighbours until neither helps; then
 * kicks (double bridge on nearby stretches: Martin, Otto, Felten 1991, Complex Systems 5:299–326), each kept when the trip
 * that the exchanges make of it is no longer than before. Kicks fall at multiples of the golden ratio, so there is no chance
 * in it: the same costs give the same trip. (Sources from memory.)
 */

/** Costs are kept for every pair: so many places need 18 MB. */
export const MOST_PLACES = 1500;

/** Places each place is tried to be joined with. */
const NEIGHBOURS = 10;
/** Longest stretch moved as a whole. */
const LONGEST_MOVED = 3;
/** Kicks: `KICKS_PER_PLACE` each up to `MOST_KICKS`; fewer do not reach the optimum of small published instances. */
const KICKS_PER_PLACE = 12;
const MOST_KICKS = 1000;
/** Longest stretch that a kick exchanges. */
const KICKED = 30;
const GOLDEN = 0.618033988749895;

/**
 * Places 0 … n − 1 in the order of a short round trip, place 0 first. Not always the shortest; tested against published
 * instances. Up to three places any order is the shortest.
 * @param costs symmetric, row by row, n × n; may be negative, must be finite
 * @throws RangeError when `costs` is not n × n or n exceeds {@link MOST_PLACES}
 * @example shortTour(Float64Array.of(0, 1, 5, 1, 1, 0, 1, 5, 5, 1, 0, 1, 1, 5, 1, 0), 4) // 0, 1, 2, 3: cost 4
 */
export function shortTour(costs: Float64Array, n: number): Int32Array {
  if (costs.length !== n * n) throw new RangeError(`shortTour: expected ${n} × ${n} costs, got ${costs.length}`);
  if (n > MOST_PLACES) throw new RangeError(`shortTour: expected at most ${MOST_PLACES} places, got ${n}`);
  const trip = new Trip(costs, n);
  if (n < 4) return trip.order;
  trip.enqueue(...trip.order);
  trip.shorten();
  kicked(trip);
  return fromPlace0(trip.order);
}

/** Where a walk begins and ends: a place's number, or wherever the walk is shortest. */
export interface WalkEnds {
  readonly start?: number;
  readonly end?: number;
}

/**
 * The places in the order of a short walk that begins and ends where it is told, or is free to. The same end as start asks
 * for a round trip. Worked as a round trip through one more place, which costs nothing beside the ends and much beside all
 * others.
 * @throws RangeError as {@link shortTour}, and for ends that are no place
 * @example shortWalk(Float64Array.of(0, 1, 2, 1, 0, 1, 2, 1, 0), 3, { start: 1 }) // 1, 0, 2 or 1, 2, 0
 */
export function shortWalk(costs: Float64Array, n: number, { start, end }: WalkEnds = {}): Int32Array {
  for (const place of [start, end]) {
    if (place !== undefined && !(Number.isInteger(place) && place >= 0 && place < n))
      throw new RangeError(`shortWalk: expected a place from 0 to ${n - 1}, got ${place}`);
  }
  if (start !== undefined && start === end) return turnedTo(shortTour(costs, n), start);
  const wide = n + 1;
  const grown = new Float64Array(wide * wide);
  let most = 0;
  for (let a = 0; a < n; a++) {
    for (let b = 0; b < n; b++) {
      grown[(a + 1) * wide + b + 1] = costs[a * n + b];
      most = Math.max(most, costs[a * n + b]);
    }
  }
  const apart = 2 * n * most + 1;
  for (let a = 0; a < n; a++) {
    const chosen = a === start || a === end;
    const free = start === undefined && end === undefined;
    const halfFree = start === undefined || end === undefined;
    // With one end chosen the other costs nothing; the chosen one must be worth more than any other.
    const cost = free ? 0 : chosen ? (halfFree ? -apart : 0) : halfFree ? 0 : apart;
    grown[a + 1] = cost;
    grown[(a + 1) * wide] = cost;
  }
  const walk = shortTour(grown, wide)
    .slice(1)
    .map((place) => place - 1);
  const backwards = start === undefined ? end !== undefined && walk[n - 1] !== end : walk[0] !== start;
  return backwards ? walk.reverse() : walk;
}

function turnedTo(order: Int32Array, start: number): Int32Array {
  const at = order.indexOf(start);
  return order.map((_, i) => order[wrapped(at + i, order.length)]);
}

/** The sum of costs along the order and back to its start. */
export function tourCost(costs: Float64Array, order: ArrayLike<number>): number {
  const n = order.length;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += costs[order[i] * n + order[(i + 1) % n]];
  return sum;
}

function kicked(trip: Trip): void {
  const { n } = trip;
  const kicks = Math.min(MOST_KICKS, KICKS_PER_PLACE * n);
  let kept = trip.order.slice();
  let cost = tourCost(trip.costs, kept);
  const longest = Math.min(KICKED, Math.floor((n - 1) / 3));
  for (let k = 1; k <= kicks; k++) {
    const at = Math.floor(fraction(k * GOLDEN) * n);
    const first = 1 + Math.floor(fraction(k * GOLDEN * 7) * longest);
    const second = 1 + Math.floor(fraction(k * GOLDEN * 13) * longest);
    trip.swapStretches(at, first, second);
    trip.shorten();
    const now = tourCost(trip.costs, trip.order);
    if (now > cost + EPS) trip.takeBack(kept);
    else {
      if (now < cost - EPS) cost = now;
      kept = trip.order.slice();
    }
  }
}

function fraction(value: number): number {
  return value - Math.floor(value);
}

/** Below it a gain is rounding: parts of the largest cost. */
const EPS = 1e-9;

class Trip {
  readonly costs: Float64Array;
  readonly n: number;
  readonly order: Int32Array;
  readonly place: Int32Array;
  readonly near: Int32Array;
  /** Places whose edges changed, each once. */
  readonly queue: number[] = [];
  readonly queued: Uint8Array;
  readonly wide: number;
  readonly stretch = new Int32Array(LONGEST_MOVED);

  constructor(costs: Float64Array, n: number) {
    this.costs = costs;
    this.n = n;
    this.queued = new Uint8Array(n);
    this.wide = Math.min(NEIGHBOURS, n - 1);
    this.near = nearestOfEach(costs, n, this.wide);
    this.order = nearestNext(costs, n);
    this.place = new Int32Array(n);
    this.order.forEach((who, i) => {
      this.place[who] = i;
    });
  }

  cost(a: number, b: number): number {
    return this.costs[a * this.n + b];
  }

  at(i: number): number {
    const { n } = this;
    return this.order[i < 0 ? i + n : i >= n ? i - n : i];
  }

  enqueue(...places: readonly number[]): void {
    for (const place of places) {
      if (this.queued[place] === 1) continue;
      this.queued[place] = 1;
      this.queue.push(place);
    }
  }

  shorten(): void {
    for (let a = this.queue.pop(); a !== undefined; a = this.queue.pop()) {
      this.queued[a] = 0;
      while (this.exchange(a) || this.move(a));
    }
  }

  /** 2-opt: the edge from `a` onward (or back) and one at a near place give way to two cheaper ones. */
  exchange(a: number): boolean {
    for (let way = 1; way >= -1; way -= 2) {
      const after = this.at(this.place[a] + way);
      const now = this.cost(a, after);
      for (let k = 0; k < this.wide; k++) {
        const b = this.near[a * this.wide + k];
        const gain = now - this.cost(a, b);
        if (gain <= EPS) break;
        const beyond = this.at(this.place[b] + way);
        if (gain + this.cost(b, beyond) - this.cost(after, beyond) <= EPS) continue;
        if (way === 1) this.reverse(this.place[after], this.place[b]);
        else this.reverse(this.place[a], this.place[beyond]);
        this.enqueue(a, after, b, beyond);
        return true;
      }
    }
    return false;
  }

  /** Or-opt: a stretch that begins or ends at `a` goes between a near place and its neighbour. */
  move(a: number): boolean {
    const { n } = this;
    for (let length = 1; length <= Math.min(LONGEST_MOVED, n - 3); length++) {
      for (let way = 1; way >= -1; way -= 2) {
        // `a` is one end, `far` the other, in direction `way`; `before` and `behind` are left without the stretch.
        const far = this.at(wrapped(this.place[a] + way * (length - 1), n));
        const before = this.at(this.place[a] - way);
        const behind = this.at(this.place[far] + way);
        const freed = this.cost(before, a) + this.cost(far, behind) - this.cost(before, behind);
        if (freed <= EPS) continue;
        for (let k = 0; k < this.wide; k++) {
          const b = this.near[a * this.wide + k];
          if (freed - this.cost(a, b) <= EPS) break;
          if (wrapped(way * (this.place[b] - this.place[a]), n) < length) continue;
          for (let side = 1; side >= -1; side -= 2) {
            const other = this.at(this.place[b] + side);
            if (wrapped(way * (this.place[other] - this.place[a]), n) < length) continue;
            const added = this.cost(a, b) + this.cost(far, other) - this.cost(b, other);
            if (freed - added <= EPS) continue;
            this.shift(a, far, { b, other });
            this.enqueue(before, behind, a, far, b, other);
            return true;
          }
        }
      }
    }
    return false;
  }

  /** Turns the stretch from position i to position j (going onward, past the end if need be) round, or the rest of the trip. */
  reverse(i: number, j: number): void {
    const { n, order, place } = this;
    let inside = wrapped(j - i, n) + 1;
    let [from, to] = [i, j];
    if (2 * inside > n) {
      [from, to] = [wrapped(j + 1, n), wrapped(i - 1, n)];
      inside = n - inside;
    }
    for (let step = inside >> 1; step > 0; step--) {
      const [a, b] = [order[from], order[to]];
      order[from] = b;
      place[b] = from;
      order[to] = a;
      place[a] = to;
      from = from + 1 === n ? 0 : from + 1;
      to = to === 0 ? n - 1 : to - 1;
    }
  }

  /**
   * Puts the stretch from `a` to `far` between `b` and `other`, `a` beside `b`: what lies between the stretch's old and new
   * place, on the shorter way round, moves up by its length.
   */
  shift(a: number, far: number, { b, other }: { b: number; other: number }): void {
    const { n, order, place } = this;
    const onward = wrapped(place[far] - place[a], n) < LONGEST_MOVED;
    const start = onward ? place[a] : place[far];
    const length = wrapped(onward ? place[far] - place[a] : place[a] - place[far], n) + 1;
    for (let i = 0; i < length; i++) this.stretch[i] = order[wrapped(start + i, n)];
    const bFirst = wrapped(place[other] - place[b], n) === 1;
    const gap = bFirst ? place[b] : place[other];
    const ahead = wrapped(gap - wrapped(start + length - 1, n), n);
    const behind = n - length - ahead;
    const hole = wrapped(ahead <= behind ? start + ahead : start - behind, n);
    if (ahead <= behind) {
      for (let i = 0; i < ahead; i++) this.set(wrapped(start + i, n), order[wrapped(start + length + i, n)]);
    } else {
      for (let i = 1; i <= behind; i++) this.set(wrapped(start + length - i, n), order[wrapped(start - i, n)]);
    }
    // The stretch lies in `this.stretch` as it was walked onward; `a` must come to lie next to `b`.
    const turned = bFirst !== onward;
    for (let i = 0; i < length; i++) this.set(wrapped(hole + i, n), this.stretch[turned ? length - 1 - i : i]);
  }

  set(position: number, who: number): void {
    this.order[position] = who;
    this.place[who] = position;
  }

  /** The kick: two neighbouring stretches change places. */
  swapStretches(at: number, first: number, second: number): void {
    const { n } = this;
    const who = Array.from({ length: first + second }, (_, i) => this.order[(at + i) % n]);
    const swapped = [...who.slice(first), ...who.slice(0, first)];
    swapped.forEach((each, i) => {
      const position = (at + i) % n;
      this.order[position] = each;
      this.place[each] = position;
    });
    this.enqueue(this.at(wrapped(at - 1, n)), who[0], who[first - 1], who[first]);
    this.enqueue(who[who.length - 1], this.order[(at + first + second) % n]);
  }

  takeBack(order: ArrayLike<number>): void {
    for (let i = 0; i < this.n; i++) {
      this.order[i] = order[i];
      this.place[order[i]] = i;
    }
  }
}

/** For −n ≤ i < 2n. */
function wrapped(i: number, n: number): number {
  return i < 0 ? i + n : i >= n ? i - n : i;
}

function nearestOfEach(costs: Float64Array, n: number, count: number): Int32Array {
  const out = new Int32Array(n * count);
  const others = Array.from({ length: n }, (_, i) => i);
  for (let a = 0; a < n; a++) {
    const sorted = others.filter((b) => b !== a).sort((b, c) => costs[a * n + b] - costs[a * n + c] || b - c);
    out.set(sorted.slice(0, count), a * count);
  }
  return out;
}

function nearestNext(costs: Float64Array, n: number): Int32Array {
  const order = new Int32Array(n);
  const gone = new Uint8Array(n);
  gone[0] = 1;
  for (let i = 1; i < n; i++) {
    const row = order[i - 1] * n;
    let best = -1;
    for (let b = 0; b < n; b++) if (gone[b] === 0 && (best < 0 || costs[row + b] < costs[row + best])) best = b;
    order[i] = best;
    gone[best] = 1;
  }
  return order;
}

function fromPlace0(order: Int32Array): Int32Array {
  const start = order.indexOf(0);
  const n = order.length;
  // Of the two directions the one that goes first to the lower number, so that rounding elsewhere cannot turn it.
  const way = order[(start + 1) % n] <= order[(start + n - 1) % n] ? 1 : -1;
  return order.map((_, i) => order[wrapped(start + way * i, n)]);
}
