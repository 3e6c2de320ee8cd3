/** In which week of the plan each job begins. */
import type { ActionOffer } from './action-offer.ts';
import type { WorkLimits } from './work-problem.ts';

/**
 * First week, from 1, of each offer: windows that end first come first, then in the order given; jobs may run over a week's
 * end. Without a crew limit everything may begin in week 1.
 */
export function weeksOf(offers: readonly ActionOffer[], { crewHoursPerWeek, weeks }: WorkLimits): Map<string, number> {
  const order = [...offers.keys()].sort((a, b) => {
    const [first, second] = [offers[a].lastDay ?? '9999', offers[b].lastDay ?? '9999'];
    return first < second ? -1 : first > second ? 1 : a - b;
  });
  const week = new Map<string, number>();
  let hours = 0;
  for (const at of order) {
    const begun = crewHoursPerWeek ? Math.floor(hours / crewHoursPerWeek) + 1 : 1;
    week.set(offers[at].blockId, Math.min(weeks, begun));
    hours += offers[at].crewHours ?? 0;
  }
  return week;
}
