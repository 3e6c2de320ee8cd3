/**
 * Undoing reads the journal backwards: what was inserted is deleted, what was deleted comes back under its number, what
 * was changed gets its earlier values. It is itself journaled, so that it can be undone. It never overwrites what somebody
 * has written since: every field must still hold what the step left there.
 */
import type { RecordKey, UndoOutcome } from '../../store/project-store.ts';
import { PROJECT_TABLE } from './own-triggers.ts';
import { quoted } from './sql-names.ts';
import type { Connection } from './sqlite-module.ts';
import type { StepResult } from './store-file.ts';

/** The author's last step that was not taken back; null when there is none. */
export function lastStepOf(db: Connection, author: string): number | null {
  const sql =
    "SELECT max(step) FROM crownfall_steps s WHERE author = ? AND kind IN ('edit', 'redo') " +
    'AND NOT EXISTS (SELECT 1 FROM crownfall_steps other WHERE other.reverts = s.step)';
  return db.prepare(sql).pluck().get(author) as number | null;
}

/** The author's last undoing that was not taken back and has no edit after it. */
export function lastUndoingOf(db: Connection, author: string): number | null {
  const sql =
    "SELECT max(step) FROM crownfall_steps s WHERE author = ? AND kind = 'undo' " +
    'AND NOT EXISTS (SELECT 1 FROM crownfall_steps other WHERE other.reverts = s.step) ' +
    "AND NOT EXISTS (SELECT 1 FROM crownfall_steps later WHERE later.author = s.author AND later.kind = 'edit' AND later.step > s.step)";
  return db.prepare(sql).pluck().get(author) as number | null;
}

/** Whether a step can be undone: an edit, a redoing or an undoing that nothing has taken back. */
export function isUndoable(db: Connection, step: number): boolean {
  const sql =
    "SELECT 1 FROM crownfall_steps s WHERE step = ? AND kind IN ('edit', 'redo') " +
    'AND NOT EXISTS (SELECT 1 FROM crownfall_steps other WHERE other.reverts = s.step)';
  return db.prepare(sql).get(step) !== undefined;
}

interface Change {
  readonly change: number;
  readonly layer: string;
  readonly fid: number;
  readonly action: 'insert' | 'update' | 'delete';
  readonly values: readonly { readonly field: string; readonly before: unknown; readonly after: unknown }[];
}

/** Takes a step back inside the caller's transaction, all of it or nothing. */
export function revertStep(db: Connection, step: number, newStep: number): StepResult<UndoOutcome> {
  const changes = changesOf(db, step);
  const blocked = blockedRecords(db, changes);
  if (blocked.length > 0) return { value: { outcome: 'blocked', step, records: blocked }, isStep: false };
  for (const change of changes) revert(db, change);
  const records = recordsOf(changes);
  return { value: { outcome: 'done', step: newStep, reverted: step, records }, isStep: true };
}

/** Newest first. */
function changesOf(db: Connection, step: number): readonly Change[] {
  const rows = db
    .prepare(
      "SELECT * FROM crownfall_changes WHERE step = ? AND action IN ('insert', 'update', 'delete') AND layer != 'conflicts' ORDER BY change DESC",
    )
    .all(step) as Omit<Change, 'values'>[];
  const values = db.prepare('SELECT field, before, after FROM crownfall_change_values WHERE change = ?');
  return rows.map((row) => ({ ...row, values: values.all(row.change) as Change['values'] }));
}

function recordsOf(changes: readonly Change[]): RecordKey[] {
  const keys = new Map<string, RecordKey>();
  for (const { layer, fid } of changes) {
    const name = layer === PROJECT_TABLE.name ? 'project' : layer;
    keys.set(`${name} ${fid}`, { layer: name, recordId: fid });
  }
  return [...keys.values()];
}

/** What the step left behind, per record: its last value of each field it touched, and whether the record is there. */
function blockedRecords(db: Connection, changes: readonly Change[]): RecordKey[] {
  const seen = new Map<string, { change: Change; fields: Map<string, unknown> }>();
  for (const change of changes) {
    const key = `${change.layer} ${change.fid}`;
    const left = seen.get(key) ?? { change, fields: new Map<string, unknown>() };
    for (const { field, after } of change.values) if (!left.fields.has(field)) left.fields.set(field, after);
    seen.set(key, left);
  }
  const blocked = [...seen.values()].filter(({ change, fields }) => !stillHolds(db, change, fields));
  return recordsOf(blocked.map(({ change }) => change));
}

function stillHolds(db: Connection, { layer, fid, action }: Change, fields: ReadonlyMap<string, unknown>): boolean {
  const row = db.prepare(`SELECT * FROM ${quoted(layer)} WHERE fid = ?`).get(fid) as
    | Record<string, unknown>
    | undefined;
  if (action === 'delete') return row === undefined;
  if (row === undefined) return false;
  // Taking back an insertion deletes the record: nobody may have added anything to it.
  const checked = action === 'insert' ? Object.keys(row).filter((name) => name !== 'fid') : [...fields.keys()];
  return checked.every((name) => same(row[name] ?? null, fields.get(name) ?? null));
}

function same(a: unknown, b: unknown): boolean {
  return a instanceof Uint8Array && b instanceof Uint8Array ? Buffer.compare(a, b) === 0 : Object.is(a, b);
}

function revert(db: Connection, { layer, fid, action, values }: Change): void {
  const table = quoted(layer);
  if (action === 'insert') {
    db.prepare(`DELETE FROM ${table} WHERE fid = ?`).run(fid);
    return;
  }
  const names = values.map(({ field }) => quoted(field));
  const before = values.map((value) => value.before);
  if (action === 'update' && values.length > 0) {
    db.prepare(`UPDATE ${table} SET ${names.map((name) => `${name} = ?`).join(', ')} WHERE fid = ?`).run(
      ...before,
      fid,
    );
  } else if (action === 'delete') {
    const columns = ['fid', ...names];
    db.prepare(`INSERT INTO ${table} (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`).run(
      fid,
      ...before,
    );
  }
}
