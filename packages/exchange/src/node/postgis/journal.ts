/** The journal: what happened to records, field by field, and who last wrote each. */
import type { LayerName } from '@crownfall/survey';
import type { Blame, Change, ChangeInFull } from '../../store/project-store.ts';
import { findRecord, geometryOfHex, type JournalState } from './record-sql.ts';
import type { Query, Row } from './sql-session.ts';

const CHANGE_COLUMNS = 'change, step, kind, layer, record_id, action, version, author, at';

export async function changesSince(query: Query, since: number, limit = 1000): Promise<Change[]> {
  const rows = await query(
    `SELECT ${CHANGE_COLUMNS} FROM crownfall.journal WHERE change > $1 ORDER BY change LIMIT $2`,
    [since, limit],
  );
  return rows.map(changeOf);
}

export async function lastChange(query: Query): Promise<number> {
  const [row] = await query('SELECT coalesce(max(change), 0) AS change FROM crownfall.journal');
  return row.change as number;
}

export async function history(query: Query, layer: LayerName, recordId: number): Promise<ChangeInFull[]> {
  const rows = await query('SELECT * FROM crownfall.journal WHERE layer = $1 AND record_id = $2 ORDER BY change', [
    layer,
    recordId,
  ]);
  return rows.map(inFull);
}

export async function treeHistory(query: Query, treeId: string): Promise<ChangeInFull[]> {
  const rows = await query('SELECT * FROM crownfall.journal WHERE tree_id = $1 ORDER BY change', [treeId]);
  return rows.map(inFull);
}

/** A change with the whole record as it was before; null where there was none. */
export interface StepChange extends ChangeInFull {
  readonly was: JournalState | null;
}

/** What a step changed, the newest change first. */
export async function stepChanges(query: Query, step: number): Promise<StepChange[]> {
  const rows = await query(
    "SELECT * FROM crownfall.journal WHERE step = $1 AND action IN ('insert', 'update', 'delete') ORDER BY change DESC",
    [step],
  );
  return rows.map((row) => ({ ...inFull(row), was: row.before as JournalState | null }));
}

/** A field that came with an import has the import as its author. */
export async function blame(
  query: Query,
  layer: LayerName,
  recordId: number,
): Promise<Readonly<Record<string, Blame>>> {
  const record = await findRecord(query, layer, recordId);
  if (record === null) return {};
  const [imported] = await query(
    "SELECT * FROM crownfall.journal WHERE layer = $1 AND action = 'import' ORDER BY change DESC LIMIT 1",
    [layer],
  );
  const writers = new Map<string, ChangeInFull>();
  for (const change of await history(query, layer, recordId)) {
    for (const field of Object.keys(change.fields)) writers.set(field, change);
  }
  const values = { ...record.properties, ...(record.geometry.kind === 'none' ? {} : { geometry: record.geometry }) };
  const blamed = Object.entries(values).flatMap(([field, value]): [string, Blame][] => {
    const by = writers.get(field) ?? (imported && changeOf(imported));
    return value === null || !by ? [] : [[field, { change: by.change, author: by.author, at: by.at, value }]];
  });
  return Object.fromEntries(blamed);
}

function changeOf(row: Row): Change {
  return {
    change: row.change as number,
    step: row.step as number | null,
    kind: row.kind as Change['kind'],
    layer: row.layer as string,
    recordId: row.record_id as number,
    action: row.action as Change['action'],
    version: row.version as number,
    author: row.author as string,
    at: row.at as string,
  };
}

function inFull(row: Row): ChangeInFull {
  const before = fieldsOf(row.before as JournalState | null);
  const after = fieldsOf(row.after as JournalState | null);
  const fields: Record<string, { before: unknown; after: unknown }> = {};
  for (const name of new Set([...before.keys(), ...after.keys()])) {
    const [was, is] = [before.get(name) ?? NOTHING, after.get(name) ?? NOTHING];
    if (was.text !== is.text) fields[name] = { before: was.value, after: is.value };
  }
  return { ...changeOf(row), fields };
}

interface FieldState {
  readonly value: unknown;
  /** What two states are compared by. */
  readonly text: string;
}

/** An empty field and an absent one are the same to the reader of a journal. */
const NOTHING: FieldState = { value: null, text: 'null' };

function fieldsOf(state: JournalState | null): Map<string, FieldState> {
  if (state === null) return new Map();
  const fields = new Map<string, FieldState>();
  if (state.geometry !== null) fields.set('geometry', { value: geometryOfHex(state.geometry), text: state.geometry });
  for (const [name, value] of Object.entries(state.properties))
    fields.set(name, { value, text: JSON.stringify(value) });
  return fields;
}
