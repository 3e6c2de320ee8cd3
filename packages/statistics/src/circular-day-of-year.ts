/** The mean date of events that may fall around the turn of the year. */

import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectFinite, expectPositive } from './expectations.ts';

/** Mean day, and how tightly the days gather about it. */
export type CircularDays = {
  /** From 0 (the last day of the year before) up to the year's length. */
  readonly meanDay: number;
  /** Resultant length: 1 all on one day, 0 spread all round. */
  readonly resultant: number;
  /** √(−2 ln R), in days. */
  readonly standardDeviationDays: number;
  /** Rayleigh's test that the days are spread evenly; its approximation is meant for at least 5 days. */
  readonly rayleighP: number;
  readonly days: number;
};

/** Resultants below this are rounding: the days cancel exactly. */
const CANCELLED = 1e-12;

/** From this number of days on, Rayleigh's p needs no correction. */
const LARGE_SAMPLE = 50;

/**
 * Mean day of the year by angles 2πd/L; days are numbers from 1 (1 January), L the length of the year in days.
 *
 * Accuracy tested: 1e-9. Undefined without days, and when they cancel (as two days half a year apart). One day is its own mean.
 * RangeError for days that are not finite. Source: Mardia and Jupp (2000), Directional Statistics, chapters 2 and 6.
 *
 * Example: days 355, 362, 3, 10, 18 of a year of 365 have the mean day 3.5956; their arithmetic mean, 149.6, is in May.
 */
export function circularDays(days: ArrayLike<number>, yearLength: number): Defined<CircularDays> {
  expectFinite(days, 'days');
  expectPositive(yearLength, 'yearLength');
  const n = days.length;
  if (n === 0) return undefinedBecause('no-observations');
  const turn = (2 * Math.PI) / yearLength;
  let east = 0;
  let north = 0;
  for (let i = 0; i < n; i++) {
    east += Math.sin((days[i] as number) * turn);
    north += Math.cos((days[i] as number) * turn);
  }
  const resultant = Math.min(1, Math.hypot(east, north) / n);
  if (resultant < CANCELLED) return undefinedBecause('opposed-directions');
  const angle = Math.atan2(east, north);
  return defined({
    meanDay: (angle < 0 ? angle + 2 * Math.PI : angle) / turn,
    resultant,
    standardDeviationDays: Math.sqrt(Math.max(0, -2 * Math.log(resultant))) / turn,
    rayleighP: rayleighP(n * resultant * resultant, n),
    days: n,
  });
}

/** Mardia and Jupp's expansion of the probability of nR² or more under an even spread. */
function rayleighP(z: number, n: number): number {
  if (n >= LARGE_SAMPLE) return Math.exp(-z);
  const first = (2 * z - z * z) / (4 * n);
  const second = (24 * z - 132 * z ** 2 + 76 * z ** 3 - 9 * z ** 4) / (288 * n * n);
  return Math.min(1, Math.max(0, Math.exp(-z) * (1 + first - second)));
}
