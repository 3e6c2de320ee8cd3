import type { ProjectFacts } from '../../store/project-store.ts';
import type { Connection } from './sqlite-module.ts';

const NAMES = ['title', 'season', 'units', 'imagery', 'settings'] as const;

/** What the file says about its project. */
export function readFacts(db: Connection): ProjectFacts {
  const rows = db.prepare('SELECT name, value FROM crownfall_project').raw().all() as [string, string | null][];
  const facts = new Map(rows.map(([name, value]) => [name, parsed(value)]));
  const { title, season, units, imagery, settings } = Object.fromEntries(NAMES.map((name) => [name, facts.get(name)]));
  return {
    title: typeof title === 'string' ? title : '',
    season: typeof season === 'number' ? season : 0,
    units: units === 'us' ? 'us' : 'metric',
    imagery: Array.isArray(imagery) ? imagery.filter((path) => typeof path === 'string') : [],
    settings: typeof settings === 'object' && settings !== null ? (settings as ProjectFacts['settings']) : {},
  };
}

/** Writes the facts that differ; tells whether any did. */
export function writeFacts(db: Connection, facts: Partial<ProjectFacts>): boolean {
  const stored = db.prepare('SELECT value FROM crownfall_project WHERE name = ?').pluck();
  const insert = db.prepare('INSERT INTO crownfall_project (name, value) VALUES (?, ?)');
  const update = db.prepare('UPDATE crownfall_project SET value = ? WHERE name = ?');
  let changed = false;
  for (const name of NAMES) {
    if (facts[name] === undefined) continue;
    const text = JSON.stringify(facts[name]);
    const before = stored.get(name);
    if (before === text) continue;
    changed = true;
    if (before === undefined) insert.run(name, text);
    else update.run(text, name);
  }
  return changed;
}

function parsed(value: string | null): unknown {
  try {
    return value === null ? undefined : JSON.parse(value);
  } catch {
    return undefined;
  }
}
