import type { RawLayer } from '@crownfall/survey';

/** The year of the newest rating, for a project that names no season; `undefined` when no rating is dated. */
export function seasonOf(ratings: RawLayer | undefined): number | undefined {
  let newest: number | undefined;
  for (const { properties } of ratings?.features ?? []) {
    const year = Number(/(?<!\d)(?:19|20)\d{2}(?!\d)/.exec(String(properties.rated_on ?? ''))?.[0] ?? Number.NaN);
    if (Number.isFinite(year) && (newest === undefined || year > newest)) newest = year;
  }
  return newest;
}
