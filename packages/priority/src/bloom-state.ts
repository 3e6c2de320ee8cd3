/**
 * The state of the bloom window from dated BBCH stages: whether a treatment can still reach exposed larvae.
 * Stages: BBCH monograph (Meier U, ed., 2018, Julius Kühn-Institut), principal growth stage 6, 60–69 = flowering. That larvae
 * are exposed while the host flowers and out of reach inside the galls later: common practice, no source.
 */
import type { BloomObservation } from '@crownfall/survey';
import { daysBetween } from './days.ts';
import type { BloomState } from './score.ts';

/** Earlier in the list wins a tie: on doubt nothing is called open. */
const CAUTIOUS_FIRST: readonly BloomState[] = ['closed', 'before', 'closing', 'open'];

/**
 * The state on the day `asOf`, from the newest observation that is not older than `staleDays` and not later than `asOf`. Several
 * on that newest day: the state seen most often; a tie goes to the more cautious one. None: `unknown`. Without a day
 * (`asOf` null, no dates in the data) also `unknown`. The order of the observations has no influence.
 *
 * Example: BBCH 63 seen 3 days ago and 58 seen 10 days ago, 14 days allowed: `open`.
 */
export function bloomStateOf(
  observations: readonly BloomObservation[],
  asOf: string | null,
  staleDays: number,
): BloomState {
  if (asOf === null) return 'unknown';
  let newest = '';
  let votes = new Map<BloomState, number>();
  for (const seen of observations) {
    const ageDays = daysBetween(seen.observedOn, asOf);
    if (ageDays < 0 || ageDays > staleDays || seen.observedOn < newest) continue;
    if (seen.observedOn > newest) {
      newest = seen.observedOn;
      votes = new Map();
    }
    const state = stateOf(seen);
    votes.set(state, (votes.get(state) ?? 0) + 1);
  }
  const most = Math.max(0, ...votes.values());
  return CAUTIOUS_FIRST.find((state) => votes.get(state) === most) ?? 'unknown';
}

/** What one observation says on its own day: larvae inside galls close the window at any stage. */
export function stateOf({ bbch, larvaeInGalls }: Pick<BloomObservation, 'bbch' | 'larvaeInGalls'>): BloomState {
  if (larvaeInGalls === 'yes' || bbch > 69) return 'closed';
  if (bbch >= 68) return 'closing';
  return bbch >= 60 ? 'open' : 'before';
}
