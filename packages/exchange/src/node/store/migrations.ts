/**
 * The store's own tables, version by version. A step, once released, is never changed: files of that version exist.
 * Tables are not listed in `gpkg_contents`, so that other programs show the records and not the bookkeeping.
 */
import { LAYER_NAMES } from '@crownfall/survey';
import type { Database } from 'better-sqlite3';
import { GEOPACKAGE_TABLES } from './geopackage-tables.ts';
import { createLayerTables } from './layer-table.ts';

interface Migration {
  readonly to: number;
  readonly does: string;
  readonly run: (db: Database) => void;
}

const FIRST = `
CREATE TABLE crownfall_schema (version INTEGER NOT NULL);
INSERT INTO crownfall_schema VALUES (1);

-- Layers the project was given, as features or as a table; the usual order of their fields.
CREATE TABLE crownfall_layers (layer TEXT NOT NULL PRIMARY KEY, given BOOLEAN NOT NULL, kind TEXT NOT NULL, shape INTEGER);
CREATE TABLE crownfall_shapes (shape INTEGER PRIMARY KEY NOT NULL, fields TEXT NOT NULL UNIQUE);
-- Only records that were written to since they came in (version), or whose fields stand in another order (shape).
CREATE TABLE crownfall_records (
  layer TEXT NOT NULL, fid INTEGER NOT NULL, version INTEGER NOT NULL, shape INTEGER, PRIMARY KEY (layer, fid)) WITHOUT ROWID;

CREATE TABLE crownfall_project (fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, name TEXT NOT NULL UNIQUE, value TEXT);

CREATE TABLE crownfall_steps (
  step INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, kind TEXT NOT NULL, author TEXT NOT NULL, at DATETIME NOT NULL,
  reverts INTEGER);
CREATE INDEX crownfall_steps_author ON crownfall_steps (author, step);
CREATE INDEX crownfall_steps_reverts ON crownfall_steps (reverts) WHERE reverts IS NOT NULL;

CREATE TABLE crownfall_changes (
  change INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, step INTEGER, author TEXT NOT NULL, at DATETIME NOT NULL,
  layer TEXT NOT NULL, fid INTEGER NOT NULL, action TEXT NOT NULL);
CREATE INDEX crownfall_changes_record ON crownfall_changes (layer, fid, change);
CREATE INDEX crownfall_changes_step ON crownfall_changes (step) WHERE step IS NOT NULL;
-- Columns of type BLOB keep every value exactly as it is.
CREATE TABLE crownfall_change_values (
  change INTEGER NOT NULL, field TEXT NOT NULL, before BLOB, after BLOB, PRIMARY KEY (change, field)) WITHOUT ROWID;

-- Who writes: one row while this program's own transaction runs, never one at rest.
CREATE TABLE crownfall_session (
  step INTEGER NOT NULL, author TEXT NOT NULL, at DATETIME NOT NULL, silent BOOLEAN NOT NULL, reverting BOOLEAN NOT NULL);
CREATE TABLE crownfall_naming (naming BOOLEAN NOT NULL);
CREATE TABLE crownfall_replaced (layer TEXT NOT NULL, fid INTEGER NOT NULL, field TEXT NOT NULL, before BLOB);

CREATE TABLE visits (
  fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, visit_id TEXT NOT NULL UNIQUE, tree_id TEXT, block_id TEXT,
  visited_on TEXT NOT NULL, visitor TEXT NOT NULL, did TEXT NOT NULL, note TEXT, details TEXT);
CREATE INDEX crownfall_visits_tree ON visits (tree_id);
CREATE INDEX crownfall_visits_block ON visits (block_id);
INSERT INTO gpkg_contents (table_name, data_type, identifier, description)
  VALUES ('visits', 'attributes', 'visits', 'Visits to trees and blocks; added, never changed');
`;

const SECOND = `
ALTER TABLE crownfall_steps ADD COLUMN request TEXT;
ALTER TABLE crownfall_steps ADD COLUMN answer TEXT;
CREATE UNIQUE INDEX crownfall_steps_request ON crownfall_steps (request) WHERE request IS NOT NULL;

CREATE TABLE crownfall_conflicts (
  conflict INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, layer TEXT NOT NULL, fid INTEGER NOT NULL, given TEXT NOT NULL,
  geometry BLOB, author TEXT NOT NULL, at DATETIME NOT NULL, state TEXT NOT NULL DEFAULT 'open', decided_by TEXT,
  decided_at DATETIME);

-- Journals of version 1 did not say which version a change made: the first writing of a record that came in was 2, of one
-- that was inserted here 1.
DROP TRIGGER IF EXISTS crownfall_changes_kept;
ALTER TABLE crownfall_changes ADD COLUMN version INTEGER NOT NULL DEFAULT 1;
UPDATE crownfall_changes SET version = counted.version FROM (
  SELECT change, row_number() OVER record + (first_value(action) OVER record != 'insert') AS version
  FROM crownfall_changes WHERE fid != 0 WINDOW record AS (PARTITION BY layer, fid ORDER BY change)) AS counted
WHERE counted.change = crownfall_changes.change;
`;

const MIGRATIONS: readonly Migration[] = [
  {
    to: 1,
    does: 'makes the tables of a new project',
    run(db) {
      db.exec(GEOPACKAGE_TABLES);
      createLayerTables(db);
      db.exec(FIRST);
      const layer = db.prepare("INSERT INTO crownfall_layers VALUES (?, 0, 'features', NULL)");
      for (const name of LAYER_NAMES) layer.run(name);
    },
  },
  {
    to: 2,
    does: 'keeps conflicts, answers of repeated requests, and the version each change made',
    run: (db) => db.exec(SECOND),
  },
];

/** The version this program writes. */
export const STORE_VERSION = MIGRATIONS[MIGRATIONS.length - 1].to;

/** Version of a file's store; null when it holds none. */
export function storeVersion(db: Database): number | null {
  const there = db.prepare("SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = 'crownfall_schema'").get();
  if (there === undefined) return null;
  const version = db.prepare('SELECT max(version) FROM crownfall_schema').pluck().get();
  return typeof version === 'number' ? version : null;
}

/** Runs the steps that lead from a version (0: no tables yet) to another; the caller holds the transaction. */
export function migrate(db: Database, from: number, to: number = STORE_VERSION): void {
  for (const step of MIGRATIONS) {
    if (step.to <= from || step.to > to) continue;
    step.run(db);
    db.prepare('UPDATE crownfall_schema SET version = ?').run(step.to);
  }
}
