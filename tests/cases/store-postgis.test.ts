/** The store in PostGIS does what every store must do: the suite of the file, on PostgreSQL 15 with PostGIS 3. */
import { openPostgisStore } from '@crownfall/exchange/postgis';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { postgresMissing, sql, startPostgres, type TestPostgres } from './server-postgres.ts';
import { storeBehaviour } from './store-behaviour.ts';

const missing = postgresMissing();
if (missing !== null) console.warn(`PostGIS is not tested here: ${missing}`);

describe.skipIf(missing !== null)('PostGIS', () => {
  let postgres: TestPostgres;
  let databases = 0;
  beforeAll(async () => {
    postgres = await startPostgres();
  });
  afterAll(() => postgres.stop());

  storeBehaviour(async () => {
    const { store } = await openPostgisStore(postgres.database(`behaviour_${++databases}`));
    if (store === null) throw new Error('the store did not open');
    return { store, remove: () => store.close() };
  });

  test('tables of format 1 are brought up to date; opened for reading alone they are refused', async () => {
    const url = postgres.database('earlier', 'bare');
    await (await openPostgisStore(url)).store?.close();
    // What format 1 did not have.
    sql(url, 'DROP TABLE crownfall.result_tables; UPDATE crownfall.format SET format = 1');
    sql(url, "INSERT INTO crownfall.results VALUES ('blocks', 1, NULL, NULL, '{}')");
    await expect(openPostgisStore(url, { readOnly: true })).rejects.toThrow(/earlier format/);
    const { store } = await openPostgisStore(url);
    expect(await store?.resultTables()).toEqual([{ name: 'blocks', count: 1 }]);
    await store?.close();
    expect(sql(url, 'SELECT format FROM crownfall.format')).toBe('2');
    sql(url, 'UPDATE crownfall.format SET format = 3');
    await expect(openPostgisStore(url)).rejects.toThrow(/newer than 2: update this program/);
  });
});
