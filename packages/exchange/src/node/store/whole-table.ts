import type { LayerName } from '@crownfall/survey';
import type { StoredRecord } from '../../store/project-store.ts';
import { connect, orOutage } from './connection.ts';
import { type OnUnreadable, RecordReader } from './read-records.ts';

const PORTION = 2000;

/** A whole layer as it stood at one moment, on a connection of its own, so that others go on writing meanwhile. */
export async function* wholeTable(
  path: string,
  layer: LayerName,
  onUnreadable?: OnUnreadable,
): AsyncGenerator<readonly StoredRecord[]> {
  const db = await connect(path, { readOnly: true });
  try {
    db.exec('BEGIN');
    const reader = new RecordReader(db, onUnreadable);
    let after: number | null = 0;
    while (after !== null) {
      const from: number = after;
      const page = await orOutage('read', path, () => reader.page(layer, { after: from, limit: PORTION }));
      if (page.records.length > 0) yield page.records;
      after = page.next;
    }
  } finally {
    db.close();
  }
}
