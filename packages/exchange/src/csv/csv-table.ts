import type { Place } from '@crownfall/geometry';
import { finding } from '@crownfall/survey';
import type { FieldMapping, Properties } from '../field-mapping.ts';
import type { FindingSink } from '../finding-sink.ts';
import { type ColumnReading, cellValue, columnReading } from './column-values.ts';
import { parseRows } from './parse-rows.ts';

/** A table with named columns, its cells turned into values and mapped to our names. */
export interface CsvTable {
  /** Our names of the columns, in the order of the file. */
  readonly names: readonly string[];
  readonly records: readonly { readonly row: number; readonly values: Properties }[];
  /** The first filled cell of a column, as text; empty when there is none. */
  firstCell(name: string): string;
}

export interface CsvContext {
  readonly place: Place;
  readonly findings: FindingSink;
  readonly mapping: FieldMapping;
  readonly types: Readonly<Record<string, 'text' | 'json'>>;
}

interface Row {
  readonly row: number;
  readonly cells: readonly string[];
}

/** Reads delimited text whose first filled row names the columns. Empty rows are passed over but counted. */
export function csvTable(text: string, context: CsvContext): CsvTable {
  const { mapping } = context;
  const { rowNumbers, columns } = columnsOf(text, context);
  const records = rowNumbers.map((row, r) => ({ row, values: mapping.apply(recordAt(columns, r)) }));
  const first = new Map(columns.map(({ name, cells }) => [mapping.ourName(name), cells.find(filled) ?? '']));
  return { names: [...first.keys()], records, firstCell: (name) => first.get(name) ?? '' };
}

/** The table turned on its side, how each column is read decided. The rows themselves are let go: a table may be large. */
function columnsOf(text: string, context: CsvContext): { rowNumbers: number[]; columns: Column[] } {
  const { place, findings, mapping, types } = context;
  const parsed = parseRows(text);
  for (const row of parsed.badQuotes) {
    findings.add(finding('csv-quote-unclosed', 'warning/kept', { ...place, row }, {}));
  }
  const rows = parsed.rows.map((cells, i): Row => ({ row: i + 1, cells })).filter(({ cells }) => cells.some(filled));
  const header = rows.shift();
  if (!header) return { rowNumbers: [], columns: [] };
  const theirs = headerNames(header, widest(rows, header.cells.length), context);
  for (const row of rows) checkWidth(row, header.cells.length, context);
  const columns = theirs.map((name, c): Column => {
    const cells = rows.map((row) => row.cells[c] ?? '');
    const reading = columnReading(mapping.ourName(name), cells, Object.hasOwn(types, name) ? types[name] : undefined);
    return { name, cells, reading };
  });
  settleAmbiguous(columns, parsed.delimiter);
  tellCommas(columns, context);
  return { rowNumbers: rows.map(({ row }) => row), columns };
}

function recordAt(columns: readonly Column[], r: number): Properties {
  const values: [string, unknown][] = [];
  for (const { name, cells, reading } of columns) {
    const value = cellValue(cells[r], reading);
    if (value !== undefined) values.push([name, value]);
  }
  return Object.fromEntries(values);
}

interface Column {
  readonly name: string;
  readonly cells: readonly string[];
  reading: ColumnReading;
}

function filled(cell: string): boolean {
  return cell.trim() !== '';
}

/** The number of columns, counting cells beyond the header only where something stands in them. */
function widest(rows: readonly Row[], columns: number): number {
  return rows.reduce((most, { cells }) => Math.max(most, cells.findLastIndex(filled) + 1), columns);
}

function headerNames(header: Row, columns: number, { place, findings }: CsvContext): string[] {
  const names: string[] = [];
  for (let c = 0; c < columns; c++) {
    const given = (header.cells[c] ?? '').replace(/^\ufeff/, '').trim() || `column_${c + 1}`;
    let name = given;
    for (let n = 2; names.includes(name); n++) name = `${given}_${n}`;
    if (name !== given) {
      const where = { ...place, row: header.row, field: given };
      findings.add(finding('csv-header-repeated', 'warning/mended', where, { got: given, read_as: name }));
    }
    names.push(name);
  }
  return names;
}

function checkWidth({ row, cells }: Row, expected: number, { place, findings }: CsvContext): void {
  const got = cells.length;
  const spilled = cells.slice(expected).some(filled);
  if (got >= expected && !spilled) return;
  findings.add(finding('csv-ragged-row', 'warning/kept', { ...place, row }, { got, expected }));
}

/** `1,234` parts thousands where points or commas elsewhere in the file, or the delimiter, do not say otherwise. */
function settleAmbiguous(columns: readonly Column[], delimiter: string): void {
  const certain = columns.some(({ reading }) => reading.as === 'number' && reading.style === 'comma');
  const points = columns.some(
    ({ reading, cells }) =>
      reading.as === 'number' && reading.style === 'point' && cells.some((cell) => cell.includes('.')),
  );
  const comma = certain || (delimiter === ';' && !points);
  for (const column of columns) {
    const { reading } = column;
    if (reading.as === 'number' && reading.ambiguous && comma) column.reading = { ...reading, style: 'comma' };
  }
}

/** Tells for each column whose numbers carry commas how they were read. */
function tellCommas(columns: readonly Column[], { place, findings, mapping }: CsvContext): void {
  for (const { name, cells, reading } of columns) {
    if (reading.as !== 'number') continue;
    const withComma = cells.filter((cell) => cell.includes(','));
    if (withComma.length === 0) continue;
    const got = withComma[0].trim();
    const facts = { got, read_as: String(cellValue(got, reading)), count: withComma.length };
    findings.add(
      finding(
        'number-mended',
        reading.ambiguous ? 'warning/assumed' : 'note/mended',
        { ...place, field: mapping.ourName(name) },
        facts,
      ),
    );
  }
}
