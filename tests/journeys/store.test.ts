/** A project becomes one file, is worked on, and becomes a folder again: with the command, as a person would. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Edit } from '@crownfall/exchange';
import { convertProject, openProjectStore } from '@crownfall/exchange/node';
import { beforeAll, describe, expect, test } from 'vitest';
import { checkedFile, journalAgrees, plainFile } from '../cases/store-file-checks.ts';
import { crownfallHere } from './crownfall-here.ts';
import { crownfall, SAMPLE, temporaryFolder } from './crownfall-process.ts';

const ANA = { author: 'Ana', at: '2026-05-20T10:00:00.000Z' };

let folder: string;
let town: string;
beforeAll(() => {
  folder = temporaryFolder();
  town = join(folder, 'town.gpkg');
});

const files = (path: string) =>
  Object.fromEntries(
    readdirSync(path)
      .sort()
      .map((name) => [name, readFileSync(join(path, name), 'utf8')]),
  );

/** The whole journal and all that hangs on it. */
function bookkeeping(file: string): unknown {
  const db = plainFile(file);
  const tables = ['crownfall_steps', 'crownfall_changes', 'crownfall_change_values', 'crownfall_conflicts', 'visits'];
  const all = tables.map((table) => [table, db.prepare(`SELECT * FROM ${table}`).all()]);
  const versions = db.prepare('SELECT layer, fid, version FROM crownfall_records WHERE version > 1').all();
  const numbers = db.prepare("SELECT * FROM sqlite_sequence WHERE name NOT LIKE 'gpkg%' ORDER BY name").all();
  db.close();
  return { all, versions, numbers };
}

/** Each call of the command is a process of its own; a busy machine takes its time. */
const PATIENCE = { timeout: 600_000 };

describe('the sample town', PATIENCE, () => {
  test('into one file and back: every file is the same to the byte', async () => {
    expect(crownfall(['convert', SAMPLE, '--to', town, '--quiet']).code).toBe(0);
    checkedFile(town);
    for (const [from, name] of [
      [SAMPLE, 'plain'],
      [town, 'back'],
    ]) {
      expect((await crownfallHere(['convert', from, '--to', join(folder, name), '--quiet'])).code).toBe(0);
    }
    expect(files(join(folder, 'back'))).toEqual(files(join(folder, 'plain')));
  });

  test('check and reckon give of the file what they give of the folder', () => {
    const out = (name: string) => join(folder, `out-${name}`);
    for (const [project, name] of [
      [join(folder, 'plain'), 'folder'],
      [town, 'file'],
    ]) {
      expect(crownfall(['reckon', project, '--out', out(name), '--quiet']).code).toBe(0);
    }
    for (const name of ['blocks.geojson', 'trees.geojson', 'pavement.geojson', 'ledger.csv']) {
      expect(readFileSync(join(out('file'), name), 'utf8')).toBe(readFileSync(join(out('folder'), name), 'utf8'));
    }
    const run = JSON.parse(readFileSync(join(out('file'), 'run.json'), 'utf8')) as { inputs: { file: string }[] };
    expect(run.inputs.map(({ file }) => file)).toEqual(['town.gpkg']);
  });

  test('an existing file is not overwritten', async () => {
    const before = readFileSync(town);
    const { code, stderr } = await crownfallHere(['convert', SAMPLE, '--to', town, '--quiet']);
    expect([code, stderr]).toEqual([2, expect.stringContaining('exists')]);
    expect(readFileSync(town).equals(before)).toBe(true);
  });
});

describe('a project that was worked on', PATIENCE, () => {
  let town: string;
  beforeAll(async () => {
    town = join(folder, 'worked.gpkg');
    await convertProject(SAMPLE, town, { writer: ANA });
    const { store } = await openProjectStore(town);
    if (store === null) throw new Error('does not open');
    const crown = { layer: 'crowns', recordId: 5, expectedVersion: 1 } as const;
    const edits: Edit[] = [
      { action: 'update', ...crown, properties: { height_m: 9.25, remark: ['odd'] } },
      { action: 'delete', ...crown, recordId: 1200 },
      {
        action: 'insert',
        layer: 'ratings',
        geometry: { kind: 'none' },
        properties: { tree_id: 'T0005', browned_pct: 30 },
      },
    ];
    await store.applyEdits(edits, { ...ANA, requestId: 'r-1' });
    await store.applyEdits([{ action: 'update', ...crown, properties: { height_m: 1 } }], { ...ANA, author: 'Ben' });
    await store.addVisits(
      [{ visitId: 'v-1', treeId: 'T0005', visitedOn: '2026-05-20', visitor: 'Ana', did: 'rated' }],
      ANA,
    );
    await store.changeProject({ title: 'Port Calessa, by hand (invented)' }, ANA);
    await store.close();
  });

  test('takes journal, versions, visits and conflicts along into a folder and back', async () => {
    const way = join(folder, 'worked');
    const further = join(folder, 'further');
    const again = join(folder, 'again.gpkg');
    const copy = join(folder, 'copy.gpkg');
    const report = await convertProject(town, way);
    expect(report.files).toContain('history.jsonl');
    await convertProject(way, further, { format: 'geojsonl' });
    await convertProject(further, again, { writer: ANA });
    await convertProject(town, copy, { writer: ANA });
    for (const file of [again, copy]) {
      expect(bookkeeping(file)).toEqual(bookkeeping(town));
      checkedFile(file);
      journalAgrees(file);
    }
    const { store } = await openProjectStore(again);
    expect(await store?.project()).toMatchObject({ title: 'Port Calessa, by hand (invented)' });
    expect(await store?.record('crowns', 5)).toMatchObject({
      version: 2,
      properties: { height_m: 9.25, remark: ['odd'] },
    });
    expect(await store?.undo(ANA)).toMatchObject({ outcome: 'done' });
    expect(await store?.undo(ANA)).toMatchObject({ outcome: 'done' });
    expect(await store?.record('crowns', 5)).toMatchObject({ version: 3 });
    expect(await store?.record('crowns', 1200)).toMatchObject({ version: 3 });
    await store?.close();
  });

  test('when the folder was edited by hand meanwhile, the history stays behind and that is told', async () => {
    const way = join(folder, 'edited');
    await convertProject(town, way);
    const path = join(way, 'crowns.geojson');
    writeFileSync(path, readFileSync(path, 'utf8').replace('9.25', '9.5'));
    const { findings } = await convertProject(way, join(folder, 'edited.gpkg'), { writer: ANA });
    expect(findings.filter(({ code }) => code === 'history-outdated')).toMatchObject([
      { severity: 'warning', where: { layer: 'crowns' } },
    ]);
    const { store } = await openProjectStore(join(folder, 'edited.gpkg'));
    expect(await store?.record('crowns', 5)).toMatchObject({ version: 1, properties: { height_m: 9.5 } });
    await store?.close();
  });

  test('the same project at the same time gives the same bytes', async () => {
    await convertProject(SAMPLE, join(folder, 'one.gpkg'), { writer: ANA });
    await convertProject(SAMPLE, join(folder, 'two.gpkg'), { writer: ANA });
    expect(readFileSync(join(folder, 'one.gpkg')).equals(readFileSync(join(folder, 'two.gpkg')))).toBe(true);
  });
});
