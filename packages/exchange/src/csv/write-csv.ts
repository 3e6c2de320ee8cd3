/** A cell's value: numbers and truth values as they are, lists and objects as JSON text, null and undefined empty. */
export type CsvRecord = Readonly<Record<string, unknown>>;

/**
 * A table as delimited text by RFC 4180, in pieces: comma, CRLF, quotes where needed, a header row first. Numbers carry a
 * decimal point in every locale. A text that a spreadsheet would take for a formula (it starts with = + - @, a tab or a
 * return, and is no number) gets an apostrophe before it, which our reader takes off again.
 *
 * @example [...writeCsv(['a', 'b'], [{ a: 1.5, b: '=1+1' }])].join('') // "a,b\r\n1.5,'=1+1\r\n"
 */
export function* writeCsv(columns: readonly string[], records: Iterable<CsvRecord>): Generator<string> {
  yield `${columns.map(cellText).join(',')}\r\n`;
  for (const record of records) {
    const line = columns.map((column) => cellText(record[column])).join(',');
    // A row of one empty cell would be an empty line, which readers pass over.
    yield `${line === '' ? '""' : line}\r\n`;
  }
}

function cellText(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? String(value + 0 === 0 ? 0 : value) : '';
  if (typeof value === 'boolean' || typeof value === 'bigint') return String(value);
  return quoted(typeof value === 'string' ? guarded(value) : JSON.stringify(value));
}

const FORMULA = /^'*[=+\-@\t\r]/;
const NUMBER = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?$/;

function guarded(text: string): string {
  return FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text;
}

function quoted(text: string): string {
  return /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
