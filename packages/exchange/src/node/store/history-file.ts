/**
 * What a project in a folder has no place for: journal, versions, visits, conflicts. When a GeoPackage project becomes a
 * folder they go into `history.jsonl`, one JSON array per line, and from there back into the next GeoPackage file, as long
 * as the layers are still those the history tells of.
 */
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { LAYER_NAMES, type LayerName, type ProjectInput } from '@crownfall/survey';
import { connect, orOutage } from './connection.ts';
import { setOwnTriggers } from './own-triggers.ts';
import { quoted } from './sql-names.ts';
import type { Connection } from './sqlite-module.ts';

export const HISTORY_FILE = 'history.jsonl';

/** Tables carried over whole. */
export const CARRIED = [
  'crownfall_steps',
  'crownfall_changes',
  'crownfall_change_values',
  'crownfall_conflicts',
  'crownfall_project',
  'visits',
] as const;

/** The first line: which files the history belongs to, and the numbers of their records in order. */
export interface HistoryHead {
  readonly history: 1;
  readonly layers: Partial<
    Readonly<Record<LayerName, { readonly sha256: string; readonly records: readonly number[] }>>
  >;
  /** Greatest number ever given, by table. */
  readonly numbers: Readonly<Record<string, number>>;
}

/** A history: its head, and its other lines, from a store or from a file beside a project. */
export interface History {
  readonly head: HistoryHead;
  readonly lines: () => AsyncIterable<string>;
}

/** The history beside a project in a folder; null when there is none. */
export async function historyOfFolder(folder: string): Promise<History | null> {
  const path = join(folder, HISTORY_FILE);
  if ((await stat(path).catch(() => null))?.isFile() !== true) return null;
  for await (const line of linesOf(path)) {
    const head = parsed(line) as HistoryHead | null;
    return head?.history === 1 ? { head, lines: () => afterHead(path) } : null;
  }
  return null;
}

async function* linesOf(path: string): AsyncGenerator<string> {
  yield* createInterface({ input: createReadStream(path, 'utf8'), crlfDelay: Number.POSITIVE_INFINITY });
}

async function* afterHead(path: string): AsyncGenerator<string> {
  let first = true;
  for await (const line of linesOf(path)) {
    if (!first && line !== '') yield line;
    first = false;
  }
}

/** A history as the pieces of a file; `sha256` gives the hash of the file each layer was written to just before. */
export async function* historyPieces(
  { head, lines }: History,
  sha256: (layer: LayerName) => string | undefined,
): AsyncGenerator<string> {
  const layers = Object.entries(head.layers).flatMap(([name, told]) => {
    const hash = sha256(name as LayerName);
    return hash === undefined ? [] : [[name, { ...told, sha256: hash }]];
  });
  yield `${JSON.stringify({ ...head, layers: Object.fromEntries(layers) })}\n`;
  for await (const line of lines()) yield `${line}\n`;
}

function bound(value: unknown): unknown {
  const isBlob = typeof value === 'object' && value !== null && 'hex' in value;
  return isBlob ? Buffer.from(String(value.hex), 'hex') : value;
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return null;
  }
}

/** The first layer that is not as the history knows it; null when all are. */
export function layerChangedSince({ head }: History, input: ProjectInput): LayerName | null {
  const hashes = new Set(input.sources.map(({ sha256 }) => sha256));
  const changed = LAYER_NAMES.find((name) => {
    const layer = input.layers[name];
    const told = head.layers[name];
    if (layer === undefined || told === undefined) return (layer === undefined) !== (told === undefined);
    return !hashes.has(told.sha256) || told.records.length !== layer.features.length;
  });
  return changed ?? null;
}

/** The project with its records under the numbers they had. */
export function renumbered<Input extends Pick<ProjectInput, 'layers'>>(input: Input, { head }: History): Input {
  const layers = Object.entries(input.layers).map(([name, layer]) => {
    const records = head.layers[name as LayerName]?.records ?? [];
    return [
      name,
      { ...layer, features: layer.features.map((feature, i) => ({ ...feature, row: records[i] ?? feature.row })) },
    ];
  });
  return { ...input, layers: Object.fromEntries(layers) };
}

/** Puts a history in place of the journal of a file that was just filled with its project, renumbered. */
export async function restoreHistory(path: string, { head, lines }: History): Promise<void> {
  const db = await connect(path, { readOnly: false });
  try {
    await orOutage('write', path, async () => {
      db.exec('BEGIN IMMEDIATE');
      for (const table of [...CARRIED].reverse()) emptied(db, table);
      const inserts = new Map<string, (row: unknown[]) => void>();
      for await (const line of lines()) insertRow(db, inserts, JSON.parse(line) as [string, ...unknown[]]);
      setNumbers(db, head.numbers);
      setOwnTriggers(db);
      db.exec('COMMIT');
    });
  } finally {
    db.close();
  }
}

/** So that no number is given twice, not even that of a record that is gone. */
function setNumbers(db: Connection, numbers: HistoryHead['numbers']): void {
  const set = db.prepare('UPDATE sqlite_sequence SET seq = max(seq, ?) WHERE name = ?');
  const add = db.prepare('INSERT INTO sqlite_sequence (seq, name) VALUES (?, ?)');
  const known = db.prepare("SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = ?");
  for (const [name, seq] of Object.entries(numbers)) {
    if (known.get(name) !== undefined && set.run(seq, name).changes === 0) add.run(seq, name);
  }
}

function emptied(db: Connection, table: string): void {
  const triggers = db
    .prepare("SELECT name FROM sqlite_master WHERE type = 'trigger' AND tbl_name = ?")
    .pluck()
    .all(table) as string[];
  for (const name of triggers) db.exec(`DROP TRIGGER ${quoted(name)}`);
  db.exec(`DELETE FROM ${table}`);
}

function insertRow(
  db: Connection,
  inserts: Map<string, (row: unknown[]) => void>,
  [table, ...row]: [string, ...unknown[]],
): void {
  const known = inserts.get(table) ?? insertInto(db, table, row.length);
  inserts.set(table, known);
  known(row.map(bound));
}

function insertInto(db: Connection, table: string, columns: number): (row: unknown[]) => void {
  if (table === 'crownfall_records') {
    const sql =
      'INSERT INTO crownfall_records (layer, fid, version) VALUES (?, ?, ?) ON CONFLICT (layer, fid) DO UPDATE SET version = excluded.version';
    const insert = db.prepare(sql);
    return (row) => insert.run(...row);
  }
  if (!CARRIED.some((name) => name === table)) throw new RangeError(`expected a table of a history, got ${table}`);
  const insert = db.prepare(`INSERT INTO ${table} VALUES (${Array.from({ length: columns }, () => '?').join(', ')})`);
  return (row) => insert.run(...row);
}
