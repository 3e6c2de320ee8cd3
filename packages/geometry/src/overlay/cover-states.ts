/**
 * Cover states: which layers cover a spot, and how often each winds around it. A state is a number; the sweep only ever asks
 * for the state on the other side of a chain, and equal covers get equal numbers, so areas can be summed by number.
 */
export class CoverStates {
  /** State `s` owns entries `start[s] … start[s + 1] − 1` of `layer` (ascending) and `winding` (never 0). */
  private readonly start: number[] = [0, 0];
  private readonly layer: number[] = [];
  private readonly winding: number[] = [];
  private readonly crossings = new Map<number, number>();
  private readonly known = new Map<string, number>();

  /** The state outside everything. */
  static readonly NOWHERE = 0;

  get count(): number {
    return this.start.length - 1;
  }

  /** Forgets all states but `NOWHERE`. */
  reset(): void {
    this.start.length = 2;
    this.layer.length = 0;
    this.winding.length = 0;
    this.crossings.clear();
    this.known.clear();
    this.known.set('', CoverStates.NOWHERE);
  }

  /** The state above a chain of `layer` with `sign`, when `state` is below it. */
  across(state: number, layer: number, sign: number): number {
    const crossing = (state * 0x200000 + layer) * 2 + (sign > 0 ? 1 : 0);
    const seen = this.crossings.get(crossing);
    if (seen !== undefined) {
      return seen;
    }
    const result = this.intern(state, layer, sign);
    this.crossings.set(crossing, result);
    return result;
  }

  /** The layers that cover a state, ascending. */
  layersOf(state: number): readonly number[] {
    return this.layer.slice(this.start[state], this.start[state + 1]);
  }

  private intern(state: number, layer: number, sign: number): number {
    const base = this.layer.length;
    let placed = false;
    for (let i = this.start[state]; i < this.start[state + 1]; i++) {
      if (!placed && this.layer[i] > layer) {
        this.push(layer, sign);
        placed = true;
      }
      if (this.layer[i] === layer) {
        this.push(layer, this.winding[i] + sign);
        placed = true;
      } else {
        this.push(this.layer[i], this.winding[i]);
      }
    }
    if (!placed) {
      this.push(layer, sign);
    }
    const key = this.keyFrom(base);
    const existing = this.known.get(key);
    if (existing !== undefined) {
      this.layer.length = base;
      this.winding.length = base;
      return existing;
    }
    const number = this.count;
    this.start.push(this.layer.length);
    this.known.set(key, number);
    return number;
  }

  private push(layer: number, winding: number): void {
    if (winding !== 0) {
      this.layer.push(layer);
      this.winding.push(winding);
    }
  }

  private keyFrom(base: number): string {
    let key = '';
    for (let i = base; i < this.layer.length; i++) {
      key += `${this.layer[i]}*${this.winding[i]},`;
    }
    return key;
  }
}
