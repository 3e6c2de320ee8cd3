import type { Database } from 'better-sqlite3';
import type { LayerTable } from './layer-table.ts';
import { setTriggers, type Trigger } from './layer-triggers.ts';
import { quoted } from './sql-names.ts';

/** The project's own facts, journaled like records. */
export const PROJECT_TABLE: LayerTable = {
  name: 'crownfall_project',
  fields: [
    { name: 'name', type: 'text' },
    { name: 'value', type: 'text' },
  ],
  geometry: null,
  extra: false,
};

/** Tables that grow and never change, whoever writes. */
const APPENDED = ['crownfall_changes', 'crownfall_change_values', 'visits'] as const;

const NOW = "strftime('%Y-%m-%dT%H:%M:%fZ', 'now')";

/** The triggers of the store's own tables; tells whether any had to be made anew. */
export function setOwnTriggers(db: Database): boolean {
  const stored = db.prepare("SELECT sql FROM sqlite_master WHERE type = 'trigger' AND name = ?").pluck();
  const wrong = ownTriggers().filter(({ name, sql }) => stored.get(name) !== sql);
  for (const { name, sql } of wrong) db.exec(`DROP TRIGGER IF EXISTS ${quoted(name)}; ${sql}`);
  return setTriggers(db, PROJECT_TABLE) || wrong.length > 0;
}

function ownTriggers(): readonly Trigger[] {
  const kept = APPENDED.flatMap((table) => [
    refusal(`${table}_kept`, `BEFORE UPDATE ON ${table}`, `${table} is added to, never changed`),
    refusal(`${table}_stays`, `BEFORE DELETE ON ${table}`, `${table} is added to, never shortened`),
  ]);
  return [...kept, visitOnce(), visitJournaled()];
}

function refusal(name: string, when: string, words: string): Trigger {
  return { name, sql: `CREATE TRIGGER ${quoted(name)} ${when} BEGIN SELECT RAISE(ABORT, '${words}'); END` };
}

/** INSERT OR REPLACE would change a visit by deleting it first. */
function visitOnce(): Trigger {
  const name = 'visits_once';
  const known = 'EXISTS (SELECT 1 FROM visits WHERE visit_id = NEW.visit_id OR fid = NEW.fid)';
  return refusal(name, `BEFORE INSERT ON visits WHEN ${known}`, 'this visit is known');
}

function visitJournaled(): Trigger {
  const session = (column: string) => `(SELECT ${column} FROM crownfall_session)`;
  const sql =
    'CREATE TRIGGER "visits_journaled" AFTER INSERT ON visits BEGIN ' +
    'INSERT INTO crownfall_changes (step, author, at, layer, fid, action, version) VALUES ' +
    `(${session('step')}, coalesce(${session('author')}, 'outside'), coalesce(${session('at')}, ${NOW}), 'visits', NEW.fid, 'insert', 1); END`;
  return { name: 'visits_journaled', sql };
}
