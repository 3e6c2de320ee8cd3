/** Visits: added once under the client's id, never changed. */
import type { Visit, VisitOutcome, Writer } from '../../store/project-store.ts';
import { sameVisit } from '../../store/same-visit.ts';
import type { Query, Row } from './sql-session.ts';

export async function addVisits(query: Query, visits: readonly Visit[], writer: Writer): Promise<VisitOutcome[]> {
  const outcomes: VisitOutcome[] = [];
  for (const visit of visits) outcomes.push({ visitId: visit.visitId, outcome: await addVisit(query, visit, writer) });
  return outcomes;
}

async function addVisit(query: Query, visit: Visit, { author, at }: Writer): Promise<VisitOutcome['outcome']> {
  const { visitId, treeId, blockId, visitedOn, visitor, did, note, details } = visit;
  const [known] = await query('SELECT * FROM crownfall.visits WHERE visit_id = $1', [visitId]);
  if (known !== undefined) return sameVisit(visitOf(known), visit) ? 'known' : 'differs';
  const [row] = await query(
    `INSERT INTO crownfall.visits (visit_id, tree_id, block_id, visited_on, visitor, did, note, details, author, at)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10) RETURNING number`,
    [
      visitId,
      treeId ?? null,
      blockId ?? null,
      visitedOn,
      visitor,
      did,
      note ?? null,
      details === undefined ? null : JSON.stringify(details),
      author,
      at,
    ],
  );
  await query("SELECT crownfall.note('visits', $1, 'insert', 1, NULL, NULL, NULL)", [row.number]);
  return 'added';
}

/** In the order they were added. */
export async function findVisits(
  query: Query,
  { treeId, blockId, from }: { readonly treeId?: string; readonly blockId?: string; readonly from?: string },
): Promise<Visit[]> {
  const rows = await query(
    `SELECT * FROM crownfall.visits WHERE ($1::text IS NULL OR tree_id = $1) AND ($2::text IS NULL OR block_id = $2)
     AND ($3::text IS NULL OR visited_on >= $3) ORDER BY number`,
    [treeId ?? null, blockId ?? null, from ?? null],
  );
  return rows.map(visitOf);
}

function visitOf(row: Row): Visit {
  const optional = { treeId: row.tree_id, blockId: row.block_id, note: row.note, details: row.details };
  const given = Object.entries(optional).filter(([, value]) => value !== null);
  const { visit_id: visitId, visited_on: visitedOn, visitor, did } = row as Record<string, string>;
  return { visitId, visitedOn, visitor, did, ...Object.fromEntries(given) };
}
