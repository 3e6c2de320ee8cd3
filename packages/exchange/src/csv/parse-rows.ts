/** The one place that knows papaparse. */
import Papa from 'papaparse';

export interface ParsedRows {
  /** Row 1 of the spreadsheet is the first; a quoted cell may hold line breaks and is still one row. */
  readonly rows: readonly (readonly string[])[];
  readonly delimiter: string;
  /** Spreadsheet rows in which a quote is opened and never closed, or closed amid a cell. */
  readonly badQuotes: readonly number[];
}

const DELIMITERS = ['\t', ';', ',', '|'] as const;

/**
 * Splits delimited text into rows of cells (RFC 4180 quoting; line ends CR, LF or both). The delimiter is the one the
 * first line has most of outside quotes, or the one named by a leading `sep=;` line. No text gives no rows.
 *
 * @example parseRows('a;b\n1,5;2').rows // [['a', 'b'], ['1,5', '2']]
 */
export function parseRows(text: string): ParsedRows {
  const named = /^sep=(.)\r?\n/.exec(text)?.[1];
  const delimiter = named ?? delimiterOf(firstLine(text));
  const { data, errors } = Papa.parse<string[]>(text, { delimiter, skipEmptyLines: false });
  // The line that names the delimiter is a row to a spreadsheet too: it stays, emptied.
  const rows = named === undefined ? data : [[''], ...data.slice(1)];
  const badQuotes = [...new Set(errors.filter((e) => e.type === 'Quotes').map((e) => (e.row ?? 0) + 1))];
  return { rows, delimiter, badQuotes };
}

function firstLine(text: string): string {
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const sign = text[i];
    if (sign === '"') quoted = !quoted;
    else if (!quoted && (sign === '\n' || sign === '\r') && text.slice(0, i).trim() !== '') return text.slice(0, i);
  }
  return text;
}

function delimiterOf(line: string): string {
  const bare = line.replace(/"[^"]*"/g, '');
  let best = ',';
  let most = 0;
  for (const delimiter of DELIMITERS) {
    const count = bare.split(delimiter).length - 1;
    if (count > most) {
      best = delimiter;
      most = count;
    }
  }
  return best;
}
