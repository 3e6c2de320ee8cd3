/**
 * The Horsfall–Barratt scale: twelve classes, narrow at both ends where the eye tells shares apart best.
 * Source: Horsfall JG, Barratt RW (1945) An improved grading system for measuring plant diseases. Phytopathology 35:655.
 * The limit between the classes 75–88 and 88–94 is printed 87 in some sources; 88 is used, with which the scale is
 * symmetric about 50 %.
 */
import type { ClassScale } from './class-scale.ts';

const LIMITS_PCT: readonly (readonly [number, number])[] = [
  [0, 0],
  [0, 3],
  [3, 6],
  [6, 12],
  [12, 25],
  [25, 50],
  [50, 75],
  [75, 88],
  [88, 94],
  [94, 97],
  [97, 100],
  [100, 100],
];

const SOURCE = 'Horsfall and Barratt 1945, Phytopathology 35:655; limit 88 where some sources print 87';

/** Classes counted from 0. The scale is also counted from 1; a plain name would leave that open, so there is none. */
export const HORSFALL_BARRATT_0_11: ClassScale = counted('horsfall-barratt-0-11', 0);

/** The same classes counted from 1. */
export const HORSFALL_BARRATT_1_12: ClassScale = counted('horsfall-barratt-1-12', 1);

function counted(name: string, first: 0 | 1): ClassScale {
  return {
    name,
    title: `Horsfall–Barratt, classes ${first}–${first + 11}`,
    source: SOURCE,
    classes: LIMITS_PCT.map(([loPct, hiPct], i) => ({ code: String(i + first), loPct, hiPct })),
  };
}
