/** How much disease there was over a season: areas under its progress curve. */

import { CompensatedSum } from './compensated-sum.ts';
import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectFinite, expectSameLength } from './expectations.ts';

/** An area in (units of the values)·days, and its share of what the greatest possible value would have given throughout. */
export type ProgressArea = { readonly area: number; readonly relative: number };

/**
 * Area under the disease progress curve: Σ (yᵢ + yᵢ₊₁)/2 · (tᵢ₊₁ − tᵢ), times in days, strictly rising.
 *
 * `greatest` is the greatest possible value (1 for shares, 100 for per cent), for the relative area. Accuracy tested: exact.
 * Undefined below two observations. RangeError for times that do not rise.
 * Source: Campbell and Madden (1990), Introduction to Plant Disease Epidemiology.
 *
 * Example: `areaUnderProgressCurve([14, 21, 28], [40, 80, 90], 100)` gives an area of 1015, relative 0.725.
 */
export function areaUnderProgressCurve(
  days: ArrayLike<number>,
  values: ArrayLike<number>,
  greatest: number,
): Defined<ProgressArea> {
  expectRisingDays(days, values);
  if (days.length < 2) return undefinedBecause(days.length === 0 ? 'no-observations' : 'too-few-observations');
  const area = trapezoids(days, values);
  return defined({ area, relative: area / (greatest * span(days)) });
}

/**
 * Area under the disease progress stairs, which weighs the first and last observation like the others:
 * AUDPC + (y₁ + yₙ)/2 · D/(n − 1), D the days between first and last.
 *
 * Relative to greatest · D · n/(n − 1). Otherwise as `areaUnderProgressCurve`.
 * Source: Simko and Piepho (2012), Phytopathology 102, 381–389.
 *
 * Example: `areaUnderProgressStairs([14, 21, 28], [40, 80, 90], 100)` gives an area of 1470, relative 0.7.
 */
export function areaUnderProgressStairs(
  days: ArrayLike<number>,
  values: ArrayLike<number>,
  greatest: number,
): Defined<ProgressArea> {
  expectRisingDays(days, values);
  if (days.length < 2) return undefinedBecause(days.length === 0 ? 'no-observations' : 'too-few-observations');
  const step = span(days) / (days.length - 1);
  const ends = ((values[0] as number) + (values[values.length - 1] as number)) / 2;
  const area = trapezoids(days, values) + ends * step;
  return defined({ area, relative: area / (greatest * step * days.length) });
}

function expectRisingDays(days: ArrayLike<number>, values: ArrayLike<number>): void {
  expectSameLength(days, values, 'days and values');
  expectFinite(days, 'days');
  expectFinite(values, 'values');
  for (let i = 1; i < days.length; i++) {
    if (!((days[i] as number) > (days[i - 1] as number))) {
      throw new RangeError(`days: expected rising times, got ${days[i]} after ${days[i - 1]}`);
    }
  }
}

function trapezoids(days: ArrayLike<number>, values: ArrayLike<number>): number {
  const sum = new CompensatedSum();
  for (let i = 1; i < days.length; i++) {
    const width = (days[i] as number) - (days[i - 1] as number);
    sum.add((((values[i] as number) + (values[i - 1] as number)) / 2) * width);
  }
  return sum.total;
}

function span(days: ArrayLike<number>): number {
  return (days[days.length - 1] as number) - (days[0] as number);
}
