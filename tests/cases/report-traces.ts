/** Follows a figure of a report back into the files of its run, without the program's own readers. */
export interface Trace {
  readonly file: string;
  readonly row?: string | readonly string[];
  readonly column: string;
  readonly sum?: true;
  readonly per?: Trace;
}

type Row = Readonly<Record<string, unknown>>;
type Files = ReadonlyMap<string, string>;

/** The number in the cell, or the sum over the rows named, or its share of another. Throws when there is no such cell. */
export function followed(trace: Trace, files: Files): number {
  const own = trace.sum
    ? rowsOf(trace.file, files).reduce((sum, row) => sum + numberAt(row, trace.column), 0)
    : [trace.row ?? ''].flat().reduce((sum, id) => sum + cellOf(trace, id, files), 0);
  return trace.per === undefined ? own : own / followed(trace.per, files);
}

function cellOf({ file, column }: Trace, id: string, files: Files): number {
  if (file === 'ledger.csv') {
    const rows = rowsOf(file, files).filter((row) => row.block_id === id || row.kind === id);
    if (rows.length === 0) throw new Error(`ledger.csv: no row ${id}`);
    return rows.reduce((sum, row) => sum + numberAt(row, column), 0);
  }
  if (file === 'notices.csv') {
    return numberAt(
      one(rowsOf(file, files), (row) => `${row.block_id} ${row.address}` === id, id),
      column,
    );
  }
  if (file.endsWith('.json') || file.endsWith('--json')) return jsonCell(JSON.parse(textOf(file, files)), id, column);
  return numberAt(
    one(rowsOf(file, files), (row) => row.block_id === id, id),
    column,
  );
}

/** Names of lists in plan.json and of the field that tells their rows apart. */
const KEYS: Readonly<Record<string, string>> = {
  next: 'of',
  frontier: 'budget',
  districts: 'name',
  worth_rating: 'tree_id',
  treated: 'tree_id',
};

function jsonCell(whole: Row, id: string, column: string): number {
  const [first, ...rest] = column.split('.');
  const key = KEYS[first];
  if (key !== undefined) {
    const list = whole[first] as readonly Row[];
    return numberAt(
      one(list, (row) => String(row[key]) === id, id),
      rest.join('.'),
    );
  }
  if (id === '') return numberAt(whole, column);
  if (id === 'total') return numberAt(whole.total as Row, column);
  return numberAt(
    one(whole.blocks as readonly Row[], (row) => row.block_id === id, id),
    column,
  );
}

function one(rows: readonly Row[], is: (row: Row) => boolean, id: string): Row {
  const found = rows.filter(is);
  if (found.length !== 1) throw new Error(`expected one row ${id}, got ${found.length}`);
  return found[0];
}

/** `range80.0` leads into a list. Empty is no number. */
function numberAt(row: Row, path: string): number {
  const value = path.split('.').reduce<unknown>((held, key) => (held as Row)?.[key], row);
  if (value === null || value === undefined || value === '' || !Number.isFinite(Number(value)))
    throw new Error(`no number at ${path}`);
  return Number(value);
}

function rowsOf(file: string, files: Files): readonly Row[] {
  const text = textOf(file, files);
  if (file.endsWith('.geojson'))
    return (JSON.parse(text) as { features: { properties: Row }[] }).features.map(({ properties }) => properties);
  const [head, ...lines] = text.trim().split(/\r?\n/);
  const names = head.split(',');
  return lines.map((line) => {
    const cells = line.match(/("([^"]|"")*"|[^,]*)(,|$)/g)?.map((cell) => cell.replace(/,$/, '').replace(/^"|"$/g, ''));
    return Object.fromEntries(names.map((name, i) => [name, cells?.[i] ?? '']));
  });
}

function textOf(file: string, files: Files): string {
  const text = files.get(file);
  if (text === undefined) throw new Error(`the report names a file that no run writes: ${file}`);
  return text;
}
