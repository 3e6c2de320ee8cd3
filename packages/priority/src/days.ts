/** Days from one ISO date to another (`2026-03-01` → `2026-03-11` is 10; negative when the second is earlier). */
export function daysBetween(from: string, to: string): number {
  return (dayNumber(to) - dayNumber(from)) / 86_400_000;
}

function dayNumber(date: string): number {
  const time = Date.parse(`${date}T00:00:00Z`);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || Number.isNaN(time))
    throw new RangeError(`expected a date YYYY-MM-DD, got ${date}`);
  return time;
}
