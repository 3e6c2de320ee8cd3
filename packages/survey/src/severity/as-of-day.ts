/** Which day the figures speak of. */
import type { Survey } from '../records.ts';
import type { Settings } from '../settings.ts';

/** The day that figures are reckoned for: the one set, else the newest date among the survey's observations, else the season's last day. */
export function asOfDay(survey: Survey, settings: Settings): string {
  if (settings.as_of !== null) return settings.as_of;
  const newest = [
    newestOf(survey.ratings, (rating) => rating.ratedOn),
    newestOf(survey.bloom, (observation) => observation.observedOn),
    newestOf(survey.quadrats, (quadrat) => quadrat.measuredOn),
    newestOf(survey.complaints, (complaint) => complaint.receivedOn ?? ''),
  ];
  return newestOf(newest, (day) => day) || `${survey.season}-12-31`;
}

/** Empty text for none. */
function newestOf<T>(records: readonly T[], dayOf: (record: T) => string): string {
  let newest = '';
  for (const record of records) {
    const day = dayOf(record);
    if (day > newest) newest = day;
  }
  return newest;
}
