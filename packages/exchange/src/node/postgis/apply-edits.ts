/** Edits with the version that the person saw; what somebody else wrote first becomes a conflict. */
import type { LayerName } from '@crownfall/survey';
import { PLACELESS_LAYERS } from '../../store/layer-fields.ts';
import type { Edit, EditAnswer, EditOutcome, EditRequest, StoredRecord, Writer } from '../../store/project-store.ts';
import { addConflict, conflictOf } from './conflicts.ts';
import { deleteRecord, findRecord, insertRecord, replaceRecord } from './record-sql.ts';
import { keepAnswer, keptAnswer } from './requests.ts';
import type { Query, SqlSession } from './sql-session.ts';

export async function applyEdits(
  session: SqlSession,
  edits: readonly Edit[],
  request: EditRequest,
): Promise<EditAnswer> {
  const { requestId, ...writer } = request;
  const { value, step } = await session.write({ ...writer, kind: 'edit' }, async (query, ownStep) => {
    const kept = requestId === undefined ? null : await keptAnswer(query, requestId);
    if (kept !== null) return { value: kept, isStep: false };
    const outcomes: EditOutcome[] = [];
    for (const edit of edits) outcomes.push(await applyEdit(query, edit, writer));
    const isStep = outcomes.some(({ outcome }) => outcome === 'applied');
    const answer: EditAnswer = { step: isStep ? ownStep : null, outcomes, repeated: false };
    if (requestId !== undefined) await keepAnswer(query, requestId, answer);
    return { value: answer, isStep };
  });
  return value.repeated ? value : { ...value, step };
}

async function applyEdit(query: Query, edit: Edit, writer: Writer): Promise<EditOutcome> {
  if (edit.action !== 'delete') mustFit(edit);
  if (edit.action === 'insert') return applied(await insertRecord(query, edit.layer, edit));
  const current = await findRecord(query, edit.layer, edit.recordId);
  if (current?.version === edit.expectedVersion) return change(query, edit, current);
  if (current === null && !(await wasThere(query, edit.layer, edit.recordId))) {
    return { outcome: 'unknown', layer: edit.layer, recordId: edit.recordId };
  }
  return { outcome: 'conflict', conflict: await addConflict(query, edit, writer, current) };
}

function mustFit({ layer, geometry }: Exclude<Edit, { action: 'delete' }>): void {
  if (geometry === undefined || geometry.kind === 'none' || !PLACELESS_LAYERS.includes(layer)) return;
  throw new TypeError(`expected no geometry in ${layer}, got ${geometry.kind}`);
}

/** Applies an edit to the record as it stands, whatever version was seen. */
async function change(
  query: Query,
  edit: Exclude<Edit, { action: 'insert' }>,
  current: StoredRecord,
): Promise<EditOutcome> {
  const { layer, recordId } = current;
  if (edit.action === 'delete') {
    await deleteRecord(query, layer, recordId);
    return { outcome: 'applied', recordId, version: current.version + 1, record: null };
  }
  const properties = merged(current.properties, edit.properties ?? {});
  return applied(
    await replaceRecord(query, { layer, recordId, geometry: edit.geometry ?? current.geometry, properties }),
  );
}

const applied = (record: StoredRecord): EditOutcome => ({
  outcome: 'applied',
  recordId: record.recordId,
  version: record.version,
  record,
});

/** Null empties a field that is named; new fields come last. */
function merged(before: StoredRecord['properties'], changes: StoredRecord['properties']): StoredRecord['properties'] {
  const isLeft = ([name, value]: readonly [string, unknown]): boolean =>
    (value !== null && value !== undefined) || !Object.hasOwn(changes, name);
  return Object.fromEntries(Object.entries({ ...before, ...changes }).filter(isLeft));
}

async function wasThere(query: Query, layer: LayerName, recordId: number): Promise<boolean> {
  const [row] = await query('SELECT crownfall.versions_of($1, $2) AS version', [layer, recordId]);
  return (row.version as number) > 0;
}

/** Takes the edit of a conflict into the record as it stands now, or drops it. Null when there is no such open conflict. */
export async function decideConflict(
  session: SqlSession,
  conflictId: number,
  decision: 'take' | 'drop',
  writer: Writer,
): Promise<EditOutcome | null> {
  const { value } = await session.write<EditOutcome | null>({ ...writer, kind: 'edit' }, async (query) => {
    const [row] = await query(
      "SELECT * FROM crownfall.conflicts WHERE conflict_id = $1 AND state = 'open' FOR UPDATE",
      [conflictId],
    );
    if (row === undefined) return { value: null, isStep: false };
    const { given, current, layer, recordId } = await conflictOf(query, row);
    // Its record was deleted meanwhile: the edit has nothing left to change, and stays open.
    if (decision === 'take' && current === null && given.action === 'update') {
      return { value: { outcome: 'unknown', layer, recordId }, isStep: false };
    }
    const taken = decision === 'take' && current !== null && given.action !== 'insert';
    const outcome = taken ? await change(query, given, current) : null;
    const state = decision === 'take' ? 'taken' : 'dropped';
    await query('UPDATE crownfall.conflicts SET state = $2, decided_by = $3, decided_at = $4 WHERE conflict_id = $1', [
      conflictId,
      state,
      writer.author,
      writer.at,
    ]);
    await query("SELECT crownfall.note('conflicts', $1, 'update', 2, NULL, NULL, NULL)", [conflictId]);
    return { value: outcome, isStep: taken };
  });
  return value;
}
