import type { Visit } from './project-store.ts';

/**
 * Whether two visits say the same: in whatever order their fields were sent, and a field without a value counts as absent.
 * @example sameVisit({ ...visit, details: { a: 1, b: 2 } }, { ...visit, details: { b: 2, a: 1 } }) // true
 */
export function sameVisit(a: Visit, b: Visit): boolean {
  return content(a) === content(b);
}

function content(visit: Visit): string {
  const given = Object.entries(visit).filter(([, value]) => value !== null);
  return JSON.stringify(Object.fromEntries(given), (_key, value: unknown) => (isRecord(value) ? sorted(value) : value));
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const sorted = (record: Readonly<Record<string, unknown>>): object =>
  Object.fromEntries(Object.entries(record).sort(([a], [b]) => (a < b ? -1 : 1)));
