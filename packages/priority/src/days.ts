/** Days between dates and dates so many days on; ISO dates of the proleptic Gregorian calendar, no time zone. */

const DAY_MS = 86_400_000;

/** Days from one ISO date to another (`2026-03-01` → `2026-03-11` is 10; negative when the second is earlier). */
export function daysBetween(from: string, to: string): number {
  return (dayNumber(to) - dayNumber(from)) / DAY_MS;
}

/** The date so many whole days later (earlier when negative): `addDays('2024-02-28', 2)` is `2024-03-01`. */
export function addDays(date: string, days: number): string {
  return new Date(dayNumber(date) + days * DAY_MS).toISOString().slice(0, 10);
}

function dayNumber(date: string): number {
  const time = Date.parse(`${date}T00:00:00Z`);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || Number.isNaN(time))
    throw new RangeError(`expected a date YYYY-MM-DD, got ${date}`);
  return time;
}
