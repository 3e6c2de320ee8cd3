/** The `datetime` parameter: an instant or an interval, by RFC 3339 section 5.6, with open ends as `..` or nothing. */
import { Refusal } from '../http/refusal.ts';

/** Milliseconds since 1970, both ends included; an open end is infinite. */
export interface Period {
  readonly from: number;
  readonly to: number;
}

const DAY_MS = 86_400_000;
const DATE = '(\\d{4})-(\\d{2})-(\\d{2})';
const DATE_TIME = new RegExp(`^${DATE}[Tt](\\d{2}):(\\d{2}):(\\d{2})(\\.\\d+)?([Zz]|[+-]\\d{2}:\\d{2})$`);
const FULL_DATE = new RegExp(`^${DATE}$`);

/**
 * Reads a period. A day without a time stands for the whole day (an addition of ours: our observations have days). Throws a
 * refusal (400) for anything else.
 */
export function readPeriod(text: string): Period {
  const ends = text.split('/');
  if (ends.length > 2) throw invalid();
  if (ends.length === 1) return readEnd(ends[0]);
  const from = isOpen(ends[0]) ? Number.NEGATIVE_INFINITY : readEnd(ends[0]).from;
  const to = isOpen(ends[1]) ? Number.POSITIVE_INFINITY : readEnd(ends[1]).to;
  if (isOpen(ends[0]) && isOpen(ends[1])) throw invalid();
  if (from > to) throw new Refusal(400, 'invalid-parameter', 'datetime: The interval ends before it begins.');
  return { from, to };
}

/** Whether an observation on this day (ISO, UTC) falls into the period. */
export function dayMeets(day: string, { from, to }: Period): boolean {
  const start = Date.parse(`${day}T00:00:00Z`);
  return start <= to && start + DAY_MS - 1 >= from;
}

const isOpen = (end: string): boolean => end === '..' || end === '';

function readEnd(text: string): Period {
  const date = FULL_DATE.exec(text);
  if (date !== null) {
    const from = startOfDay(date);
    return { from, to: from + DAY_MS - 1 };
  }
  const found = DATE_TIME.exec(text);
  if (found === null) throw invalid();
  const at = instantOf(found);
  return { from: at, to: at };
}

function instantOf(found: RegExpExecArray): number {
  const [hour, minute, second] = found.slice(4, 7).map(Number);
  // A leap second (60) is allowed by RFC 3339; it counts as the second after.
  if (hour > 23 || minute > 59 || second > 60) throw invalid();
  const zone = /([+-])(\d{2}):(\d{2})/.exec(found[8]);
  if (zone !== null && (Number(zone[2]) > 23 || Number(zone[3]) > 59)) throw invalid();
  const shift = zone === null ? 0 : (zone[1] === '-' ? -1 : 1) * (Number(zone[2]) * 60 + Number(zone[3]));
  const fraction = found[7] === undefined ? 0 : Math.floor(Number(`0${found[7]}`) * 1000);
  return startOfDay(found) + ((hour * 60 + minute - shift) * 60 + second) * 1000 + fraction;
}

function startOfDay(found: RegExpExecArray): number {
  const [year, month, day] = found.slice(1, 4).map(Number);
  const at = new Date(0);
  at.setUTCFullYear(year, month - 1, day);
  if (at.getUTCMonth() !== month - 1 || at.getUTCDate() !== day) throw invalid();
  return at.getTime();
}

const invalid = (): Refusal =>
  new Refusal(
    400,
    'invalid-parameter',
    'datetime: Expected an instant such as 2026-05-04T12:00:00Z, a day, or an interval from/to with .. for an open end.',
  );
