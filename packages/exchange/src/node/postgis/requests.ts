/** Answers kept by the name the client gave its request, for when it comes again. */
import type { LayerName } from '@crownfall/survey';
import type { EditAnswer, EditOutcome, Properties } from '../../store/project-store.ts';
import { conflictOf } from './conflicts.ts';
import { geometryOfHex, hexOf } from './record-sql.ts';
import type { Query } from './sql-session.ts';

/** As `EditOutcome`, geometries as hexadecimal WKB, conflicts by number: they are told as they stand now. */
type KeptOutcome =
  | {
      readonly outcome: 'applied';
      readonly recordId: number;
      readonly version: number;
      readonly record: KeptRecord | null;
    }
  | { readonly outcome: 'conflict'; readonly conflictId: number }
  | Extract<EditOutcome, { outcome: 'unknown' }>;

interface KeptRecord {
  readonly layer: LayerName;
  readonly recordId: number;
  readonly version: number;
  readonly geometry: string | null;
  readonly properties: Properties;
}

export async function keepAnswer(query: Query, requestId: string, { step, outcomes }: EditAnswer): Promise<void> {
  const answer = JSON.stringify({ step, outcomes: outcomes.map(kept) });
  await query('INSERT INTO crownfall.requests VALUES ($1, $2)', [requestId, answer]);
}

/** Null when this request was never answered. */
export async function keptAnswer(query: Query, requestId: string): Promise<EditAnswer | null> {
  const [row] = await query('SELECT answer FROM crownfall.requests WHERE request_id = $1', [requestId]);
  if (row === undefined) return null;
  const { step, outcomes } = row.answer as { step: number | null; outcomes: readonly KeptOutcome[] };
  const told: EditOutcome[] = [];
  for (const outcome of outcomes) told.push(await toldAgain(query, outcome));
  return { step, outcomes: told, repeated: true };
}

function kept(outcome: EditOutcome): KeptOutcome {
  if (outcome.outcome === 'unknown') return outcome;
  if (outcome.outcome === 'conflict') return { outcome: 'conflict', conflictId: outcome.conflict.conflictId };
  const { record } = outcome;
  return { ...outcome, record: record && { ...record, geometry: hexOf(record.geometry) } };
}

async function toldAgain(query: Query, outcome: KeptOutcome): Promise<EditOutcome> {
  if (outcome.outcome === 'unknown') return outcome;
  if (outcome.outcome === 'applied') {
    const { record } = outcome;
    return { ...outcome, record: record && { ...record, geometry: geometryOfHex(record.geometry) } };
  }
  const [row] = await query('SELECT * FROM crownfall.conflicts WHERE conflict_id = $1', [outcome.conflictId]);
  return { outcome: 'conflict', conflict: await conflictOf(query, row) };
}
