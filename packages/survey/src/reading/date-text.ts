/**
 * Dates in the styles people use. ISO `2026-05-03` is taken as it stands. `5/3/2026` and `3.5.2026` say nothing by
 * themselves about which number is the day: the column decides, when some value in it can only be read one way.
 */

type DayMonthOrder = 'day-first' | 'month-first';

/** What one column of dates shows about the order in each of the two styles. */
export interface DateColumn {
  readonly '/': ColumnOrder;
  readonly '.': ColumnOrder;
}

/** `order`: proved by `proof`. `open`: no value proves an order. `mixed`: values prove both. */
type ColumnOrder =
  | { readonly is: 'order'; readonly order: DayMonthOrder; readonly proof: string }
  | { readonly is: 'open' }
  | { readonly is: 'mixed' };

export type DateReading =
  | { readonly is: 'date'; readonly iso: string }
  /** Read by the order that the column proves. */
  | { readonly is: 'inferred'; readonly iso: string; readonly proof: string }
  | { readonly is: 'ambiguous'; readonly either: string; readonly or: string }
  | { readonly is: 'impossible' }
  | { readonly is: 'unreadable' };

const YEAR_FIRST = /^(\d{4})[-/](\d{1,2})[-/](\d{1,2})(?:[T ]\d{2}:\d{2}.*)?$/;
const YEAR_LAST = /^(\d{1,2})([./])(\d{1,2})\2(\d{4})$/;

/** Looks through a column for values that prove the order of day and month: a number above 12 is a day. */
export function surveyDates(values: Iterable<unknown>): DateColumn {
  const proofs: Record<'/' | '.', Partial<Record<DayMonthOrder, string>>> = { '/': {}, '.': {} };
  for (const value of values) {
    const parts = typeof value === 'string' ? YEAR_LAST.exec(value.trim()) : null;
    if (parts === null) continue;
    const order = ownOrder(Number(parts[1]), Number(parts[3]));
    if (order !== undefined) proofs[parts[2] as '/' | '.'][order] ??= parts[0];
  }
  return { '/': columnOrder(proofs['/']), '.': columnOrder(proofs['.']) };
}

/**
 * Reads one date. A slashed or dotted date is read by its own numbers (one above 12, or both equal), else by the order the
 * column proves; else it is ambiguous and both readings are given.
 * @example readDate('5/3/2026', surveyDates(['5/3/2026', '5/20/2026']))
 * // { is: 'inferred', iso: '2026-05-03', proof: '5/20/2026' }
 */
export function readDate(raw: unknown, column: DateColumn): DateReading {
  if (typeof raw !== 'string') return { is: 'unreadable' };
  const typed = raw.trim();
  const iso = YEAR_FIRST.exec(typed);
  if (iso !== null) return checked(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const parts = YEAR_LAST.exec(typed);
  if (parts === null) return { is: 'unreadable' };
  const [first, second, year] = [Number(parts[1]), Number(parts[3]), Number(parts[4])];
  if (first === second) return checked(year, first, second);
  const own = ownOrder(first, second);
  const known = column[parts[2] as '/' | '.'];
  const order = own ?? (known.is === 'order' ? known.order : undefined);
  if (order === undefined) return bothReadings(year, first, second);
  const reading = order === 'day-first' ? checked(year, second, first) : checked(year, first, second);
  if (reading.is !== 'date') return reading;
  return { is: 'inferred', iso: reading.iso, proof: own !== undefined || known.is !== 'order' ? typed : known.proof };
}

/** Whether a text is a day of the calendar in ISO form. */
export function isIsoDay(text: string): boolean {
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && readDate(text, { '/': { is: 'open' }, '.': { is: 'open' } }).is === 'date';
}

/** Days from `from` to `to`, both ISO days; negative when `to` is earlier. */
export function daysBetween(from: string, to: string): number {
  return from === to ? 0 : dayNumber(to) - dayNumber(from);
}

function ownOrder(first: number, second: number): DayMonthOrder | undefined {
  if (first > 12 && second <= 12) return 'day-first';
  if (second > 12 && first <= 12) return 'month-first';
  return undefined;
}

function columnOrder(proofs: Partial<Record<DayMonthOrder, string>>): ColumnOrder {
  const { 'day-first': dayFirst, 'month-first': monthFirst } = proofs;
  if (dayFirst !== undefined && monthFirst !== undefined) return { is: 'mixed' };
  if (dayFirst !== undefined) return { is: 'order', order: 'day-first', proof: dayFirst };
  if (monthFirst !== undefined) return { is: 'order', order: 'month-first', proof: monthFirst };
  return { is: 'open' };
}

function bothReadings(year: number, first: number, second: number): DateReading {
  const monthFirst = checked(year, first, second);
  const dayFirst = checked(year, second, first);
  if (monthFirst.is !== 'date' || dayFirst.is !== 'date') return { is: 'impossible' };
  return { is: 'ambiguous', either: monthFirst.iso, or: dayFirst.iso };
}

function checked(year: number, month: number, day: number): DateReading {
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return { is: 'impossible' };
  const two = (n: number): string => String(n).padStart(2, '0');
  return { is: 'date', iso: `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}` };
}

function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** Days since 0000-03-01 in the Gregorian calendar: years begun in March, so that the leap day comes last. */
function dayNumber(iso: string): number {
  const [year, month, day] = iso.split('-').map(Number);
  const fromMarch = (month + 9) % 12;
  const y = month <= 2 ? year - 1 : year;
  const leapDays = Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  return 365 * y + leapDays + Math.floor((153 * fromMarch + 2) / 5) + day - 1;
}
