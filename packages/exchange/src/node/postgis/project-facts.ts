/** What the project is called, its season, units and settings: one row, journaled like a record. */
import type { ProjectFacts, Properties } from '../../store/project-store.ts';
import type { Query } from './sql-session.ts';

export async function projectFacts(query: Query): Promise<ProjectFacts> {
  const [row] = await query('SELECT facts FROM crownfall.project');
  return row.facts as ProjectFacts;
}

/** Puts these facts in place of those of the same name; false when nothing changes. */
export async function changeProject(query: Query, facts: Partial<ProjectFacts>): Promise<boolean> {
  const before = (await projectFacts(query)) as unknown as Properties;
  const changed = Object.entries(facts).filter(
    ([name, value]) => JSON.stringify(value) !== JSON.stringify(before[name]),
  );
  if (changed.length === 0) return false;
  await putProject(query, Object.fromEntries(changed));
  return true;
}

/** Writes facts and their entry in the journal. */
export async function putProject(query: Query, facts: Properties): Promise<void> {
  const before = (await projectFacts(query)) as unknown as Properties;
  const told = (from: Properties): string =>
    JSON.stringify({
      geometry: null,
      properties: Object.fromEntries(Object.keys(facts).map((name) => [name, from[name]])),
    });
  const [row] = await query('UPDATE crownfall.project SET facts = $1, version = version + 1 RETURNING version', [
    JSON.stringify({ ...before, ...facts }),
  ]);
  await query("SELECT crownfall.note('project', 0, 'update', $1, NULL, $2::json, $3::json)", [
    row.version,
    told(before),
    told(facts),
  ]);
}
