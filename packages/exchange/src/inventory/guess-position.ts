import { readNumber } from '@crownfall/survey';

type Row = Readonly<Record<string, unknown>>;

const X = /(?:^|[^a-z])(?:lon|lng|long|longitude|x|east|easting|rechtswert)(?:$|[^a-z])/i;
const Y = /(?:^|[^a-z])(?:lat|latitude|y|north|northing|hochwert)(?:$|[^a-z])/i;
const SAMPLE_ROWS = 500;

/** The two columns of a table that hold positions under unusual names: `GPS_LONG`, `Y_COORDINATE`. Null without a pair. */
export function guessPosition(rows: readonly Row[]): { readonly x: string; readonly y: string } | null {
  const sample = rows.slice(0, SAMPLE_ROWS);
  const names = [...new Set(sample.flatMap((row) => Object.keys(row)))];
  const find = (pattern: RegExp) => names.find((name) => pattern.test(name) && isNumeric(sample, name));
  const x = find(X);
  const y = find(Y);
  return x === undefined || y === undefined || x === y ? null : { x, y };
}

function isNumeric(rows: readonly Row[], name: string): boolean {
  const read = rows.map((row) => readNumber(row[name])).filter((reading) => reading !== 'missing');
  return read.length > 0 && read.filter((reading) => typeof reading === 'object').length > 0.9 * read.length;
}
