/** Which day the figures speak of. */
import type { Survey } from '../records.ts';
import type { Settings } from '../settings.ts';
import { byCode } from './code-order.ts';

/** The day that figures are reckoned for: the one set, else the newest date among the survey's observations, else the season's last day. */
export function asOfDay(survey: Survey, settings: Settings): string {
  if (settings.as_of !== null) return settings.as_of;
  const dates = [
    ...survey.ratings.map((rating) => rating.ratedOn),
    ...survey.bloom.map((observation) => observation.observedOn),
    ...survey.quadrats.map((quadrat) => quadrat.measuredOn),
    ...survey.complaints.map((complaint) => complaint.receivedOn ?? ''),
  ];
  const newest = dates.sort(byCode).at(-1) ?? '';
  return newest === '' ? `${survey.season}-12-31` : newest;
}
