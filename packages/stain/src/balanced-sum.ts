/**
 * Sums that lose no digits, so that ledgers balance however many parts they have.
 * Source: Neumaier A (1974) Zeitschrift für angewandte Mathematik und Mechanik 54:39–51, improved Kahan–Babuška sum.
 */

/** Many running sums side by side, each compensated. `new BalancedSums(3)` starts three sums at 0. */
export class BalancedSums {
  readonly #sum: Float64Array;
  readonly #lost: Float64Array;

  constructor(count: number) {
    this.#sum = new Float64Array(count);
    this.#lost = new Float64Array(count);
  }

  add(index: number, value: number): void {
    const before = this.#sum[index];
    const after = before + value;
    this.#lost[index] += Math.abs(before) >= Math.abs(value) ? before - after + value : value - after + before;
    this.#sum[index] = after;
  }

  at(index: number): number {
    return this.#sum[index] + this.#lost[index];
  }

  /** Starts the first `count` sums at 0 again. */
  clear(count: number): void {
    this.#sum.fill(0, 0, count);
    this.#lost.fill(0, 0, count);
  }

  /** All sums as a new array. */
  values(): Float64Array {
    const values = new Float64Array(this.#sum.length);
    for (let index = 0; index < values.length; index++) values[index] = this.#sum[index] + this.#lost[index];
    return values;
  }
}

/** The compensated sum of numbers; 0 for none. `balancedSum([1, 1e100, 1, -1e100])` is 2 (plain addition gives 0). */
export function balancedSum(values: Iterable<number>): number {
  const sums = new BalancedSums(1);
  for (const value of values) sums.add(0, value);
  return sums.at(0);
}
