/**
 * The sweep: areas by cover state in one neighbourhood, from left to right.
 *
 * Green's theorem turns the area of every state into integrals along the edges that bound it: an edge piece contributes
 * ∫ y dx to the state below it and takes the same from the state above. So all that must be known along each edge is which
 * states lie on its two sides, and that follows from the order of the edges that are cut by a vertical line.
 *
 * Invariants, between events:
 *  1. `order` lists the active parts from bottom to top, up to rounding.
 *  2. `below` of each active part is `above` of its predecessor, and `above` follows from it by the part's layer and sign.
 *  3. For each pair of neighbours in `order` the next crossing, if any, is in the queue.
 * Whenever two parts become neighbours they are compared at both ends of their common run. A pair found in the wrong order at
 * its start and in the right one at its end adds its inverted area to `doubtM2`: the bound on what rounding spoiled. The
 * caller judges it; there is no topology to repair and nothing that can fail.
 *
 * Each crossing puts one pair right and disturbs no other pair, so the number of events is finite whatever rounding does.
 */
import { CoverStates } from './cover-states.ts';
import { EventQueue } from './event-queue.ts';
import { FAR_BELOW_M, type Neighbourhood } from './neighbourhood.ts';

export class Sweep {
  /** Area by state, m²; valid up to `states.count` after `run`. */
  areas = new Float64Array(64);
  /** Upper bound on the area that may be booked to a wrong state through rounding, m². */
  doubtM2 = 0;

  private readonly events = new EventQueue();
  private states = new CoverStates();
  private vertices = new Float64Array(0);
  private originX = 0;
  private originY = 0;

  // Parts, by number: what they are …
  private partCount = 0;
  private layer = new Int32Array(64);
  private sign = new Int8Array(64);
  private fromX = new Float64Array(64);
  private toX = new Float64Array(64);
  private lastVertex = new Int32Array(64);
  // … the edge they are at: its first vertex, its line y = lineY + slope · (x − lineX), and where it ends …
  private vertex = new Int32Array(64);
  private lineX = new Float64Array(64);
  private lineY = new Float64Array(64);
  private slope = new Float64Array(64);
  private endX = new Float64Array(64);
  // … how far its integral is booked, and to which states.
  private bookedX = new Float64Array(64);
  private below = new Int32Array(64);
  private above = new Int32Array(64);

  /** Active parts from bottom to top, and where each part stands in that list. */
  private order = new Int32Array(64);
  private position = new Int32Array(64);
  private activeCount = 0;
  private starts = new Int32Array(64);

  /** Crossings that were foreseen: lower and upper part, and the edges they were on. Event number = partCount + index. */
  private crossings: { lower: number; upper: number; lowerVertex: number; upperVertex: number }[] = [];

  /** Positions in `order` whose states must be derived anew at this x. */
  private staleFrom = Infinity;
  private staleTo = -1;

  run(neighbourhood: Neighbourhood, states: CoverStates): void {
    this.load(neighbourhood, states);
    const width = neighbourhood.maxX - this.originX;
    let started = 0;
    for (;;) {
      const nextStart = started < this.partCount ? this.fromX[this.starts[started]] : Infinity;
      const x = Math.min(nextStart, this.events.nextX);
      if (!(x < width)) {
        break;
      }
      this.staleFrom = Infinity;
      this.staleTo = -1;
      do {
        while (this.events.nextX <= x) {
          this.handle(this.events.nextEvent, x);
        }
        while (started < this.partCount && this.fromX[this.starts[started]] <= x) {
          this.insert(this.starts[started++], x);
        }
      } while (this.events.nextX <= x);
      if (this.staleFrom < this.activeCount) {
        this.deriveStates(x);
      }
    }
    for (let i = 0; i < this.activeCount; i++) {
      this.book(this.order[i], width);
    }
  }

  private load(neighbourhood: Neighbourhood, states: CoverStates): void {
    this.states = states;
    this.vertices = neighbourhood.chains.xy;
    this.originX = neighbourhood.minX;
    this.originY = neighbourhood.minY;
    this.events.clear();
    this.crossings = [];
    this.activeCount = 0;
    this.doubtM2 = 0;
    this.areas.fill(0);
    const { parts } = neighbourhood;
    this.partCount = parts.length;
    this.reserve(parts.length);
    for (let i = 0; i < parts.length; i++) {
      const part = parts[i];
      this.layer[i] = part.layer;
      this.sign[i] = part.sign;
      this.fromX[i] = part.fromX - this.originX;
      this.toX[i] = part.toX - this.originX;
      this.vertex[i] = part.firstVertex;
      this.lastVertex[i] = part.lastVertex;
      this.position[i] = -1;
      this.starts[i] = i;
    }
    this.starts.subarray(0, parts.length).sort((a, b) => this.fromX[a] - this.fromX[b]);
  }

  private handle(event: number, x: number): void {
    if (event >= this.partCount) {
      this.events.removeNext();
      this.cross(event - this.partCount, x);
      return;
    }
    this.book(event, x);
    const at = this.position[event];
    if (this.vertex[event] + 1 < this.lastVertex[event] && x < this.toX[event]) {
      this.vertex[event]++;
      this.setLine(event);
      this.events.replaceNext(this.endX[event], event);
      this.compare(at - 1, x);
      this.compare(at, x);
    } else {
      this.events.removeNext();
      this.removeAt(at);
      this.compare(at - 1, x);
    }
  }

  private insert(part: number, x: number): void {
    this.setLine(part);
    this.bookedX[part] = x;
    this.below[part] = CoverStates.NOWHERE;
    this.above[part] = CoverStates.NOWHERE;
    const at = this.placeFor(part, x);
    for (let i = this.activeCount++; i > at; i--) {
      this.order[i] = this.order[i - 1];
      this.position[this.order[i]] = i;
    }
    this.order[at] = part;
    this.position[part] = at;
    this.staleFrom = Math.min(this.staleFrom, at);
    this.staleTo = Math.max(this.staleTo, at) + 1;
    this.events.push(this.endX[part], part);
    this.compare(at - 1, x);
    this.compare(at, x);
  }

  private removeAt(at: number): void {
    this.activeCount--;
    for (let i = at; i < this.activeCount; i++) {
      this.order[i] = this.order[i + 1];
      this.position[this.order[i]] = i;
    }
    this.staleFrom = Math.min(this.staleFrom, at);
    this.staleTo = Math.max(this.staleTo, at);
  }

  private cross(index: number, x: number): void {
    const { lower, upper, lowerVertex, upperVertex } = this.crossings[index];
    const at = this.position[lower];
    const neighbours = at + 1 < this.activeCount && this.order[at] === lower && this.order[at + 1] === upper;
    if (!neighbours || this.vertex[lower] !== lowerVertex || this.vertex[upper] !== upperVertex) {
      return;
    }
    this.order[at] = upper;
    this.order[at + 1] = lower;
    this.position[upper] = at;
    this.position[lower] = at + 1;
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
    const lower = this.order[at];
    const upper = this.order[at + 1];
    const until = Math.min(this.endX[lower], this.endX[upper]);
    const after = this.yAt(upper, until) - this.yAt(lower, until);
    if (after < 0) {
      const now = this.yAt(upper, x) - this.yAt(lower, x);
      const crossX = now > 0 ? Math.min(until, x + ((until - x) * now) / (now - after)) : x;
      const index = this.crossings.push({
        lower,
        upper,
        lowerVertex: this.vertex[lower],
        upperVertex: this.vertex[upper],
      });
      this.events.push(crossX, this.partCount + index - 1);
      return;
    }
    const now = this.yAt(upper, x) - this.yAt(lower, x);
    if (now < 0) {
      this.doubtM2 += ((until - x) * now * now) / (2 * (after - now));
    }
  }

  /** Restores invariant 2 from the lowest stale position upwards. */
  private deriveStates(x: number): void {
    let state = this.staleFrom > 0 ? this.above[this.order[this.staleFrom - 1]] : CoverStates.NOWHERE;
    for (let i = this.staleFrom; i < this.activeCount; i++) {
      const part = this.order[i];
      if (i > this.staleTo && this.below[part] === state) {
        return;
      }
      const above = this.states.across(state, this.layer[part], this.sign[part]);
      if (this.below[part] !== state || this.above[part] !== above) {
        this.book(part, x);
        this.below[part] = state;
        this.above[part] = above;
      }
      state = above;
    }
  }

  /** Books ∫ y dx of a part's current edge from where it was booked last up to `x`. */
  private book(part: number, x: number): void {
    const from = this.bookedX[part];
    const width = x - from;
    if (width > 0) {
      const below = this.below[part];
      const above = this.above[part];
      if (Math.max(below, above) >= this.areas.length) {
        this.growAreas(Math.max(below, above) + 1);
      }
      const integral = width * this.yAt(part, from + width / 2);
      this.areas[below] += integral;
      this.areas[above] -= integral;
      this.bookedX[part] = x;
    }
  }

  private yAt(part: number, x: number): number {
    return this.lineY[part] + this.slope[part] * (x - this.lineX[part]);
  }

  private setLine(part: number): void {
    const v = 2 * this.vertex[part];
    if (v < 0) {
      this.lineX[part] = this.fromX[part];
      this.lineY[part] = FAR_BELOW_M;
      this.slope[part] = 0;
      this.endX[part] = this.toX[part];
      return;
    }
    const { vertices } = this;
    this.lineX[part] = vertices[v] - this.originX;
    this.lineY[part] = vertices[v + 1] - this.originY;
    this.slope[part] = (vertices[v + 3] - vertices[v + 1]) / (vertices[v + 2] - vertices[v]);
    this.endX[part] = Math.min(vertices[v + 2] - this.originX, this.toX[part]);
  }

  /** Where a starting part belongs: above all parts that are lower at `x`, or equal there and less steep. */
  private placeFor(part: number, x: number): number {
    const y = this.yAt(part, x);
    let low = 0;
    let high = this.activeCount;
    while (low < high) {
      const middle = (low + high) >> 1;
      const other = this.order[middle];
      const difference = this.yAt(other, x) - y;
      if (difference < 0 || (difference === 0 && this.slope[other] <= this.slope[part])) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private growAreas(length: number): void {
    const grown = new Float64Array(Math.max(length, 2 * this.areas.length));
    grown.set(this.areas);
    this.areas = grown;
  }

  private reserve(count: number): void {
    if (count <= this.layer.length) {
      return;
    }
    const length = Math.max(count, 2 * this.layer.length);
    this.layer = new Int32Array(length);
    this.sign = new Int8Array(length);
    this.fromX = new Float64Array(length);
    this.toX = new Float64Array(length);
    this.lastVertex = new Int32Array(length);
    this.vertex = new Int32Array(length);
    this.lineX = new Float64Array(length);
    this.lineY = new Float64Array(length);
    this.slope = new Float64Array(length);
    this.endX = new Float64Array(length);
    this.bookedX = new Float64Array(length);
    this.below = new Int32Array(length);
    this.above = new Int32Array(length);
    this.order = new Int32Array(length);
    this.position = new Int32Array(length);
    this.starts = new Int32Array(length);
  }
}
