/** The shape of a rank's explanation. */
import type { Criterion } from '@crownfall/survey';

export type BloomState = 'before' | 'open' | 'closing' | 'closed' | 'unknown';

/** One criterion's share of a score: `points = weight · value`, weights summing to 1. */
export interface ScorePart {
  readonly criterion: Criterion;
  /** The measured amount, in the criterion's own unit. */
  readonly amount: number;
  /** 0–1 by the criterion's reference levels. */
  readonly value: number;
  readonly weight: number;
  readonly points: number;
}
