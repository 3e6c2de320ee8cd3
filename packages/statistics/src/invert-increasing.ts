/** The quantile of a distribution from its cumulative share: Newton's method kept inside a bracket. */

/** A cumulative share at a point and its slope there. */
export type ShareAndSlope = (at: number) => { readonly share: number; readonly slope: number };

/** Steps after which bisection alone has used up the 53 bits of a double in any bracket met here. */
const MOST_STEPS = 400;

/**
 * The u in [low, high] at which an increasing share reaches the target; the nearer end when it lies outside.
 *
 * Newton's step is taken when it stays within the bracket and halves it, otherwise the bracket is bisected.
 *
 * Example: `invertIncreasing(0.25, (u) => ({ share: u * u, slope: 2 * u }), 0, 1)` gives 0.5.
 */
export function invertIncreasing(target: number, at: ShareAndSlope, low: number, high: number): number {
  let [left, right] = [low, high];
  let guess = (left + right) / 2;
  for (let step = 0; step < MOST_STEPS; step++) {
    const { share, slope } = at(guess);
    if (share === target) return guess;
    if (share < target) left = guess;
    else right = guess;
    const newton = guess - (share - target) / slope;
    const next = newton > left && newton < right ? newton : (left + right) / 2;
    if (Math.abs(next - guess) <= Math.abs(next) * Number.EPSILON || next === left || next === right) return next;
    guess = next;
  }
  return guess;
}
