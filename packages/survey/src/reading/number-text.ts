/**
 * Numbers as people type them: `7`, ` 7 `, `12,5`, `1.234,5`, `8.0 m`. Independent of the machine's locale.
 */

/** `mended`: the text was not a plain number with a decimal point, but could only mean one. */
export type NumberReading = { readonly value: number; readonly mended: boolean } | 'missing' | 'unreadable';

const MISSING_WORDS = new Set(['', 'none', 'null', 'nan', 'na', 'n/a', '-', '–']);
const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const COMMA_DECIMAL = /^[+-]?\d*,\d+$/;
const THOUSANDS_LIKE = /^[+-]?[1-9]\d{0,2},\d{3}$/;
const POINTS_THEN_COMMA = /^[+-]?\d{1,3}(\.\d{3})+,\d+$/;
const COMMAS_THEN_POINT = /^[+-]?\d{1,3}(,\d{3})+\.\d+$/;

/** Whether a raw value stands for "not recorded": empty, null, `None`, `NA`, `NaN`, a dash. */
export function isMissing(raw: unknown): boolean {
  if (raw === undefined || raw === null) return true;
  if (typeof raw === 'number') return Number.isNaN(raw);
  return typeof raw === 'string' && MISSING_WORDS.has(raw.trim().toLowerCase());
}

/**
 * Reads a number that may be text. A comma is a decimal comma unless it could as well separate thousands (`1,234` is
 * unreadable, `1.234,5` and `1,234.5` are not in doubt). A trailing unit is accepted when it is the field's own.
 * @example readNumber('12,5', 'm') // { value: 12.5, mended: true }
 */
export function readNumber(raw: unknown, unit = ''): NumberReading {
  if (isMissing(raw)) return 'missing';
  if (typeof raw === 'number') return Number.isFinite(raw) ? { value: raw, mended: false } : 'unreadable';
  if (typeof raw !== 'string') return 'unreadable';
  const typed = raw.trim();
  const bare = withoutUnit(typed, unit);
  if (PLAIN.test(bare)) return finite(Number(bare), bare !== typed);
  if (THOUSANDS_LIKE.test(bare)) return 'unreadable';
  if (COMMA_DECIMAL.test(bare)) return finite(Number(bare.replace(',', '.')), true);
  if (POINTS_THEN_COMMA.test(bare)) return finite(Number(bare.replaceAll('.', '').replace(',', '.')), true);
  if (COMMAS_THEN_POINT.test(bare)) return finite(Number(bare.replaceAll(',', '')), true);
  return 'unreadable';
}

function withoutUnit(typed: string, unit: string): string {
  if (unit === '' || !typed.endsWith(unit)) return typed;
  return typed.slice(0, -unit.length).trim();
}

function finite(value: number, mended: boolean): NumberReading {
  return Number.isFinite(value) ? { value, mended } : 'unreadable';
}
