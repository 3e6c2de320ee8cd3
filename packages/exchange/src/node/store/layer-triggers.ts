/**
 * What the file itself does when somebody writes to it, this program or another: keeps the R-tree, gives names, counts
 * versions, writes the journal. This program says who writes in the one row of `crownfall_session`, which exists only
 * inside its own transactions; while there is none, the writer is `outside`.
 */
import type { Database } from 'better-sqlite3';
import { NAMING_FIELDS } from '../../store/layer-fields.ts';
import { EXTRA_COLUMN, GEOMETRY_COLUMN, type LayerTable, rtreeName } from './layer-table.ts';
import { literal, quoted } from './sql-names.ts';

export interface Trigger {
  readonly name: string;
  readonly sql: string;
}

/** All triggers that belong on a table of records, for its columns as they stand. */
function tableTriggers(table: LayerTable): readonly Trigger[] {
  return [...(table.geometry === null ? [] : rtreeTriggers(table.name)), ...journalTriggers(table)];
}

/** Makes the table's triggers what they should be; tells whether anything had to be changed. */
export function setTriggers(db: Database, table: LayerTable): boolean {
  const wanted = tableTriggers(table);
  const stored = db
    .prepare("SELECT sql FROM sqlite_master WHERE type = 'trigger' AND name = ? AND tbl_name = ?")
    .pluck();
  const wrong = wanted.filter(({ name, sql }) => stored.get(name, table.name) !== sql);
  for (const { name, sql } of wrong) db.exec(`DROP TRIGGER IF EXISTS ${quoted(name)}; ${sql}`);
  return wrong.length > 0;
}

export function dropTriggers(db: Database, table: LayerTable): void {
  for (const { name } of tableTriggers(table)) db.exec(`DROP TRIGGER IF EXISTS ${quoted(name)}`);
}

/** The triggers of extension gpkg_rtree_index (OGC 12-128r18, annex F.3), by the names the annex gives them. */
export function rtreeTriggers(name: string): readonly Trigger[] {
  const table = quoted(name);
  const rtree = quoted(rtreeName(name));
  const placed = `(NEW.${GEOMETRY_COLUMN} NOTNULL AND NOT ST_IsEmpty(NEW.${GEOMETRY_COLUMN}))`;
  const placeless = `(NEW.${GEOMETRY_COLUMN} ISNULL OR ST_IsEmpty(NEW.${GEOMETRY_COLUMN}))`;
  const bounds = ['ST_MinX', 'ST_MaxX', 'ST_MinY', 'ST_MaxY'].map((of) => `${of}(NEW.${GEOMETRY_COLUMN})`).join(', ');
  const put = `INSERT OR REPLACE INTO ${rtree} VALUES (NEW.fid, ${bounds});`;
  const rules = {
    insert: `AFTER INSERT ON ${table} WHEN ${placed} BEGIN ${put} END`,
    update1: `AFTER UPDATE OF ${GEOMETRY_COLUMN} ON ${table} WHEN OLD.fid = NEW.fid AND ${placed} BEGIN ${put} END`,
    update2:
      `AFTER UPDATE OF ${GEOMETRY_COLUMN} ON ${table} WHEN OLD.fid = NEW.fid AND ${placeless} ` +
      `BEGIN DELETE FROM ${rtree} WHERE id = OLD.fid; END`,
    update3:
      `AFTER UPDATE ON ${table} WHEN OLD.fid != NEW.fid AND ${placed} ` +
      `BEGIN DELETE FROM ${rtree} WHERE id = OLD.fid; ${put} END`,
    update4:
      `AFTER UPDATE ON ${table} WHEN OLD.fid != NEW.fid AND ${placeless} ` +
      `BEGIN DELETE FROM ${rtree} WHERE id IN (OLD.fid, NEW.fid); END`,
    delete:
      `AFTER DELETE ON ${table} WHEN OLD.${GEOMETRY_COLUMN} NOT NULL ` +
      `BEGIN DELETE FROM ${rtree} WHERE id = OLD.fid; END`,
  };
  return Object.entries(rules).map(([rule, sql]) => trigger(`${rtreeName(name)}_${rule}`, sql));
}

function trigger(name: string, rest: string): Trigger {
  return { name, sql: `CREATE TRIGGER ${quoted(name)} ${rest}` };
}

const JOURNALED = 'NOT EXISTS (SELECT 1 FROM crownfall_session WHERE silent)';
const NOT_NAMING = 'NOT EXISTS (SELECT 1 FROM crownfall_naming)';

/** The triggers that name, count and journal. */
function journalTriggers(table: LayerTable): readonly Trigger[] {
  const on = quoted(table.name);
  const columns = columnsOf(table);
  const differ = columns.map((column) => `OLD.${quoted(column)} IS NOT NEW.${quoted(column)}`).join(' OR ');
  const rules = {
    // INSERT OR REPLACE deletes without telling: what stands there is set aside, and found by the insert trigger.
    before: `BEFORE INSERT ON ${on} WHEN ${JOURNALED} BEGIN ${setAside(table)} END`,
    insert: `AFTER INSERT ON ${on} WHEN ${JOURNALED} BEGIN ${named(table)} ${inserted(table)} END`,
    update:
      `AFTER UPDATE ON ${on} WHEN ${JOURNALED} AND ${NOT_NAMING} AND OLD.fid = NEW.fid AND (${differ}) ` +
      `BEGIN ${forget(table, 'NEW')} ${counted(table, 'NEW', '2')} ${entry(table, 'NEW', "'update'")} ` +
      `${values(columns, 'OLD', 'NEW')} END`,
    renumber:
      `AFTER UPDATE ON ${on} WHEN ${JOURNALED} AND OLD.fid != NEW.fid BEGIN ${deleted(table)} ` +
      `${counted(table, 'NEW', '1')} ${entry(table, 'NEW', "'insert'")} ${values(columns, null, 'NEW')} END`,
    delete: `AFTER DELETE ON ${on} WHEN ${JOURNALED} BEGIN ${deleted(table)} END`,
  };
  return Object.entries(rules).map(([rule, sql]) => trigger(`crownfall_${table.name}_${rule}`, sql));
}

function columnsOf({ fields, geometry, extra }: LayerTable): readonly string[] {
  return [
    ...(geometry === null ? [] : [geometry]),
    ...fields.map(({ name }) => name),
    ...(extra ? [EXTRA_COLUMN] : []),
  ];
}

function setAside(table: LayerTable): string {
  const row = `(SELECT * FROM ${quoted(table.name)} WHERE fid = NEW.fid)`;
  const rows = columnsOf(table).map(
    (column) => `SELECT ${literal(table.name)}, NEW.fid, ${literal(column)}, ${quoted(column)} FROM ${row}`,
  );
  return `${forget(table, 'NEW')} INSERT INTO crownfall_replaced ${rows.join(' UNION ALL ')};`;
}

function forget({ name }: LayerTable, row: 'NEW' | 'OLD'): string {
  return `DELETE FROM crownfall_replaced WHERE layer = ${literal(name)} AND fid = ${row}.fid;`;
}

/** A record without a name gets one, a copy of a named record another; unless its name is given back by an undoing. */
function named({ name, fields }: LayerTable): string {
  const naming = NAMING_FIELDS[name as keyof typeof NAMING_FIELDS];
  if (naming === undefined || !fields.some((field) => field.name === naming.field)) return '';
  const on = quoted(name);
  const field = quoted(naming.field);
  const taken = (value: string) => `EXISTS (SELECT 1 FROM ${on} WHERE ${field} = ${value} AND fid != NEW.fid)`;
  const missing = `(NEW.${field} IS NULL OR NEW.${field} = '')`;
  const made = `CASE WHEN ${missing} THEN ${literal(naming.prefix)} ELSE NEW.${field} END || '-' || NEW.fid`;
  return (
    `INSERT INTO crownfall_naming VALUES (1); UPDATE ${on} SET ${field} = CASE WHEN ${taken(made)} ` +
    `THEN ${made} || '-' || lower(hex(randomblob(4))) ELSE ${made} END WHERE fid = NEW.fid AND (${missing} OR ` +
    `${taken(`NEW.${field}`)}) AND NOT EXISTS (SELECT 1 FROM crownfall_session WHERE reverting); DELETE FROM crownfall_naming;`
  );
}

/** Counts a writing; `first` is the version of a record that was never counted before: it was 1 as it came in. */
function counted({ name }: LayerTable, row: 'NEW' | 'OLD', first: string): string {
  return (
    `INSERT INTO crownfall_records (layer, fid, version) SELECT ${literal(name)}, ${row}.fid, ${first} WHERE true ` +
    'ON CONFLICT (layer, fid) DO UPDATE SET version = version + 1;'
  );
}

const NOW = "strftime('%Y-%m-%dT%H:%M:%fZ', 'now')";
const LAST = '(SELECT MAX(change) FROM crownfall_changes)';

function entry({ name }: LayerTable, row: 'NEW' | 'OLD', action: string): string {
  const session = (column: string) => `(SELECT ${column} FROM crownfall_session)`;
  return (
    'INSERT INTO crownfall_changes (step, author, at, layer, fid, action, version) VALUES ' +
    `(${session('step')}, coalesce(${session('author')}, 'outside'), coalesce(${session('at')}, ${NOW}), ` +
    `${literal(name)}, ${row}.fid, ${action}, ` +
    `(SELECT version FROM crownfall_records WHERE layer = ${literal(name)} AND fid = ${row}.fid));`
  );
}

/** One row per column that differs; a side that is not there counts as empty. */
function values(columns: readonly string[], before: 'OLD' | null, after: 'NEW' | null): string {
  const side = (row: string | null, column: string) => (row === null ? 'NULL' : `${row}.${quoted(column)}`);
  return differing(columns.map((column) => [literal(column), side(before, column), side(after, column)]));
}

function differing(rows: readonly (readonly [field: string, before: string, after: string])[]): string {
  const selects = rows.map(
    ([field, before, after]) => `SELECT ${field} AS field, ${before} AS before, ${after} AS after`,
  );
  return (
    `INSERT INTO crownfall_change_values SELECT ${LAST}, field, before, after FROM (${selects.join(' UNION ALL ')}) ` +
    'WHERE before IS NOT after;'
  );
}

/** After naming, so from the table and not from NEW; and after what may have been replaced. */
function inserted(table: LayerTable): string {
  const of = `layer = ${literal(table.name)} AND fid = NEW.fid`;
  const replaced = `EXISTS (SELECT 1 FROM crownfall_replaced WHERE ${of})`;
  const before = (column: string) =>
    `(SELECT before FROM crownfall_replaced WHERE ${of} AND field = ${literal(column)})`;
  const after = (column: string) => `(SELECT ${quoted(column)} FROM ${quoted(table.name)} WHERE fid = NEW.fid)`;
  return [
    counted(table, 'NEW', `CASE WHEN ${replaced} THEN 2 ELSE 1 END`),
    entry(table, 'NEW', `CASE WHEN ${replaced} THEN 'update' ELSE 'insert' END`),
    differing(columnsOf(table).map((column) => [literal(column), before(column), after(column)])),
    forget(table, 'NEW'),
    table.geometry === null
      ? ''
      : `DELETE FROM ${quoted(rtreeName(table.name))} WHERE id = NEW.fid AND NEW.${GEOMETRY_COLUMN} IS NULL;`,
  ].join(' ');
}

function deleted(table: LayerTable): string {
  return `${forget(table, 'OLD')} ${counted(table, 'OLD', '2')} ${entry(table, 'OLD', "'delete'")} ${values(columnsOf(table), 'OLD', null)}`;
}
