/** What forbids treatment on the day of the figures, for whoever stands in a block: on the sheet, not in the plan. */
import type { Reason } from '@crownfall/survey';
import type { Reckoned } from '../assess.ts';
import { offersOf } from './offers-of.ts';

/**
 * The reasons against treating each block; none for a block that does not exist. What a price list lacks is no reason on the
 * spot, and is left out.
 * @example treatmentReasons(job)('B04') // [{ code: 'bloom-not-open', … }]
 */
export function treatmentReasons(job: Reckoned): (blockId: string) => readonly Reason[] | undefined {
  const treat = offersOf(job).offers.filter(({ action }) => action === 'treat');
  const byBlock = new Map(treat.map(({ blockId, forbidden }) => [blockId, forbidden]));
  return (blockId) => byBlock.get(blockId)?.filter(({ code }) => code !== 'price-missing');
}
