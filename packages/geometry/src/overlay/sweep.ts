/**
 * The sweep: areas by cover state in one neighbourhood, from left to right.
 *
 * Green's theorem turns the area of every state into integrals along the edges that bound it: an edge piece contributes
 * ∫ y dx to the state below it and takes the same from the state above. So all that must be known along each edge is which
 * states lie on its two sides, and that follows from the order of the edges that are cut by a vertical line.
 *
 * Invariants, between events:
 *  1. `order` lists the active parts from bottom to top, up to rounding.
 *  2. BELOW of each active part is ABOVE of its predecessor, and ABOVE follows from it by the part's layer and sign.
 *  3. For each pair of neighbours in `order` the next crossing, if any, is in the queue.
 * Whenever two parts become neighbours they are compared at both ends of their common run. A pair found in the wrong order at
 * its start and in the right one at its end adds its inverted area to `doubtM2`: the bound on what rounding spoiled. The
 * caller judges it; there is no topology to repair and nothing that can fail.
 *
 * Each crossing puts one pair right and disturbs no other pair, so the number of events is finite whatever rounding does.
 */
import { CoverStates } from './cover-states.ts';
import { EventQueue } from './event-queue.ts';
import type { Neighbourhood } from './neighbourhood.ts';

// Numbers of one part in `real`: its edge at hand as y = LINE_Y + SLOPE · (x − LINE_X), where that ends, and up to which
// x its integral is booked. Kept side by side, since they are used together.
const LINE_X = 0;
const LINE_Y = 1;
const SLOPE = 2;
const EDGE_END = 3;
const BOOKED = 4;
const REALS = 5;

// Numbers of one part in `whole`: first vertex of the edge at hand, last vertex of the part, layer, sign, the states on its
// two sides, and its position in `order`.
const VERTEX = 0;
const LAST = 1;
const LAYER = 2;
const SIGN = 3;
const BELOW = 4;
const ABOVE = 5;
const POSITION = 6;
const WHOLES = 7;

/** POSITION of a part whose left end lies ahead; −1 stands for one that is over. */
const NOT_STARTED = -2;

// Numbers of one foreseen crossing: lower and upper part, and the edges they were on.
const LOWER = 0;
const UPPER = 1;
const LOWER_VERTEX = 2;
const UPPER_VERTEX = 3;
const CROSSING = 4;

export class Sweep {
  /** Area by state, m²; valid up to `states.count` after `run`. */
  areas = new Float64Array(64);
  /** Upper bound on the area that may be booked to a wrong state through rounding, m². */
  doubtM2 = 0;

  private readonly events = new EventQueue();
  private states = new CoverStates();
  private xy = new Float64Array(0);

  private partCount = 0;
  private real = new Float64Array(64 * REALS);
  private whole = new Int32Array(64 * WHOLES);
  /** Parts that start at this x. */
  private starting = new Int32Array(64);
  private startingCount = 0;

  /** Active parts from bottom to top. */
  private order = new Int32Array(64);
  private activeCount = 0;

  /** Foreseen crossings; as an event, crossing `c` has the number `partCount + c`. */
  private crossings = new Int32Array(64 * CROSSING);
  private crossingCount = 0;

  /** Positions in `order` whose states must be derived anew at this x. */
  private staleFrom = Infinity;
  private staleTo = -1;

  run(neighbourhood: Neighbourhood, states: CoverStates): void {
    this.load(neighbourhood, states);
    const { events } = this;
    const { width } = neighbourhood;
    for (let x = events.nextX; x < width; x = events.nextX) {
      this.staleFrom = Infinity;
      this.staleTo = -1;
      do {
        this.startingCount = 0;
        while (events.nextX <= x) {
          this.handle(events.nextEvent, x);
        }
        // Parts that start at x come in after those that end at it have gone.
        for (let i = 0; i < this.startingCount; i++) {
          this.insert(this.starting[i], x);
        }
      } while (events.nextX <= x);
      if (this.staleFrom < this.activeCount) {
        this.deriveStates(x);
      }
    }
    for (let i = 0; i < this.activeCount; i++) {
      this.book(this.order[i], width);
    }
  }

  private load(neighbourhood: Neighbourhood, states: CoverStates): void {
    const { partCount, firstVertex, layer, sign, xy } = neighbourhood;
    this.states = states;
    this.xy = xy;
    this.partCount = partCount;
    this.events.clear();
    this.crossingCount = 0;
    this.activeCount = 0;
    this.doubtM2 = 0;
    this.areas.fill(0);
    this.reserve(partCount);
    const { whole } = this;
    for (let part = 0; part < partCount; part++) {
      const w = part * WHOLES;
      whole[w + VERTEX] = firstVertex[part];
      whole[w + LAST] = firstVertex[part + 1] - 1;
      whole[w + LAYER] = layer[part];
      whole[w + SIGN] = sign[part];
      whole[w + POSITION] = NOT_STARTED;
      this.events.push(Math.max(xy[2 * firstVertex[part]], 0), part);
    }
  }

  private handle(event: number, x: number): void {
    if (event >= this.partCount) {
      this.events.removeNext();
      this.cross((event - this.partCount) * CROSSING, x);
      return;
    }
    const { whole } = this;
    const w = event * WHOLES;
    const at = whole[w + POSITION];
    if (at === NOT_STARTED) {
      this.events.removeNext();
      this.starting[this.startingCount++] = event;
      return;
    }
    this.book(event, x);
    if (whole[w + VERTEX] + 1 < whole[w + LAST]) {
      whole[w + VERTEX]++;
      this.setLine(event);
      this.events.replaceNext(this.real[event * REALS + EDGE_END], event);
      this.compare(at - 1, x);
      this.compare(at, x);
    } else {
      this.events.removeNext();
      this.removeAt(at);
      this.compare(at - 1, x);
    }
  }

  private insert(part: number, x: number): void {
    const { order, whole, real } = this;
    const w = part * WHOLES;
    this.setLine(part);
    real[part * REALS + BOOKED] = x;
    whole[w + BELOW] = CoverStates.NOWHERE;
    whole[w + ABOVE] = CoverStates.NOWHERE;
    const at = this.placeFor(part, x);
    for (let i = this.activeCount++; i > at; i--) {
      order[i] = order[i - 1];
      whole[order[i] * WHOLES + POSITION] = i;
    }
    order[at] = part;
    whole[w + POSITION] = at;
    this.staleFrom = Math.min(this.staleFrom, at);
    this.staleTo = Math.max(this.staleTo, at) + 1;
    this.events.push(real[part * REALS + EDGE_END], part);
    this.compare(at - 1, x);
    this.compare(at, x);
  }

  private removeAt(at: number): void {
    const { order, whole } = this;
    whole[order[at] * WHOLES + POSITION] = -1;
    this.activeCount--;
    for (let i = at; i < this.activeCount; i++) {
      order[i] = order[i + 1];
      whole[order[i] * WHOLES + POSITION] = i;
    }
    this.staleFrom = Math.min(this.staleFrom, at);
    this.staleTo = Math.max(this.staleTo, at);
  }

  /** Exchanges two parts if they are still neighbours on the edges for which the crossing was foreseen. */
  private cross(crossing: number, x: number): void {
    const { order, whole, crossings } = this;
    const lower = crossings[crossing + LOWER];
    const upper = crossings[crossing + UPPER];
    const at = whole[lower * WHOLES + POSITION];
    if (
      at < 0 ||
      whole[upper * WHOLES + POSITION] !== at + 1 ||
      whole[lower * WHOLES + VERTEX] !== crossings[crossing + LOWER_VERTEX] ||
      whole[upper * WHOLES + VERTEX] !== crossings[crossing + UPPER_VERTEX]
    ) {
      return;
    }
    order[at] = upper;
    order[at + 1] = lower;
    whole[upper * WHOLES + POSITION] = at;
    whole[lower * WHOLES + POSITION] = at + 1;
    this.staleFrom = Math.min(this.staleFrom, at);
    this.staleTo = Math.max(this.staleTo, at + 1);
    this.compare(at - 1, x);
    this.compare(at + 1, x);
  }

  /** Foresees the crossing of the parts at `at` and `at + 1`, or tells that they are in the wrong order now. */
  private compare(at: number, x: number): void {
    if (at < 0 || at + 1 >= this.activeCount) {
      return;
    }
    const { order, real } = this;
    const a = order[at] * REALS;
    const b = order[at + 1] * REALS;
    const until = Math.min(real[a + EDGE_END], real[b + EDGE_END]);
    const gapAt0 = real[b + LINE_Y] - real[a + LINE_Y];
    const now = gapAt0 + real[b + SLOPE] * (x - real[b + LINE_X]) - real[a + SLOPE] * (x - real[a + LINE_X]);
    const after = gapAt0 + real[b + SLOPE] * (until - real[b + LINE_X]) - real[a + SLOPE] * (until - real[a + LINE_X]);
    if (after < 0) {
      this.foresee(at, now > 0 ? Math.min(until, x + ((until - x) * now) / (now - after)) : x);
    } else if (now < 0) {
      this.doubtM2 += ((until - x) * now * now) / (2 * (after - now));
    }
  }

  private foresee(at: number, x: number): void {
    const { order, whole } = this;
    const c = this.crossingCount * CROSSING;
    if (c === this.crossings.length) {
      const larger = new Int32Array(2 * c);
      larger.set(this.crossings);
      this.crossings = larger;
    }
    const { crossings } = this;
    crossings[c + LOWER] = order[at];
    crossings[c + UPPER] = order[at + 1];
    crossings[c + LOWER_VERTEX] = whole[order[at] * WHOLES + VERTEX];
    crossings[c + UPPER_VERTEX] = whole[order[at + 1] * WHOLES + VERTEX];
    this.events.push(x, this.partCount + this.crossingCount++);
  }

  /** Restores invariant 2 from the lowest stale position upwards. */
  private deriveStates(x: number): void {
    const { order, whole, states, staleFrom, staleTo } = this;
    let state = staleFrom > 0 ? whole[order[staleFrom - 1] * WHOLES + ABOVE] : CoverStates.NOWHERE;
    for (let i = staleFrom; i < this.activeCount; i++) {
      const w = order[i] * WHOLES;
      if (i > staleTo && whole[w + BELOW] === state) {
        return;
      }
      const above = states.across(state, whole[w + LAYER], whole[w + SIGN]);
      if (whole[w + BELOW] !== state || whole[w + ABOVE] !== above) {
        this.book(order[i], x);
        whole[w + BELOW] = state;
        whole[w + ABOVE] = above;
      }
      state = above;
    }
  }

  /** Books ∫ y dx of a part's edge at hand from where it was booked last up to `x`. */
  private book(part: number, x: number): void {
    const { real, whole } = this;
    const r = part * REALS;
    const width = x - real[r + BOOKED];
    if (width > 0) {
      const below = whole[part * WHOLES + BELOW];
      const above = whole[part * WHOLES + ABOVE];
      if (Math.max(below, above) >= this.areas.length) {
        this.growAreas(Math.max(below, above) + 1);
      }
      const middle = real[r + BOOKED] + width / 2;
      const integral = width * (real[r + LINE_Y] + real[r + SLOPE] * (middle - real[r + LINE_X]));
      this.areas[below] += integral;
      this.areas[above] -= integral;
      real[r + BOOKED] = x;
    }
  }

  private setLine(part: number): void {
    const { real, xy } = this;
    const r = part * REALS;
    const v = 2 * this.whole[part * WHOLES + VERTEX];
    real[r + LINE_X] = xy[v];
    real[r + LINE_Y] = xy[v + 1];
    real[r + SLOPE] = (xy[v + 3] - xy[v + 1]) / (xy[v + 2] - xy[v]);
    real[r + EDGE_END] = xy[v + 2];
  }

  /** Where a starting part belongs: above all parts that are lower at `x`, or equal there and less steep. */
  private placeFor(part: number, x: number): number {
    const { real, order } = this;
    const r = part * REALS;
    const y = real[r + LINE_Y] + real[r + SLOPE] * (x - real[r + LINE_X]);
    let low = 0;
    let high = this.activeCount;
    while (low < high) {
      const middle = (low + high) >> 1;
      const other = order[middle] * REALS;
      const difference = real[other + LINE_Y] + real[other + SLOPE] * (x - real[other + LINE_X]) - y;
      if (difference < 0 || (difference === 0 && real[other + SLOPE] <= real[r + SLOPE])) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private growAreas(length: number): void {
    const larger = new Float64Array(Math.max(length, 2 * this.areas.length));
    larger.set(this.areas);
    this.areas = larger;
  }

  private reserve(partCount: number): void {
    if (partCount > this.order.length) {
      const length = Math.max(partCount, 2 * this.order.length);
      this.real = new Float64Array(length * REALS);
      this.whole = new Int32Array(length * WHOLES);
      this.starting = new Int32Array(length);
      this.order = new Int32Array(length);
    }
  }
}
