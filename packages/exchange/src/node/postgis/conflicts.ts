/** Conflicts: what a person wanted, kept beside the record until somebody decides. */
import type { LayerName } from '@crownfall/survey';
import type { Conflict, Edit, StoredRecord, Writer } from '../../store/project-store.ts';
import { findRecord, geometryOfHex, hexOf } from './record-sql.ts';
import type { Query, Row } from './sql-session.ts';

type Conflicting = Exclude<Edit, { action: 'insert' }>;

export async function addConflict(
  query: Query,
  given: Conflicting,
  { author, at }: Writer,
  current: StoredRecord | null,
): Promise<Conflict> {
  const { layer, recordId } = given;
  const [row] = await query(
    'INSERT INTO crownfall.conflicts (layer, record_id, given, author, at) VALUES ($1, $2, $3, $4, $5) RETURNING conflict_id',
    [layer, recordId, JSON.stringify(editJson(given)), author, at],
  );
  const conflictId = row.conflict_id as number;
  await query("SELECT crownfall.note('conflicts', $1, 'insert', 1, NULL, NULL, NULL)", [conflictId]);
  return { conflictId, layer, recordId, given, givenBy: { author, at }, current, state: 'open' };
}

export async function conflictOf(query: Query, row: Row): Promise<Conflict> {
  const layer = row.layer as LayerName;
  const recordId = row.record_id as number;
  const conflict: Conflict = {
    conflictId: row.conflict_id as number,
    layer,
    recordId,
    given: editOf(row.given as Row),
    givenBy: { author: row.author as string, at: row.at as string },
    current: await findRecord(query, layer, recordId),
    state: row.state as Conflict['state'],
  };
  if (row.decided_by === null) return conflict;
  return { ...conflict, decidedBy: { author: row.decided_by as string, at: row.decided_at as string } };
}

export async function conflictsOf(query: Query, state?: Conflict['state']): Promise<Conflict[]> {
  const rows = await query(
    "SELECT * FROM crownfall.conflicts WHERE $1::text IS NULL OR state = $1 ORDER BY state <> 'open', conflict_id",
    [state ?? null],
  );
  const conflicts: Conflict[] = [];
  for (const row of rows) conflicts.push(await conflictOf(query, row));
  return conflicts;
}

function editJson(edit: Conflicting): object {
  if (edit.action === 'delete' || edit.geometry === undefined) return edit;
  return { ...edit, geometry: { hex: hexOf(edit.geometry) } };
}

function editOf(given: Row): Edit {
  const { geometry, ...rest } = given as unknown as Conflicting & { geometry?: { hex: string | null } };
  return (geometry === undefined ? rest : { ...rest, geometry: geometryOfHex(geometry.hex) }) as Edit;
}
