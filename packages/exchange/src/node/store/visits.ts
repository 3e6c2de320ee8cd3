import type { Visit, VisitOutcome } from '../../store/project-store.ts';
import { sameVisit } from '../../store/same-visit.ts';
import type { Connection } from './sqlite-module.ts';

interface VisitRow {
  readonly visit_id: string;
  readonly tree_id: string | null;
  readonly block_id: string | null;
  readonly visited_on: string;
  readonly visitor: string;
  readonly did: string;
  readonly note: string | null;
  readonly details: string | null;
}

/** Adds those that are not known yet, inside the caller's transaction. */
export function addVisits(db: Connection, visits: readonly Visit[]): VisitOutcome[] {
  const known = db.prepare('SELECT * FROM visits WHERE visit_id = ?');
  const insert = db.prepare(
    'INSERT INTO visits (visit_id, tree_id, block_id, visited_on, visitor, did, note, details) ' +
      'VALUES (@visit_id, @tree_id, @block_id, @visited_on, @visitor, @did, @note, @details)',
  );
  return visits.map((visit) => {
    const row = rowOf(visit);
    const stored = known.get(visit.visitId) as VisitRow | undefined;
    if (stored === undefined) insert.run(row);
    const outcome = stored === undefined ? 'added' : sameVisit(visitOf(stored), visit) ? 'known' : 'differs';
    return { visitId: visit.visitId, outcome };
  });
}

/** In the order they were added. */
export function readVisits(
  db: Connection,
  { treeId, blockId, from }: { readonly treeId?: string; readonly blockId?: string; readonly from?: string },
): Visit[] {
  const wanted = [
    treeId === undefined ? null : (['tree_id = ?', treeId] as const),
    blockId === undefined ? null : (['block_id = ?', blockId] as const),
    from === undefined ? null : (['visited_on >= ?', from] as const),
  ].filter((part) => part !== null);
  const where = wanted.map(([part]) => part).join(' AND ') || 'true';
  const rows = db.prepare(`SELECT * FROM visits WHERE ${where} ORDER BY fid`).all(...wanted.map(([, value]) => value));
  return (rows as VisitRow[]).map(visitOf);
}

function rowOf(visit: Visit): VisitRow {
  if (typeof visit.visitId !== 'string' || visit.visitId === '') throw new TypeError('expected a visitId, got none');
  return {
    visit_id: visit.visitId,
    tree_id: visit.treeId ?? null,
    block_id: visit.blockId ?? null,
    visited_on: visit.visitedOn,
    visitor: visit.visitor,
    did: visit.did,
    note: visit.note ?? null,
    details: visit.details === undefined ? null : JSON.stringify(visit.details),
  };
}

function visitOf(row: VisitRow): Visit {
  return {
    visitId: row.visit_id,
    ...(row.tree_id === null ? {} : { treeId: row.tree_id }),
    ...(row.block_id === null ? {} : { blockId: row.block_id }),
    visitedOn: row.visited_on,
    visitor: row.visitor,
    did: row.did,
    ...(row.note === null ? {} : { note: row.note }),
    ...(row.details === null ? {} : { details: JSON.parse(row.details) }),
  };
}
