/** Taking back steps: the records of the step become what they were, as a step of its own. */
import { LAYER_NAMES, type LayerName } from '@crownfall/survey';
import type { RecordKey, UndoOutcome, Writer } from '../../store/project-store.ts';
import { putProject } from './project-facts.ts';
import { deleteRecord, findRecord, insertRecord, type JournalState, replaceRecord, stateRecord } from './record-sql.ts';
import type { Query, Row, SqlSession } from './sql-session.ts';

/** Imports and results replace whole tables; the journal holds no states of single records for them. */
const LAST_STEP = `SELECT step FROM crownfall.steps WHERE author = $1 AND kind IN ('edit', 'redo') AND reverted_by IS NULL
  AND step < $2 ORDER BY step DESC LIMIT 1`;
const GIVEN_STEP = `SELECT step FROM crownfall.steps WHERE step = $1 AND kind IN ('edit', 'redo') AND reverted_by IS NULL`;
const LAST_UNDO = `SELECT step FROM crownfall.steps AS s WHERE author = $1 AND kind = 'undo' AND reverted_by IS NULL AND step < $2
  AND NOT EXISTS (SELECT 1 FROM crownfall.steps AS later WHERE later.author = $1 AND later.kind = 'edit'
    AND later.step > s.step AND later.step < $2) ORDER BY step DESC LIMIT 1`;

export async function undo(session: SqlSession, writer: Writer, step?: number): Promise<UndoOutcome> {
  return revert(session, writer, 'undo', (query, own) =>
    step === undefined ? query(LAST_STEP, [writer.author, own]) : query(GIVEN_STEP, [step]),
  );
}

export async function redo(session: SqlSession, writer: Writer): Promise<UndoOutcome> {
  return revert(session, writer, 'redo', (query, own) => query(LAST_UNDO, [writer.author, own]));
}

async function revert(
  session: SqlSession,
  writer: Writer,
  kind: 'undo' | 'redo',
  target: (query: Query, own: number) => Promise<readonly Row[]>,
): Promise<UndoOutcome> {
  const { value } = await session.write<UndoOutcome>({ ...writer, kind }, async (query, own) => {
    const [found] = await target(query, own);
    if (found === undefined) return { value: { outcome: 'nothing' }, isStep: false };
    const step = found.step as number;
    const entries = await query('SELECT * FROM crownfall.journal WHERE step = $1 ORDER BY change DESC', [step]);
    const reverted = entries.filter(({ layer }) => layer === 'project' || isLayer(layer));
    if (reverted.length === 0) return { value: { outcome: 'nothing' }, isStep: false };
    const written = await writtenSince(query, step, reverted);
    if (written.length > 0) return { value: { outcome: 'blocked', step, records: written }, isStep: false };
    for (const entry of reverted) await restore(query, entry);
    await query('UPDATE crownfall.steps SET reverted_by = $2 WHERE step = $1', [step, own]);
    await query('UPDATE crownfall.steps SET reverts = $2 WHERE step = $1', [own, step]);
    return { value: { outcome: 'done', step: own, reverted: step, records: keysOf(reverted) }, isStep: true };
  });
  return value;
}

const isLayer = (layer: unknown): layer is LayerName => LAYER_NAMES.includes(layer as LayerName);

/**
 * Records that somebody has written to since the step. Later steps that were taken back meanwhile do not count, nor do pairs
 * of taking back and doing again: what counts is whether a step was in force right after this one and is not now, or the
 * other way round.
 */
async function writtenSince(query: Query, step: number, entries: readonly Row[]): Promise<RecordKey[]> {
  const chains = await revertedSteps(query);
  const written: RecordKey[] = [];
  for (const { layer, recordId } of keysOf(entries)) {
    const later = await query(
      `SELECT DISTINCT step FROM crownfall.journal WHERE layer = $1 AND (record_id = $2 OR action = 'import')
       AND change > (SELECT max(change) FROM crownfall.journal WHERE step = $3 AND layer = $1 AND record_id = $2)`,
      [layer, recordId, step],
    );
    if (later.some((entry) => entry.step === null || chains.differs(entry.step as number, step))) {
      written.push({ layer, recordId });
    }
  }
  return written;
}

/** Which steps were taken back, by chains: an edit, its undoing, its redoing, … */
async function revertedSteps(query: Query): Promise<{ differs: (step: number, since: number) => boolean }> {
  const rows = await query('SELECT step, reverts FROM crownfall.steps WHERE reverts IS NOT NULL');
  const reverts = new Map(rows.map((row) => [row.step as number, row.reverts as number]));
  const revertedBy = new Map(rows.map((row) => [row.reverts as number, row.step as number]));
  const rootOf = (step: number): number => {
    const before = reverts.get(step);
    return before === undefined ? step : rootOf(before);
  };
  /** Whether an edit was in force after step `at`. */
  const inForce = (root: number, at: number): boolean => {
    if (root > at) return false;
    let force = true;
    for (let next = revertedBy.get(root); next !== undefined && next <= at; next = revertedBy.get(next)) force = !force;
    return force;
  };
  return {
    differs: (step, since) => inForce(rootOf(step), since) !== inForce(rootOf(step), Number.POSITIVE_INFINITY),
  };
}

function keysOf(entries: readonly Row[]): RecordKey[] {
  const keys = new Map<string, RecordKey>();
  for (const { layer, record_id } of entries) {
    keys.set(`${layer} ${record_id}`, { layer: layer as string, recordId: record_id as number });
  }
  return [...keys.values()];
}

async function restore(query: Query, entry: Row): Promise<void> {
  const before = entry.before as JournalState | null;
  if (entry.layer === 'project') return putProject(query, (before as JournalState).properties);
  const layer = entry.layer as LayerName;
  const recordId = entry.record_id as number;
  if (before === null) return deleteRecord(query, layer, recordId);
  const record = stateRecord(before);
  const current = await findRecord(query, layer, recordId);
  if (current === null) await insertRecord(query, layer, record, recordId);
  else await replaceRecord(query, { layer, recordId, ...record });
}
