/** What one rating says about the cause in the crown. */
import type { Rating } from '../records.ts';

/** `open`: a staining cause is present, on evidence. `closed`: none is. `unstated`: the rating does not say. */
export type RatingGate = 'open' | 'closed' | 'unstated';

/**
 * The gate of one rating. Frass needs galls: recorded ones, or evidence in words when the gall load is left blank. Honeydew,
 * fruit and leaf litter need only be stated. `none` closes the gate. `unknown` states nothing, and a gate that nobody
 * opened is closed. Common practice, no source: a host without galls drops no frass, however brown it is.
 * @example gateOf({ …, cause: 'frass', gallLoad: 'none' }) // 'closed'
 */
export function gateOf(rating: Pick<Rating, 'cause' | 'gallLoad' | 'evidence'>): RatingGate {
  if (rating.cause === 'unknown') return 'unstated';
  if (rating.cause === 'none') return 'closed';
  if (rating.cause !== 'frass') return 'open';
  if (rating.gallLoad === undefined) return rating.evidence === undefined ? 'closed' : 'open';
  return rating.gallLoad === 'none' ? 'closed' : 'open';
}
