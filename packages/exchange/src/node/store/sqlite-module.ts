import type BetterSqlite3 from 'better-sqlite3';
import type { Database as Connection, Statement } from 'better-sqlite3';
import { Outage } from '../outage.ts';

export type { Connection, Statement };

/**
 * The SQLite library, loaded when the first GeoPackage is opened: it is native code that some machines cannot build, and
 * folder projects must work without it. Throws an `Outage` that says what to install.
 */
export async function sqliteModule(): Promise<typeof BetterSqlite3> {
  try {
    const module = await import('better-sqlite3');
    // Loading the native part is put off until the first connection.
    new module.default(':memory:').close();
    return module.default;
  } catch (error) {
    const cause = Object.assign(new Error('the SQLite library (better-sqlite3) is missing or does not run here'), {
      code: 'ENOPKG',
      cause: error,
    });
    throw new Outage('cannot open GeoPackage files', cause);
  }
}
