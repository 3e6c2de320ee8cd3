import { valueOfColumn } from '../../store/layer-fields.ts';
import type { Blame, Change, ChangeInFull, StepKind } from '../../store/project-store.ts';
import { EXTRA_COLUMN, GEOMETRY_COLUMN, type LayerTable } from './layer-table.ts';
import { PROJECT_TABLE } from './own-triggers.ts';
import type { RecordReader } from './read-records.ts';
import { extraOf, geometryOf } from './record-rows.ts';
import type { Connection } from './sqlite-module.ts';

interface ChangeRow {
  readonly change: number;
  readonly step: number | null;
  readonly kind: StepKind | null;
  readonly author: string;
  readonly at: string;
  readonly layer: string;
  readonly fid: number;
  readonly action: Change['action'];
  readonly version: number;
}

const CHANGES = 'SELECT c.*, s.kind FROM crownfall_changes c LEFT JOIN crownfall_steps s ON s.step = c.step';

/** The journal after a position, oldest first. */
export function changesSince(db: Connection, since: number, limit: number): Change[] {
  const rows = db.prepare(`${CHANGES} WHERE c.change > ? ORDER BY c.change LIMIT ?`).all(since, limit) as ChangeRow[];
  return rows.map(changeOf);
}

export function lastChange(db: Connection): number {
  return (db.prepare('SELECT max(change) FROM crownfall_changes').pluck().get() as number | null) ?? 0;
}

/** All changes of one record with what was there before and after. */
export function historyOf(db: Connection, reader: RecordReader, layer: string, recordId: number): ChangeInFull[] {
  const rows = db
    .prepare(`${CHANGES} WHERE c.layer = ? AND c.fid = ? ORDER BY c.change`)
    .all(layer, recordId) as ChangeRow[];
  return rows.map((row) => inFull(db, reader, row));
}

/** All changes of records that carry a tree's id now or carried it before. */
export function treeHistoryOf(db: Connection, reader: RecordReader, treeId: string): ChangeInFull[] {
  const layers = ['crowns', 'ratings', 'bloom'];
  const now = layers.map((layer) => `SELECT '${layer}' AS layer, fid FROM ${layer} WHERE tree_id = ?`).join(' UNION ');
  const once =
    "SELECT c.layer, c.fid FROM crownfall_change_values v JOIN crownfall_changes c USING (change) WHERE v.field = 'tree_id' " +
    "AND (v.before = ? OR v.after = ?) AND c.layer IN ('crowns', 'ratings', 'bloom')";
  const sql = `${CHANGES} WHERE (c.layer, c.fid) IN (${now} UNION ${once}) ORDER BY c.change`;
  const rows = db.prepare(sql).all(treeId, treeId, treeId, treeId, treeId) as ChangeRow[];
  return rows.map((row) => inFull(db, reader, row));
}

/** Who last wrote each field of a record that has a value: a change, or the import that brought it in. */
export function blameOf(db: Connection, reader: RecordReader, layer: string, recordId: number): Record<string, Blame> {
  const record = reader.record(layer, recordId);
  if (record === null) return {};
  const blame: Record<string, Blame> = {};
  const values = Object.entries(record.properties).filter(([, value]) => value !== null);
  const current = new Map<string, unknown>([
    ...values,
    ...(record.geometry.kind === 'none' ? [] : [['geometry', record.geometry] as const]),
  ]);
  const changes = historyOf(db, reader, layer, recordId).reverse();
  const brought = broughtBy(db, layer, changes.at(-1)?.change ?? null);
  for (const [field, value] of current) {
    const change = changes.find(({ fields }) => Object.hasOwn(fields, field)) ?? brought;
    if (change) blame[field] = { change: change.change, author: change.author, at: change.at, value };
  }
  return blame;
}

/** The last import before a record's first change. */
function broughtBy(db: Connection, layer: string, before: number | null): Change | null {
  const sql = `${CHANGES} WHERE c.layer = ? AND c.fid = 0 AND c.action = 'import' AND (? IS NULL OR c.change < ?) ORDER BY c.change DESC LIMIT 1`;
  const row = db.prepare(sql).get(layer, before, before) as ChangeRow | undefined;
  return row === undefined ? null : changeOf(row);
}

function changeOf({ kind, fid, layer, ...row }: ChangeRow): Change {
  return { ...row, kind: kind ?? 'outside', recordId: fid, layer: layer === PROJECT_TABLE.name ? 'project' : layer };
}

interface ValueRow {
  readonly field: string;
  readonly before: unknown;
  readonly after: unknown;
}

function inFull(db: Connection, reader: RecordReader, row: ChangeRow): ChangeInFull {
  const values = db
    .prepare('SELECT field, before, after FROM crownfall_change_values WHERE change = ?')
    .all(row.change) as ValueRow[];
  const table = reader.table(row.layer);
  return { ...changeOf(row), fields: Object.fromEntries(values.flatMap((value) => fieldsOf(table, value))) };
}

type FieldChange = readonly [string, { readonly before: unknown; readonly after: unknown }];

/** A column as the field it stands for; `extra` as the fields inside it. */
function fieldsOf(table: LayerTable, { field, before, after }: ValueRow): readonly FieldChange[] {
  if (field === GEOMETRY_COLUMN) return [['geometry', { before: geometryOf(before), after: geometryOf(after) }]];
  if (field === EXTRA_COLUMN) return extraFields(extraOf(before), extraOf(after));
  const type = table.fields.find(({ name }) => name === field)?.type ?? 'text';
  return [[field, { before: valueOfColumn(before, type), after: valueOfColumn(after, type) }]];
}

function extraFields(
  before: Readonly<Record<string, unknown>>,
  after: Readonly<Record<string, unknown>>,
): FieldChange[] {
  const names = new Set([...Object.keys(before), ...Object.keys(after)]);
  return [...names]
    .filter((name) => JSON.stringify(before[name]) !== JSON.stringify(after[name]))
    .map((name) => [name, { before: before[name] ?? null, after: after[name] ?? null }]);
}

/** An entry for what no trigger sees, in the name of the session. */
export function noteChange(
  db: Connection,
  { layer, recordId, action, version }: Pick<Change, 'layer' | 'recordId' | 'action' | 'version'>,
): void {
  db.prepare(
    'INSERT INTO crownfall_changes (step, author, at, layer, fid, action, version) SELECT step, author, at, ?, ?, ?, ? FROM crownfall_session',
  ).run(layer, recordId, action, version);
}
