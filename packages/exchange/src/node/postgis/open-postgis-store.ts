/** Opens a project in PostgreSQL with PostGIS, and makes its tables when there are none. */
import type { StoreOpening } from '../../store/project-store.ts';
import { Outage } from '../outage.ts';
import { migrate } from './migrations.ts';
import { PostgisStore } from './postgis-store.ts';
import { FORMAT, schemaSql } from './schema-sql.ts';
import { type Query, SqlSession } from './sql-session.ts';

export interface PostgisOptions {
  readonly readOnly?: boolean;
}

/**
 * The store at `url` (`postgres://user@host/database`), in the schema `crownfall`. An empty database gets its tables, unless it
 * is opened for reading only; tables of an earlier format are brought up to date. Throws an `Outage` when the database cannot be reached, has no PostGIS 3 that could be
 * switched on, or holds tables of a newer format.
 */
export async function openPostgisStore(url: string, { readOnly = false }: PostgisOptions = {}): Promise<StoreOpening> {
  const session = new SqlSession(url, readOnly);
  try {
    const format = await session.read(formatOf);
    if (format === null && readOnly) throw new Outage('the database holds no project', undefined);
    if (format === null) await session.define(makeTables);
    if (format !== null && format > FORMAT) {
      throw new Outage(
        `the database holds a project of format ${format}, newer than ${FORMAT}: update this program`,
        undefined,
      );
    }
    if (format !== null && format < FORMAT) await bringUpToDate(session, readOnly);
    return { store: new PostgisStore(session), findings: [] };
  } catch (error) {
    await session.close();
    throw error;
  }
}

/** Null when there is no project. */
async function formatOf(query: Query): Promise<number | null> {
  const [table] = await query("SELECT to_regclass('crownfall.format') AS name");
  if (table.name === null) return null;
  const [row] = await query('SELECT format FROM crownfall.format');
  return row.format as number;
}

async function bringUpToDate(session: SqlSession, readOnly: boolean): Promise<void> {
  if (readOnly)
    throw new Outage('the database holds a project of an earlier format: open it for writing once', undefined);
  await session.define(async (query) => migrate(query, (await formatOf(query)) ?? FORMAT));
}

async function makeTables(query: Query): Promise<void> {
  // Another process may have made them while this one waited for the lock.
  if ((await formatOf(query)) !== null) return;
  await query('CREATE EXTENSION IF NOT EXISTS postgis');
  await query(schemaSql());
}
