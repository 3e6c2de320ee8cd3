/** Money and ranges as people read them. */
import { areaRange, grouped, type Units } from '../language/quantities.ts';

export const money = (amount: number, currency: string): string => `${grouped(amount, 0)}\u00a0${currency}`;

/** The 80 % range, or nothing without draws. */
export function rangeText(range: readonly [number, number] | null, units: Units): string {
  return range ? areaRange(range, units) : '';
}
