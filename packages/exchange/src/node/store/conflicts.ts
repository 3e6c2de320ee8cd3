import type { LayerName } from '@crownfall/survey';
import { geometryBlob, readGeometryBlob } from '../../store/geopackage/geometry-blob.ts';
import type { Conflict, Edit, EditOutcome, StoredRecord, Writer } from '../../store/project-store.ts';
import { changeRecord } from './change-record.ts';
import { noteChange } from './journal.ts';
import type { RecordReader } from './read-records.ts';
import type { Connection } from './sqlite-module.ts';

interface ConflictRow {
  readonly conflict: number;
  readonly layer: LayerName;
  readonly fid: number;
  readonly given: string;
  readonly geometry: Uint8Array | null;
  readonly author: string;
  readonly at: string;
  readonly state: Conflict['state'];
  readonly decided_by: string | null;
  readonly decided_at: string | null;
}

type Contested = Exclude<Edit, { action: 'insert' }>;

/** Keeps an edit that came too late, until a person decides. */
export function saveConflict(
  db: Connection,
  given: Contested,
  current: StoredRecord | null,
  { author, at }: Writer,
): Conflict {
  const { geometry, ...rest } = { geometry: undefined, ...given };
  const blob = geometry === undefined ? null : geometryBlob(geometry);
  // An edit that takes the geometry away is told from one that leaves it by this key.
  const text = JSON.stringify(geometry === undefined ? rest : { ...rest, geometry: null });
  const { lastInsertRowid } = db
    .prepare('INSERT INTO crownfall_conflicts (layer, fid, given, geometry, author, at) VALUES (?, ?, ?, ?, ?, ?)')
    .run(given.layer, given.recordId, text, blob, author, at);
  noteChange(db, { layer: 'conflicts', recordId: Number(lastInsertRowid), action: 'insert', version: 1 });
  const key = { conflictId: Number(lastInsertRowid), layer: given.layer, recordId: given.recordId };
  return { ...key, given, givenBy: { author, at }, current, state: 'open' };
}

export function readConflicts(db: Connection, reader: RecordReader, state: Conflict['state'] | undefined): Conflict[] {
  const sql = "SELECT * FROM crownfall_conflicts WHERE ? IS NULL OR state = ? ORDER BY state != 'open', conflict";
  const rows = db.prepare(sql).all(state ?? null, state ?? null) as ConflictRow[];
  return rows.map((row) => conflictOf(row, reader));
}

export function readConflict(db: Connection, reader: RecordReader, conflictId: number): Conflict | null {
  const row = db.prepare('SELECT * FROM crownfall_conflicts WHERE conflict = ?').get(conflictId) as
    | ConflictRow
    | undefined;
  return row === undefined ? null : conflictOf(row, reader);
}

function conflictOf(row: ConflictRow, reader: RecordReader): Conflict {
  return {
    conflictId: row.conflict,
    layer: row.layer,
    recordId: row.fid,
    given: givenEdit(row),
    givenBy: { author: row.author, at: row.at },
    current: reader.record(row.layer, row.fid),
    state: row.state,
    ...(row.decided_by === null || row.decided_at === null
      ? {}
      : { decidedBy: { author: row.decided_by, at: row.decided_at } }),
  };
}

function givenEdit({ given, geometry }: ConflictRow): Contested {
  const edit = JSON.parse(given) as Contested;
  if (!('geometry' in edit)) return edit;
  return { ...edit, geometry: geometry === null ? { kind: 'none' } : readGeometryBlob(geometry).geometry };
}

/** Decides an open conflict inside the caller's transaction; null when it was decided before, or dropped now. */
export function decide(
  db: Connection,
  reader: RecordReader,
  conflict: Conflict,
  decision: 'take' | 'drop',
  { author, at }: Writer,
): EditOutcome | null {
  if (conflict.state !== 'open') return null;
  const { current, given } = conflict;
  // Its record was deleted meanwhile: the edit has nothing left to change, and stays open.
  if (decision === 'take' && current === null && given.action === 'update') {
    return { outcome: 'unknown', layer: conflict.layer, recordId: conflict.recordId };
  }
  const state: Conflict['state'] = decision === 'take' ? 'taken' : 'dropped';
  db.prepare('UPDATE crownfall_conflicts SET state = ?, decided_by = ?, decided_at = ? WHERE conflict = ?').run(
    state,
    author,
    at,
    conflict.conflictId,
  );
  noteChange(db, { layer: 'conflicts', recordId: conflict.conflictId, action: 'update', version: 2 });
  if (decision === 'drop' || current === null || given.action === 'insert') return null;
  return changeRecord(db, reader, given, current);
}
