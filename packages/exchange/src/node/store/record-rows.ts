import type { LayerName } from '@crownfall/survey';
import { type BlobReading, readGeometryBlob } from '../../store/geopackage/geometry-blob.ts';
import { columnValue, valueOfColumn } from '../../store/layer-fields.ts';
import type { FieldType, Properties, StoredRecord } from '../../store/project-store.ts';
import { EXTRA_COLUMN, type LayerTable } from './layer-table.ts';
import { quoted } from './sql-names.ts';

/** In which order a record's fields stood where it came from, and which of them said null instead of nothing. */
export interface Shape {
  readonly order: readonly string[];
  readonly nulls: readonly string[];
}

/** A row as `recordColumns` selects it. */
export type RecordRow = readonly unknown[];

const LEADING_COLUMNS = 5;

/** What to select, from the table as `t` and `crownfall_records` as `r`, for `recordOf` to read. */
export function recordColumns({ fields, geometry, extra }: LayerTable): string {
  const columns = ['t.fid', 'coalesce(r.version, 1)', 'r.shape'];
  columns.push(geometry === null ? 'NULL' : `t.${quoted(geometry)}`, extra ? `t.${EXTRA_COLUMN}` : 'NULL');
  return [...columns, ...fields.map(({ name }) => `t.${quoted(name)}`)].join(', ');
}

export interface RowTools {
  /** The shape of a number, and the layer's usual one for null. */
  readonly shapeOf: (shape: number | null) => Shape | null;
  /** Told of a geometry that cannot be read: the record counts as without one. */
  readonly onUnreadable: (recordId: number, problem: string) => void;
}

/** A record from its row. */
export function recordOf(table: LayerTable, row: RecordRow, { shapeOf, onUnreadable }: RowTools): StoredRecord {
  const [fid, version, shape, blob, extra] = row as readonly [number, number, number | null, unknown, unknown];
  const { geometry, problem } = blob instanceof Uint8Array ? readGeometryBlob(blob) : NOWHERE;
  if (problem !== undefined) onUnreadable(fid, problem);
  const properties = propertiesOf(table, row, extra, shapeOf(shape));
  return { layer: table.name as LayerName, recordId: fid, version, geometry, properties };
}

const NOWHERE: BlobReading = { geometry: { kind: 'none' } };

export function geometryOf(blob: unknown): StoredRecord['geometry'] {
  return blob instanceof Uint8Array ? readGeometryBlob(blob).geometry : { kind: 'none' };
}

function propertiesOf(table: LayerTable, row: RecordRow, extra: unknown, shape: Shape | null): Properties {
  const values = new Map<string, unknown>();
  table.fields.forEach(({ name, type }, i) => {
    const stored = row[LEADING_COLUMNS + i];
    if (stored !== null && !(stored instanceof Uint8Array)) values.set(name, valueOfColumn(stored, type));
  });
  // A column that another program has filled since counts more than what did not fit into it before.
  for (const [name, value] of Object.entries(extraOf(extra))) {
    const column = values.get(name);
    if (column === undefined || isNumberAsText(value, column)) values.set(name, value);
  }
  return Object.fromEntries(shape === null ? values : ordered(values, shape));
}

function ordered(values: Map<string, unknown>, { order, nulls }: Shape): [string, unknown][] {
  const out: [string, unknown][] = [];
  for (const name of order) {
    if (values.has(name)) out.push([name, values.get(name)]);
    else if (nulls.includes(name)) out.push([name, null]);
    values.delete(name);
  }
  return [...out, ...values];
}

/** What the column `extra` holds; a text that another program wrote there and that is no JSON object is a field by that name. */
export function extraOf(stored: unknown): Properties {
  if (typeof stored !== 'string' || stored === '') return {};
  try {
    const value: unknown = JSON.parse(stored);
    if (typeof value === 'object' && value !== null && !Array.isArray(value)) return value as Properties;
  } catch {
    // Falls through: not JSON.
  }
  return { [EXTRA_COLUMN]: stored };
}

/** Values of a record as its columns take them; what fits none is JSON. */
export interface ColumnValues {
  readonly columns: readonly (string | number | null)[];
  readonly extra: string | null;
}

/**
 * Where a value goes: into its column, into `extra`, or both: a number in a column of text (identifiers often are such)
 * is written there as text, to be seen and searched, and as the number it is in `extra`.
 */
export function parted(
  value: unknown,
  type: FieldType,
): { readonly column: string | number | null; readonly inExtra: boolean } {
  if (value === undefined || value === null) return { column: null, inExtra: false };
  if (type === 'text' && typeof value === 'number' && Number.isFinite(value))
    return { column: String(value), inExtra: true };
  const column = columnValue(value, type);
  return { column: column ?? null, inExtra: column === undefined };
}

function isNumberAsText(value: unknown, column: unknown): boolean {
  return typeof value === 'number' && String(value) === column;
}

/** The columns of a record with these properties, in the table's order. */
export function columnValues({ fields }: LayerTable, properties: Properties): ColumnValues {
  const columns: (string | number | null)[] = new Array(fields.length).fill(null);
  const rest = new Map(Object.entries(properties).filter(([, value]) => value !== null && value !== undefined));
  fields.forEach(({ name, type }, i) => {
    const { column, inExtra } = parted(rest.get(name), type);
    columns[i] = column;
    if (!inExtra) rest.delete(name);
  });
  return { columns, extra: extraText(rest) };
}

/** Undefined for nothing, so that the column stays empty. */
export function extraText(rest: ReadonlyMap<string, unknown>): string | null {
  return rest.size === 0 ? null : JSON.stringify(Object.fromEntries(rest));
}

/** Whether a record with these properties needs no shape of its own beside the usual one. */
export function followsShape(properties: Properties, { order, nulls }: Shape): boolean {
  const names = Object.keys(properties);
  let at = 0;
  for (const name of order) {
    if (names[at] === name) {
      if (properties[name] === null && !nulls.includes(name)) return false;
      at++;
    } else if (nulls.includes(name)) return false;
  }
  return at === names.length;
}

/** The shape that fits these properties and no others. */
export function ownShape(properties: Properties): Shape {
  const order = Object.keys(properties);
  return { order, nulls: order.filter((name) => properties[name] === null) };
}

/** The shape most of these follow: all their fields in the order first seen; null where that is commoner than nothing. */
export function usualShape(records: readonly Properties[]): Shape {
  const order: string[] = [];
  const known = new Set<string>();
  const nulls = new Map<string, number>();
  const present = new Map<string, number>();
  for (const properties of records) {
    for (const [name, value] of Object.entries(properties)) {
      if (!known.has(name)) order.push(name);
      known.add(name);
      present.set(name, (present.get(name) ?? 0) + 1);
      if (value === null) nulls.set(name, (nulls.get(name) ?? 0) + 1);
    }
  }
  const absent = (name: string) => records.length - (present.get(name) ?? 0);
  return { order, nulls: order.filter((name) => (nulls.get(name) ?? 0) > absent(name)) };
}
