/** Brings the tables of earlier formats up to date, in one transaction with everything else that opening does. */
import { FORMAT, RESULT_TABLES, WITH_FIELD } from './schema-sql.ts';
import type { Query } from './sql-session.ts';

/** What leads from each format to the next. */
const MIGRATIONS: Readonly<Record<number, string>> = {
  // Tables of results without rows are remembered; a GIS that changes one field leaves empty ones beside it as they are.
  1: `${RESULT_TABLES}
INSERT INTO crownfall.result_tables SELECT DISTINCT name FROM crownfall.results;
${WITH_FIELD}`,
};

/** Runs what is missing from `format` on. A database is backed up by who runs it (`pg_dump`); a failure leaves it as it was. */
export async function migrate(query: Query, format: number): Promise<void> {
  for (let from = format; from < FORMAT; from++) await query(MIGRATIONS[from]);
  await query('UPDATE crownfall.format SET format = $1', [FORMAT]);
}
