/**
 * Value functions by two reference levels that the user sets, not by the least and greatest of the data: adding a block
 * changes no other block's score.
 */
import type { ReferenceLevels } from '@crownfall/survey';

/**
 * The value of an amount, 0–1: 0 at or below `none`, 1 at or beyond `full`, linear between. With `full` below `none` less is
 * worth more. Equal levels make a step: 1 only beyond them. RangeError when a number is not finite.
 *
 * Example: 50 m² with levels 0 and 200 m² has value 0.25.
 */
export function levelValue(amount: number, { none, full }: ReferenceLevels): number {
  for (const number of [amount, none, full]) {
    if (!Number.isFinite(number)) throw new RangeError(`expected a finite amount and levels, got ${number}`);
  }
  if (full === none) return amount > none ? 1 : 0;
  return Math.min(1, Math.max(0, (amount - none) / (full - none)));
}
