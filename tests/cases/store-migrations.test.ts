/** Files of every earlier version open, after a copy was put beside them, and hold all they held. */
import { readdir, readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { Outage, openProjectStore, readProject } from '@crownfall/exchange/node';
import { beforeEach, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';
import { checkedFile, journalAgrees, plainFile } from './store-file-checks.ts';

const EARLIER = [1];
const ANA = { author: 'Ana', at: '2026-05-20T10:00:00.000Z' };

let folder: string;
let file: string;
beforeEach(async () => {
  folder = temporaryFolder('store-versions');
  file = join(folder, 'town.gpkg');
});

async function fileOfVersion(version: number): Promise<void> {
  const sql = await readFile(resolve(import.meta.dirname, `store-version-${version}.sql`), 'utf8');
  const db = plainFile(file, false);
  db.exec(sql);
  db.close();
}

/** Everything in a file but its bookkeeping of versions. */
function contents(path: string): unknown {
  const db = plainFile(path);
  const tables = [
    'crowns',
    'visits',
    'crownfall_project',
    'crownfall_changes',
    'crownfall_change_values',
    'crownfall_records',
  ];
  const all = Object.fromEntries(tables.map((table) => [table, db.prepare(`SELECT * FROM ${table}`).all()]));
  db.close();
  return all;
}

describe.each(EARLIER)('a file of version %i', (version) => {
  beforeEach(() => fileOfVersion(version));

  test('is brought up to date, with a copy beside it and a note', async () => {
    const before = contents(file);
    const { store, findings } = await openProjectStore(file);
    const copy = `town-version-${version}.gpkg`;
    expect(findings).toMatchObject([
      { code: 'store-migrated', severity: 'note', facts: { from: version, to: 2, copy } },
    ]);
    await store?.close();
    expect((await readdir(folder)).sort()).toEqual([copy, 'town.gpkg'].sort());
    expect(contents(join(folder, copy))).toEqual(before);
    expect(contents(file)).toMatchObject(before as object);
    checkedFile(file);
    journalAgrees(file);
    const again = await openProjectStore(file);
    expect(again.findings).toEqual([]);
    await again.store?.close();
  });

  test('then works like any other: history with versions, undo of an old step, conflicts', async () => {
    const { store } = await openProjectStore(file);
    if (store === null) throw new Error('does not open');
    expect(await store.project()).toMatchObject({ season: 2025, settings: { as_of: '2025-05-20' } });
    const versions = async (id: number) =>
      (await store.history('crowns', id)).map(({ author, version: of }) => [author, of]);
    expect(await versions(1)).toEqual([
      ['Ben', 2],
      ['outside', 3],
    ]);
    expect(await versions(2)).toEqual([['Ben', 2]]);
    expect(await versions(5)).toEqual([
      ['Ana', 1],
      ['Ana', 2],
    ]);
    expect(await store.record('crowns', 1)).toMatchObject({
      version: 3,
      properties: { tree_id: 'T1', spread_m: 7.25, host: 'Tilia cordata', zone: 'N' },
    });
    expect(await store.undo({ ...ANA, author: 'Ben' })).toMatchObject({ outcome: 'done' });
    expect(await store.record('crowns', 1)).toMatchObject({ version: 4, properties: { spread_m: 5.1 } });
    expect(await store.record('crowns', 2)).toMatchObject({ version: 3, properties: { tree_id: 'T2', spread_m: 5.2 } });
    const late = {
      action: 'update',
      layer: 'crowns',
      recordId: 5,
      expectedVersion: 1,
      properties: { spread_m: 1 },
    } as const;
    expect((await store.applyEdits([late], ANA)).outcomes[0].outcome).toBe('conflict');
    expect(await store.visits()).toMatchObject([{ visitId: 'v-1', treeId: 'T1' }]);
    await store.close();
    checkedFile(file);
    journalAgrees(file);
  });

  test('can be read without being changed', async () => {
    const before = await readFile(file);
    const { layers, title } = await readProject(file);
    expect([title, layers.crowns?.features.map(({ properties }) => properties.tree_id)]).toEqual([
      'Port Calessa (invented)',
      ['T1', 'T3', 'T4', 'T-5'],
    ]);
    expect((await readFile(file)).equals(before)).toBe(true);
  });

  test('when bringing it up to date fails, it stays as it is', async () => {
    const db = plainFile(file, false);
    db.exec('CREATE TABLE crownfall_conflicts (taken INTEGER)');
    db.close();
    const before = contents(file);
    const error = await openProjectStore(file).catch((thrown) => thrown);
    expect(error).toBeInstanceOf(Error);
    expect(error).not.toBeInstanceOf(Outage);
    expect(contents(file)).toEqual(before);
    checkedFile(file);
  });
});
