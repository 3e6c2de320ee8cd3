import { copyFile, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { LAYER_NAMES } from '@crownfall/survey';
import { connect } from './connection.ts';
import { CARRIED, type History, type HistoryHead } from './history-file.ts';
import { STORE_VERSION, storeVersion } from './migrations.ts';
import { openProjectStore } from './open-project-store.ts';
import { PROJECT_TABLE } from './own-triggers.ts';
import { quoted } from './sql-names.ts';
import type { Connection } from './sqlite-module.ts';

/** The history of the project in a GeoPackage file; null when nothing was written since it came in. */
export async function historyOfStore(path: string): Promise<History | null> {
  const db = await connect(path, { readOnly: true });
  try {
    if (storeVersion(db) !== STORE_VERSION) return await historyOfEarlier(path);
    return hasHistory(db) ? { head: headOf(db), lines: () => storeLines(path) } : null;
  } finally {
    db.close();
  }
}

/** Whether anything was written since the project came in. */
function hasHistory(db: Connection): boolean {
  const sql = `SELECT 1 FROM crownfall_changes WHERE action != 'import' AND NOT (layer = ? AND action = 'insert') LIMIT 1`;
  return db.prepare(sql).get(PROJECT_TABLE.name) !== undefined;
}

/** Of a file of an earlier version, which stays as it is: by way of a copy that is brought up to date. */
async function historyOfEarlier(path: string): Promise<History | null> {
  const folder = await mkdtemp(join(tmpdir(), 'crownfall-'));
  try {
    const copy = join(folder, basename(path));
    await copyFile(path, copy);
    const { store } = await openProjectStore(copy);
    await store?.close();
    const history = await historyOfStore(copy);
    if (history === null) return null;
    const lines: string[] = [];
    for await (const line of history.lines()) lines.push(line);
    return { head: history.head, lines: () => each(lines) };
  } finally {
    await rm(folder, { recursive: true });
  }
}

async function* each(lines: readonly string[]): AsyncGenerator<string> {
  yield* lines;
}

function headOf(db: Connection): HistoryHead {
  const layers = LAYER_NAMES.map((layer) => {
    const records = db
      .prepare(`SELECT fid FROM ${quoted(layer)} ORDER BY fid`)
      .pluck()
      .all() as number[];
    return [layer, { sha256: '', records }] as const;
  });
  return { history: 1, layers: Object.fromEntries(layers), numbers: numbersOf(db) };
}

async function* storeLines(path: string): AsyncGenerator<string> {
  const db = await connect(path, { readOnly: true });
  try {
    db.exec('BEGIN');
    for (const table of CARRIED) {
      for (const row of db.prepare(`SELECT * FROM ${table}`).raw().iterate() as Iterable<unknown[]>) {
        yield JSON.stringify([table, ...row.map(plain)]);
      }
    }
    const versions = db
      .prepare('SELECT layer, fid, version FROM crownfall_records WHERE version > 1 OR shape IS NULL')
      .raw();
    for (const row of versions.iterate() as Iterable<unknown[]>) yield JSON.stringify(['crownfall_records', ...row]);
  } finally {
    db.close();
  }
}

function numbersOf(db: Connection): HistoryHead['numbers'] {
  return Object.fromEntries(db.prepare('SELECT name, seq FROM sqlite_sequence').raw().all() as [string, number][]);
}

function plain(value: unknown): unknown {
  return value instanceof Uint8Array ? { hex: Buffer.from(value).toString('hex') } : value;
}
