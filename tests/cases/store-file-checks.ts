/** Checks of a project file from outside the store: plain SQL on the file as it lies there. */
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import type BetterSqlite3 from 'better-sqlite3';
import { expect } from 'vitest';

// The library belongs to the room that uses it, not to the tests.
const Sqlite: typeof BetterSqlite3 = createRequire(
  resolve(import.meta.dirname, '../../packages/exchange/package.json'),
)('better-sqlite3');

const LAYERS = [
  'crowns',
  'pavement',
  'blocks',
  'ratings',
  'quadrats',
  'complaints',
  'bloom',
  'water',
  'sites',
  'streets',
];

/** A plain connection, without the functions and habits of the store. */
export function plainFile(file: string, readonly = true): BetterSqlite3.Database {
  return new Sqlite(file, { readonly });
}

/** SQLite's own checks, those of the R-tree, and that nobody's session was left behind. */
export function checkedFile(file: string): void {
  const db = plainFile(file);
  try {
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(db.pragma('foreign_key_check')).toEqual([]);
    for (const table of ['crownfall_session', 'crownfall_naming'])
      expect(db.prepare(`SELECT count(*) FROM ${table}`).pluck().get()).toBe(0);
    for (const rtree of db
      .prepare("SELECT name FROM sqlite_master WHERE sql LIKE 'CREATE VIRTUAL TABLE%rtree%'")
      .pluck()
      .all()) {
      expect(db.prepare('SELECT rtreecheck(?)').pluck().get(rtree)).toBe('ok');
    }
    for (const layer of LAYERS) {
      if (db.prepare('SELECT 1 FROM gpkg_geometry_columns WHERE table_name = ?').get(layer) === undefined) continue;
      const indexed = db.prepare(`SELECT count(*) FROM rtree_${layer}_geom`).pluck().get();
      const apart = `SELECT count(*) FROM ${layer} WHERE geom NOTNULL AND fid NOT IN (SELECT id FROM rtree_${layer}_geom)`;
      expect(db.prepare(apart).pluck().get()).toBe(0);
      expect(indexed).toBe(db.prepare(`SELECT count(*) FROM ${layer} WHERE geom NOTNULL`).pluck().get());
    }
  } finally {
    db.close();
  }
}

interface Value {
  readonly change: number;
  readonly layer: string;
  readonly fid: number;
  readonly action: string;
  readonly version: number;
  readonly field: string | null;
  readonly after: unknown;
}

/**
 * Replays the journal of records that were made in the store and compares every field of every one with its table: what
 * the journal says last is what is there, and records it deleted are gone; versions count without gap.
 */
export function journalAgrees(file: string): void {
  const db = plainFile(file);
  try {
    const sql =
      'SELECT c.change, c.layer, c.fid, c.action, c.version, v.field, v.after FROM crownfall_changes c ' +
      "LEFT JOIN crownfall_change_values v USING (change) WHERE c.action IN ('insert', 'update', 'delete') ORDER BY c.change";
    const records = new Map<
      string,
      { there: boolean; change: number; version: number; fields: Map<string, unknown> }
    >();
    for (const { change, layer, fid, action, version, field, after } of db.prepare(sql).iterate() as Iterable<Value>) {
      if (!LAYERS.includes(layer)) continue;
      const key = `${layer} ${fid}`;
      const record = records.get(key) ?? {
        there: false,
        change: 0,
        version: firstVersion(action) - 1,
        fields: new Map(),
      };
      if (change !== record.change) expect(version).toBe(record.version + 1);
      record.change = change;
      record.version = version;
      record.there = action !== 'delete';
      if (field !== null) record.fields.set(field, after);
      records.set(key, record);
    }
    for (const [key, { there, version, fields }] of records) {
      const [layer, fid] = key.split(' ');
      const row = db.prepare(`SELECT * FROM ${layer} WHERE fid = ?`).get(fid) as Record<string, unknown> | undefined;
      expect(row !== undefined).toBe(there);
      const counted = db
        .prepare('SELECT version FROM crownfall_records WHERE layer = ? AND fid = ?')
        .pluck()
        .get(layer, fid);
      expect(counted).toBe(version);
      for (const [field, after] of there ? fields : [])
        expect([key, field, row?.[field] ?? null]).toEqual([key, field, after]);
    }
    // And nothing is in the tables that neither an import nor the journal brought there.
    for (const layer of LAYERS) {
      const imported =
        db.prepare("SELECT 1 FROM crownfall_changes WHERE layer = ? AND action = 'import'").get(layer) !== undefined;
      if (imported) continue;
      const there = [...records].filter(([key, { there }]) => there && key.startsWith(`${layer} `)).length;
      expect(db.prepare(`SELECT count(*) FROM ${layer}`).pluck().get()).toBe(there);
    }
  } finally {
    db.close();
  }
}

/** What came in by an import was of version 1 before its first change. */
function firstVersion(action: string): number {
  return action === 'insert' ? 1 : 2;
}
