/** Which ratings of a tree count today. */
import { daysBetween } from '../reading/date-text.ts';
import type { Rating } from '../records.ts';
import { byCode } from './code-order.ts';

/** The ratings of one rater on one day. */
export interface RaterDay {
  readonly rater: string;
  readonly ratedOn: string;
  readonly ratings: readonly Rating[];
}

/**
 * The newest visit: of each rater the newest day, as long as it lies at most `windowDays` before the newest day of all.
 * Earlier ratings are kept in the survey but do not count. Sorted by rater; the order of the rows does not matter.
 */
export function newestVisit(ratings: readonly Rating[], windowDays: number): readonly RaterDay[] {
  if (ratings.length === 1) return [{ rater: ratings[0].rater, ratedOn: ratings[0].ratedOn, ratings }];
  const newestBy = new Map<string, Rating[]>();
  for (const rating of ratings) {
    const known = newestBy.get(rating.rater);
    if (known === undefined || rating.ratedOn > known[0].ratedOn) newestBy.set(rating.rater, [rating]);
    else if (rating.ratedOn === known[0].ratedOn) known.push(rating);
  }
  const newest = newestDay(ratings);
  return [...newestBy.entries()]
    .map(([rater, own]) => ({ rater, ratedOn: own[0].ratedOn, ratings: own }))
    .filter((day) => daysBetween(day.ratedOn, newest) <= windowDays)
    .sort((a, b) => byCode(a.rater, b.rater));
}

/** The latest day among dated things, ISO; empty text for none. */
export function newestDay(dated: readonly { readonly ratedOn: string }[]): string {
  return (
    dated
      .map((one) => one.ratedOn)
      .sort(byCode)
      .at(-1) ?? ''
  );
}
