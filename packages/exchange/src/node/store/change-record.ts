import type { LayerName } from '@crownfall/survey';
import { geometryBlob } from '../../store/geopackage/geometry-blob.ts';
import type { Edit, EditOutcome, Properties, StoredRecord } from '../../store/project-store.ts';
import { EXTRA_COLUMN, type LayerTable } from './layer-table.ts';
import type { RecordReader } from './read-records.ts';
import { columnValues, extraOf, extraText, parted } from './record-rows.ts';
import { quoted } from './sql-names.ts';
import type { Connection } from './sqlite-module.ts';

type Update = Extract<Edit, { action: 'update' }>;
type Insert = Extract<Edit, { action: 'insert' }>;
type Deletion = Extract<Edit, { action: 'delete' }>;

/** Applies an edit to a record as it stands, whatever version the person saw. */
export function changeRecord(
  db: Connection,
  reader: RecordReader,
  edit: Update | Deletion,
  current: StoredRecord,
): EditOutcome {
  if (edit.action === 'update') updateRecord(db, reader.table(edit.layer), edit, current);
  else db.prepare(`DELETE FROM ${quoted(edit.layer)} WHERE fid = ?`).run(edit.recordId);
  return applied(reader, edit.layer, edit.recordId, versionOf(db, edit.layer, edit.recordId));
}

/** What became of an edit that was made; `versionWhenGone` counts for a record that was deleted. */
export function applied(reader: RecordReader, layer: LayerName, recordId: number, versionWhenGone = 0): EditOutcome {
  const record = reader.record(layer, recordId);
  return { outcome: 'applied', recordId, version: record?.version ?? versionWhenGone, record };
}

function versionOf(db: Connection, layer: LayerName, recordId: number): number {
  return db
    .prepare('SELECT version FROM crownfall_records WHERE layer = ? AND fid = ?')
    .pluck()
    .get(layer, recordId) as number;
}

/** Puts a record into its table as new and gives its number; with `recordId` under that number, as an undoing does. */
export function insertRecord(
  db: Connection,
  table: LayerTable,
  { geometry, properties }: Pick<Insert, 'geometry' | 'properties'>,
): number {
  const { columns, extra } = columnValues(table, properties);
  const blob = blobFor(table, geometry);
  const names = [
    ...table.fields.map(({ name }) => name),
    EXTRA_COLUMN,
    ...(table.geometry === null ? [] : [table.geometry]),
  ];
  const values = [...columns, extra, ...(table.geometry === null ? [] : [blob])];
  const sql = `INSERT INTO ${quoted(table.name)} (${names.map(quoted).join(', ')}) VALUES (${names.map(() => '?').join(', ')})`;
  db.prepare(sql).run(values);
  // The journal's triggers insert as well; the newest record of an AUTOINCREMENT table has the greatest number.
  return db.prepare('SELECT seq FROM sqlite_sequence WHERE name = ?').pluck().get(table.name) as number;
}

function blobFor(table: LayerTable, geometry: Insert['geometry']): Uint8Array | null {
  if (table.geometry === null && geometry.kind !== 'none') {
    throw new TypeError(`expected no geometry in ${table.name}, got ${geometry.kind}`);
  }
  return geometryBlob(geometry);
}

function updateRecord(db: Connection, table: LayerTable, edit: Update, current: StoredRecord): void {
  const sets = new Map<string, string | number | Uint8Array | null>();
  if (edit.properties !== undefined) setProperties(db, table, edit.recordId, edit.properties, sets);
  if (edit.geometry !== undefined && (table.geometry !== null || edit.geometry.kind !== 'none')) {
    const blob = blobFor(table, edit.geometry);
    if (table.geometry !== null) sets.set(table.geometry, blob);
  }
  if (sets.size === 0) return;
  const assignments = [...sets.keys()].map((name) => `${quoted(name)} = ?`).join(', ');
  db.prepare(`UPDATE ${quoted(table.name)} SET ${assignments} WHERE fid = ?`).run(...sets.values(), current.recordId);
}

function setProperties(
  db: Connection,
  table: LayerTable,
  recordId: number,
  properties: Properties,
  sets: Map<string, string | number | Uint8Array | null>,
): void {
  const stored = db
    .prepare(`SELECT ${EXTRA_COLUMN} FROM ${quoted(table.name)} WHERE fid = ?`)
    .pluck()
    .get(recordId);
  const rest = new Map(Object.entries(extraOf(stored)));
  for (const [name, value] of Object.entries(properties)) {
    const field = table.fields.find((other) => other.name === name);
    const { column, inExtra } = field
      ? parted(value, field.type)
      : { column: null, inExtra: value !== null && value !== undefined };
    if (field) sets.set(name, column);
    if (inExtra) rest.set(name, value);
    else rest.delete(name);
  }
  const text = extraText(rest);
  if (text !== (stored ?? null)) sets.set(EXTRA_COLUMN, text);
}
