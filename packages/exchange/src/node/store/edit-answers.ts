/** What a request was answered, short enough to keep, so that the same request coming again is answered the same. */
import type { LayerName } from '@crownfall/survey';
import type { Edit, EditAnswer, EditOutcome } from '../../store/project-store.ts';
import { readConflict } from './conflicts.ts';
import type { RecordReader } from './read-records.ts';
import type { Connection } from './sqlite-module.ts';

/** Layer, outcome, number of the record (of the conflict), version. */
type ShortOutcome = readonly [layer: LayerName, outcome: EditOutcome['outcome'], number: number, version: number];

export function shortAnswer(edits: readonly Edit[], outcomes: readonly EditOutcome[]): readonly ShortOutcome[] {
  return outcomes.map((outcome, i) => {
    const { layer } = edits[i];
    if (outcome.outcome === 'applied') return [layer, outcome.outcome, outcome.recordId, outcome.version];
    if (outcome.outcome === 'conflict') return [layer, outcome.outcome, outcome.conflict.conflictId, 0];
    return [layer, outcome.outcome, outcome.recordId, 0];
  });
}

/** The answer to a request that was answered before, with the records as they stand now; null to a new one. */
export function earlierAnswer(db: Connection, reader: RecordReader, requestId: string | undefined): EditAnswer | null {
  const row = db.prepare('SELECT step, kind, answer FROM crownfall_steps WHERE request = ?').get(requestId ?? null) as
    | { readonly step: number; readonly kind: string; readonly answer: string }
    | undefined;
  if (row === undefined) return null;
  const outcomes = (JSON.parse(row.answer) as readonly ShortOutcome[]).map((short) => inFull(db, reader, short));
  return { step: row.kind === 'edit' ? row.step : null, outcomes, repeated: true };
}

function inFull(db: Connection, reader: RecordReader, [layer, outcome, number, version]: ShortOutcome): EditOutcome {
  const conflict = outcome === 'conflict' ? readConflict(db, reader, number) : null;
  if (conflict) return { outcome: 'conflict', conflict };
  if (outcome === 'applied') return { outcome, recordId: number, version, record: reader.record(layer, number) };
  return { outcome: 'unknown', layer, recordId: number };
}
