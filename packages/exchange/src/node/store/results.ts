import { extentOf, geometryBlob } from '../../store/geopackage/geometry-blob.ts';
import { fittingType, type StoredField } from '../../store/layer-fields.ts';
import type { ResultTable } from '../../store/project-store.ts';
import {
  canBeColumn,
  createTable,
  EXTRA_COLUMN,
  GEOMETRY_COLUMN,
  MOST_FURTHER_COLUMNS,
  readLayerTable,
  rtreeName,
  setExtent,
} from './layer-table.ts';
import { rtreeTriggers } from './layer-triggers.ts';
import { columnValues } from './record-rows.ts';
import { quoted } from './sql-names.ts';
import type { Connection } from './sqlite-module.ts';

const PREFIX = 'result_';

/** The table of results of a name. */
export function resultTableName(name: string): string {
  if (!/^[a-z][a-z0-9_]{0,40}$/.test(name))
    throw new RangeError(`expected a name of small letters, digits and _, got ${name}`);
  return `${PREFIX}${name}`;
}

export function resultNames(db: Connection): string[] {
  const sql = `SELECT table_name FROM gpkg_contents WHERE table_name GLOB '${PREFIX}*' ORDER BY table_name`;
  return (db.prepare(sql).pluck().all() as string[]).map((name) => name.slice(PREFIX.length));
}

/** Replaces all results by these tables, inside the caller's transaction. */
export function writeResultTables(db: Connection, tables: readonly ResultTable[]): void {
  for (const name of resultNames(db)) dropTable(db, `${PREFIX}${name}`);
  for (const { name, rows } of tables) writeTable(db, resultTableName(name), [...rows]);
}

function dropTable(db: Connection, name: string): void {
  const placed = readLayerTable(db, name)?.geometry !== null;
  if (placed) db.exec(`DROP TABLE ${quoted(rtreeName(name))}`);
  db.exec(`DROP TABLE ${quoted(name)}`);
  for (const table of ['gpkg_extensions', 'gpkg_geometry_columns', 'gpkg_data_columns', 'gpkg_contents']) {
    db.prepare(`DELETE FROM ${table} WHERE table_name = ?`).run(name);
  }
}

type Row = ResultTable['rows'] extends Iterable<infer Each> ? Each : never;

function writeTable(db: Connection, name: string, rows: readonly Row[]): void {
  const placed = rows.some(({ geometry }) => geometry.kind !== 'none');
  createTable(db, { name, description: 'Figures of the last run', fields: fieldsOf(rows), placed });
  const table = readLayerTable(db, name);
  if (table === null) return;
  const names = [...(placed ? [GEOMETRY_COLUMN] : []), ...table.fields.map((field) => field.name), EXTRA_COLUMN];
  const insert = db.prepare(
    `INSERT INTO ${quoted(name)} (${names.map(quoted).join(', ')}) VALUES (${names.map(() => '?').join(', ')})`,
  );
  const index = placed ? db.prepare(`INSERT INTO ${quoted(rtreeName(name))} VALUES (?, ?, ?, ?, ?)`) : null;
  const extent: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { geometry, properties } of rows) {
    const { columns, extra } = columnValues(table, properties);
    const { lastInsertRowid } = insert.run([...(placed ? [geometryBlob(geometry)] : []), ...columns, extra]);
    const box = extentOf(geometry);
    if (box === null) continue;
    index?.run(lastInsertRowid, ...box);
    extent[0] = Math.min(extent[0], box[0]);
    extent[1] = Math.min(extent[1], box[2]);
    extent[2] = Math.max(extent[2], box[1]);
    extent[3] = Math.max(extent[3], box[3]);
  }
  if (!placed) return;
  if (extent[0] <= extent[2]) setExtent(db, name, extent);
  for (const { sql } of rtreeTriggers(name)) db.exec(sql);
}

function fieldsOf(rows: readonly Row[]): StoredField[] {
  const names = new Set(rows.flatMap(({ properties }) => Object.keys(properties)));
  const taken = new Set<string>();
  const fields: StoredField[] = [];
  for (const name of names) {
    const type = fittingType(rows.map(({ properties }) => properties[name]));
    if (type === null || fields.length >= MOST_FURTHER_COLUMNS || !canBeColumn(name, taken)) continue;
    fields.push({ name, type });
    taken.add(name.toLowerCase());
  }
  return fields;
}
