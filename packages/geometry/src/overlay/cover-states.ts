/**
 * Cover states: which layers cover a spot, and how often each winds around it. A state is a number; the sweep only ever asks
 * for the state on the other side of a chain, and equal covers get equal numbers, so areas can be summed by number.
 */
export class CoverStates {
  /** The state outside everything. */
  static readonly NOWHERE = 0;

  count = 1;
  /** State `s` owns entries `start[s] … start[s + 1] − 1` of `layer` (ascending) and `winding` (never 0). */
  private start = new Int32Array(64);
  private layer = new Int32Array(256);
  private winding = new Int32Array(256);
  /** Sum of `mix(layer) · winding`: the same for equal covers, whatever way led to them. */
  private hash = new Int32Array(64);
  /** Open addressing: state number + 1 at a slot found by hash, 0 where free. Always under half full. */
  private slots = new Int32Array(256);

  /** Forgets all states but `NOWHERE`. */
  reset(): void {
    this.count = 1;
    this.start[1] = 0;
    this.slots.fill(0);
    this.occupy(CoverStates.NOWHERE);
  }

  /** The state above a chain of `layer` with `sign`, when `state` is below it. */
  across(state: number, layer: number, sign: number): number {
    const hash = (this.hash[state] + Math.imul(mix(layer), sign)) | 0;
    const mask = this.slots.length - 1;
    for (let slot = spread(hash) & mask; this.slots[slot] !== 0; slot = (slot + 1) & mask) {
      const candidate = this.slots[slot] - 1;
      if (this.hash[candidate] === hash && this.differsBy(state, candidate, layer, sign)) {
        return candidate;
      }
    }
    return this.append(state, layer, sign, hash);
  }

  /** The layers that cover a state are `layerAt(i)` for i from `coverStart` to before `coverEnd`, ascending. */
  coverStart(state: number): number {
    return this.start[state];
  }

  coverEnd(state: number): number {
    return this.start[state + 1];
  }

  layerAt(i: number): number {
    return this.layer[i];
  }

  /** Whether `candidate` is `state` with `sign` added to the winding of `layer`. */
  private differsBy(state: number, candidate: number, layer: number, sign: number): boolean {
    let i = this.start[state];
    let j = this.start[candidate];
    const endI = this.start[state + 1];
    const endJ = this.start[candidate + 1];
    let found = 0;
    while (i < endI || j < endJ) {
      const a = i < endI ? this.layer[i] : 0x7fffffff;
      const b = j < endJ ? this.layer[j] : 0x7fffffff;
      const gained = (b <= a ? this.winding[j] : 0) - (a <= b ? this.winding[i] : 0);
      if (gained !== 0) {
        if (Math.min(a, b) !== layer || gained !== sign) {
          return false;
        }
        found++;
      }
      i += a <= b ? 1 : 0;
      j += b <= a ? 1 : 0;
    }
    return found === 1;
  }

  private append(state: number, layer: number, sign: number, hash: number): number {
    const from = this.start[state];
    const to = this.start[state + 1];
    let end = this.start[this.count];
    this.reserve(end + to - from + 1);
    let i = from;
    for (; i < to && this.layer[i] < layer; i++) {
      this.layer[end] = this.layer[i];
      this.winding[end++] = this.winding[i];
    }
    const wound = sign + (i < to && this.layer[i] === layer ? this.winding[i++] : 0);
    if (wound !== 0) {
      this.layer[end] = layer;
      this.winding[end++] = wound;
    }
    for (; i < to; i++) {
      this.layer[end] = this.layer[i];
      this.winding[end++] = this.winding[i];
    }
    const number = this.count++;
    this.hash[number] = hash;
    this.start[this.count] = end;
    this.occupy(number);
    return number;
  }

  private occupy(state: number): void {
    const mask = this.slots.length - 1;
    let slot = spread(this.hash[state]) & mask;
    while (this.slots[slot] !== 0) {
      slot = (slot + 1) & mask;
    }
    this.slots[slot] = state + 1;
  }

  /** Makes room for one more state and for entries up to `end`. */
  private reserve(end: number): void {
    if (end > this.layer.length) {
      this.layer = grown(this.layer, 2 * end);
      this.winding = grown(this.winding, 2 * end);
    }
    if (this.count + 2 > this.start.length) {
      this.start = grown(this.start, 2 * this.start.length);
      this.hash = grown(this.hash, 2 * this.hash.length);
    }
    if (2 * (this.count + 1) > this.slots.length) {
      this.slots = new Int32Array(4 * this.slots.length);
      for (let state = 0; state < this.count; state++) {
        this.occupy(state);
      }
    }
  }
}

function grown(array: Int32Array, length: number): Int32Array<ArrayBuffer> {
  const copy = new Int32Array(length);
  copy.set(array);
  return copy;
}

/** An odd number without pattern for each layer: the finaliser of MurmurHash3 (public domain, A. Appleby). */
function mix(layer: number): number {
  let h = Math.imul(layer + 1, 0x9e3779b1);
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) | 1;
}

function spread(hash: number): number {
  return hash ^ (hash >>> 15);
}
