/** Sums whose rounding error does not grow with the number of terms. */

/**
 * A running sum that keeps the low-order part each addition loses (Neumaier's variant of Kahan's method).
 *
 * Error bound: 2·eps·|Σv| + O(n·eps²)·Σ|v|, against n·eps·Σ|v| for a plain loop. The empty sum is 0. An infinite
 * term gives an infinite total.
 *
 * Source: Neumaier (1974), ZAMM 54, 39–51 (from memory).
 *
 * Example: adding 1, 1e100, 1 and −1e100 gives a `total` of 2; a plain loop gives 0.
 */
export class CompensatedSum {
  #sum = 0;
  #lost = 0;

  add(value: number): void {
    const sum = this.#sum + value;
    this.#lost += Math.abs(this.#sum) >= Math.abs(value) ? this.#sum - sum + value : value - sum + this.#sum;
    this.#sum = sum;
  }

  get total(): number {
    return Number.isFinite(this.#sum) ? this.#sum + this.#lost : this.#sum;
  }
}

/**
 * Sum of a list of numbers by `CompensatedSum`.
 *
 * Example: `compensatedSum([0.1, 0.2, 0.3, -0.6])` gives 2.7755575615628914e-17, the exact sum of these doubles.
 */
export function compensatedSum(values: ArrayLike<number>): number {
  const sum = new CompensatedSum();
  for (let i = 0; i < values.length; i++) sum.add(values[i] as number);
  return sum.total;
}
