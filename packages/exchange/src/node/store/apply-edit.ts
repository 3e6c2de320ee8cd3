import type { LayerName } from '@crownfall/survey';
import type { Edit, EditOutcome, Writer } from '../../store/project-store.ts';
import { applied, changeRecord, insertRecord } from './change-record.ts';
import { saveConflict } from './conflicts.ts';
import type { RecordReader } from './read-records.ts';
import type { Connection } from './sqlite-module.ts';

/** Applies one edit inside the caller's transaction; one that somebody else came before is kept as a conflict. */
export function applyEdit(db: Connection, reader: RecordReader, edit: Edit, writer: Writer): EditOutcome {
  if (edit.action === 'insert') return applied(reader, edit.layer, insertRecord(db, reader.table(edit.layer), edit));
  const current = reader.record(edit.layer, edit.recordId);
  if (current === null && !wasThere(db, edit.layer, edit.recordId)) {
    return { outcome: 'unknown', layer: edit.layer, recordId: edit.recordId };
  }
  if (current === null || current.version !== edit.expectedVersion) {
    return { outcome: 'conflict', conflict: saveConflict(db, edit, current, writer) };
  }
  return changeRecord(db, reader, edit, current);
}

function wasThere(db: Connection, layer: LayerName, recordId: number): boolean {
  return db.prepare('SELECT 1 FROM crownfall_records WHERE layer = ? AND fid = ?').get(layer, recordId) !== undefined;
}
