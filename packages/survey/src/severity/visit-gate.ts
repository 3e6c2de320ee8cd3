/** The diagnosis of a visit: each rater one vote. */
import { CAUSES, type Cause } from '../records.ts';
import { newestDay, type RaterDay } from './newest-visit.ts';
import { gateOf } from './rating-gate.ts';

export interface VisitGate {
  readonly open: boolean;
  readonly cause: Cause;
  /** The votes, when they differ: `A: frass ✓, B: frass ✗`; ✓ is an open gate. */
  readonly dispute?: string;
}

interface Vote {
  readonly rater: string;
  readonly ratedOn: string;
  readonly open: boolean;
  readonly cause: Cause;
}

/**
 * Majority of the raters. A tie goes to the newer vote; on the same day to `open`, since what one rater found was there. The
 * cause is the commonest on the winning side, then the newest, then the first in `CAUSES`. `undefined` for no raters.
 */
export function visitGate(days: readonly RaterDay[]): VisitGate | undefined {
  const votes = days.map(voteOf);
  if (votes.length === 0) return undefined;
  const open = isOpen(votes);
  const cause = commonestCause(votes.filter((vote) => vote.open === open));
  const distinct = new Set(votes.map((vote) => `${vote.open} ${vote.cause}`));
  if (distinct.size === 1) return { open, cause };
  const dispute = votes.map((vote) => `${vote.rater}: ${voteText(vote.cause, vote.open)}`).join(', ');
  return { open, cause, dispute };
}

/** A vote in signs that every language reads: `frass ✓`, `none ✗`. */
export function voteText(cause: Cause, open: boolean): string {
  return `${cause} ${open ? '✓' : '✗'}`;
}

/** A rater's vote: several rows of one day are open when any is. */
function voteOf(day: RaterDay): Vote {
  const stated = day.ratings.map((rating) => ({ open: gateOf(rating) === 'open', cause: rating.cause }));
  const open = stated.some((one) => one.open);
  const causes = stated.filter((one) => one.open === open).map((one) => one.cause);
  const cause = CAUSES.find((one) => causes.includes(one)) ?? 'unknown';
  return { rater: day.rater, ratedOn: day.ratedOn, open, cause };
}

function isOpen(votes: readonly Vote[]): boolean {
  const openVotes = votes.filter((vote) => vote.open);
  const closedVotes = votes.filter((vote) => !vote.open);
  if (openVotes.length !== closedVotes.length) return openVotes.length > closedVotes.length;
  return newestDay(openVotes) >= newestDay(closedVotes);
}

function commonestCause(votes: readonly Vote[]): Cause {
  const count = (cause: Cause): number => votes.filter((vote) => vote.cause === cause).length;
  const most = Math.max(...CAUSES.map(count));
  const leading = CAUSES.filter((cause) => count(cause) === most);
  const newest = newestDay(votes.filter((vote) => leading.includes(vote.cause)));
  return leading.find((cause) => votes.some((vote) => vote.cause === cause && vote.ratedOn === newest)) ?? leading[0];
}
