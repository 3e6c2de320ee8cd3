/** What can happen to a file on a disk: each time a clear word, and the old data whole. */
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { chmod, copyFile, mkdir, open, readdir, readFile, stat, truncate, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { Edit, ProjectStore } from '@crownfall/exchange';
import { convertProject, createProjectStore, Outage, openProjectStore, readProject } from '@crownfall/exchange/node';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';
import { checkedFile, journalAgrees, plainFile } from './store-file-checks.ts';

const ANA = { author: 'Ana', at: '2026-05-20T10:00:00.000Z' };
const insert = (spread_m: number, note = ''): Edit => ({
  action: 'insert',
  layer: 'crowns',
  geometry: { kind: 'point', points: Float64Array.of(13.4, 52.1) },
  properties: { tree_id: `T${spread_m}`, spread_m, note },
});

let folder: string;
let file: string;
beforeEach(async () => {
  folder = temporaryFolder('store-trouble');
  file = join(folder, 'town.gpkg');
  const store = await createProjectStore(file);
  await store.applyEdits(
    Array.from({ length: 50 }, (_, i) => insert(i + 1)),
    ANA,
  );
  await store.close();
});

const hash = async (path: string) =>
  createHash('sha256')
    .update(await readFile(path))
    .digest('hex');
const code = (error: unknown) => ((error as Outage).cause as NodeJS.ErrnoException | undefined)?.code;

async function opened(path: string, options = {}): Promise<ProjectStore> {
  const { store, findings } = await openProjectStore(path, options);
  if (store === null) throw new Error(`does not open: ${JSON.stringify(findings)}`);
  return store;
}

/** The reason why a file gives no store, which is left as it is. */
async function refusal(path: string): Promise<unknown> {
  const before = await hash(path);
  const { store, findings } = await openProjectStore(path);
  expect(store).toBeNull();
  expect(await hash(path)).toBe(before);
  expect((await readProject(path)).findings).toEqual(findings);
  return findings[0];
}

async function outage(work: Promise<unknown>): Promise<Outage> {
  const error = await work.then(
    () => null,
    (thrown) => thrown,
  );
  expect(error).toBeInstanceOf(Outage);
  return error as Outage;
}

describe('the disk is full', () => {
  test('at a limit: the edit is refused as an outage, what was stored is whole, and smaller edits go on', async () => {
    const { size } = await stat(file);
    const store = await opened(file, { limitBytes: size + 40_000 });
    const error = await outage(
      store.applyEdits(
        Array.from({ length: 200 }, (_, i) => insert(1000 + i, 'x'.repeat(1000))),
        ANA,
      ),
    );
    expect([code(error), error.message]).toEqual([
      'ENOSPC',
      expect.stringContaining('what was stored before is whole'),
    ]);
    expect(await store.count('crowns')).toBe(50);
    await store.applyEdits([insert(99)], ANA);
    expect(await store.count('crowns')).toBe(51);
    await store.close();
    checkedFile(file);
    journalAgrees(file);
  });

  const tiny = mountedDisk();
  afterAll(() => {
    if (tiny !== null) spawnSync('sh', ['-c', `umount ${tiny}`]);
  });
  test.skipIf(tiny === null)('a real small disk: the same, and a conversion leaves nothing behind', async () => {
    const disk = tiny as string;
    const there = join(disk, 'town.gpkg');
    await copyFile(file, there);
    const store = await opened(there);
    const fill = async (): Promise<void> => {
      for (let i = 0; i < 2000; i++) await store.applyEdits([insert(1000 + i, 'x'.repeat(20_000))], ANA);
    };
    expect(code(await outage(fill()))).toBe('ENOSPC');
    const kept = await store.count('crowns');
    expect(kept).toBeGreaterThan(50);
    expect(await store.count('crowns', { where: { tree_id: 'T1' } })).toBe(1);
    await store.close();
    checkedFile(there);
    journalAgrees(there);
    const error = await outage(
      convertProject(there, join(disk, 'copy.gpkg'), { writer: ANA }).then(({ findings }) => findings),
    );
    expect(code(error)).toBe('ENOSPC');
    // Its log stays beside the file while there is no room to take it in.
    const names = (await readdir(disk)).filter((name) => !/^town\.gpkg(-wal|-shm)?$/.test(name));
    expect(names).toEqual([]);
  });
});

/** A disk of 2 MB in memory, where this machine lets us mount one. */
function mountedDisk(): string | null {
  const disk = temporaryFolder('small-disk');
  const made = spawnSync('sh', ['-c', `mount -t tmpfs -o size=2m tmpfs ${disk}`]).status === 0;
  if (!made) console.warn('skipped: no small disk can be mounted here (needs root)');
  return made ? disk : null;
}

describe('the file may only be read', () => {
  test('opened for reading: everything can be read, nothing is touched, writing is misuse', async () => {
    const before = await hash(file);
    const store = await opened(file, { readOnly: true });
    expect(store.readOnly).toBe(true);
    expect(await store.count('crowns')).toBe(50);
    await expect(store.applyEdits([insert(1)], ANA)).rejects.toThrow(TypeError);
    await store.close();
    expect(await hash(file)).toBe(before);
    expect(await readdir(folder)).toEqual(['town.gpkg']);
  });

  test.skipIf(process.getuid?.() === 0)('without the right to write: an outage when it is to be written', async () => {
    await chmod(file, 0o444);
    expect(code(await outage(openProjectStore(file)))).toBe('EACCES');
    expect((await readProject(file)).layers.crowns?.features).toHaveLength(50);
  });

  const frozen = spawnSync('sh', ['-c', 'f=$(mktemp) && chattr +i $f && chattr -i $f && rm $f']).status === 0;
  test.skipIf(!frozen)('frozen by the system: the same', async () => {
    execFileSync('chattr', ['+i', file]);
    try {
      await outage(openProjectStore(file));
      expect((await readProject(file)).layers.crowns?.features).toHaveLength(50);
    } finally {
      execFileSync('chattr', ['-i', file]);
    }
  });
});

describe('another program', () => {
  test('that holds the file locked: an outage after the time to wait, and all is well when it lets go', async () => {
    const store = await opened(file, { waitMs: 200 });
    const other = plainFile(file, false);
    other.exec('BEGIN IMMEDIATE');
    const error = await outage(store.applyEdits([insert(99)], ANA));
    expect([code(error), error.message]).toEqual(['EBUSY', expect.stringContaining('another program')]);
    expect(await store.count('crowns')).toBe(50);
    other.exec('COMMIT');
    other.close();
    await store.applyEdits([insert(99)], ANA);
    expect(await store.count('crowns')).toBe(51);
    await store.close();
  });

  test('that locks it only for a moment is waited for', async () => {
    const store = await opened(file);
    const other = plainFile(file, false);
    other.exec('BEGIN IMMEDIATE');
    setTimeout(() => other.exec('COMMIT'), 300);
    await store.applyEdits([insert(99)], ANA);
    expect(await store.count('crowns')).toBe(51);
    other.close();
    await store.close();
  });

  test('two stores on one file, in two processes: no edit is lost', async () => {
    const writer = resolve(import.meta.dirname, 'store-crash-writer.ts');
    const child = spawn(process.execPath, ['--import', 'tsx', writer, file, '3'], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    await once(child.stdout, 'data');
    const store = await opened(file, { waitMs: 60_000 });
    for (let i = 0; i < 20; i++) await store.applyEdits([insert(500 + i)], ANA);
    child.kill('SIGKILL');
    await once(child, 'exit');
    expect(
      (await store.changes(0, 10_000)).filter(({ author, action }) => author === 'Ana' && action === 'insert'),
    ).toHaveLength(70);
    await store.close();
    checkedFile(file);
    journalAgrees(file);
  });
});

describe('the file is not what it should be', () => {
  test('of a newer version', async () => {
    const db = plainFile(file, false);
    db.exec('UPDATE crownfall_schema SET version = 99');
    db.close();
    expect(await refusal(file)).toMatchObject({ code: 'store-newer', severity: 'error', facts: { got: 99, known: 2 } });
  });

  test('cut off at any length', async () => {
    const { size } = await stat(file);
    for (const share of [0, 0.00001, 0.01, 0.3, 0.9, 0.999]) {
      const cut = join(folder, `cut-${share}.gpkg`);
      await copyFile(file, cut);
      await truncate(cut, Math.floor(size * share));
      expect(await refusal(cut)).toMatchObject({ code: 'file-truncated', severity: 'error' });
    }
  });

  test('with pages overwritten', async () => {
    const handle = await open(file, 'r+');
    await handle.write(Buffer.alloc(20_000, 0x5a), 0, 20_000, 4096);
    await handle.close();
    expect(await refusal(file)).toMatchObject({ code: 'file-damaged', severity: 'error' });
  });

  test.each([
    ['a text', Buffer.from('tree_id,spread_m\n'.repeat(20)), 'format-unknown'],
    ['nothing', Buffer.alloc(0), 'file-truncated'],
  ])('%s by that name', async (_, content, expected) => {
    await writeFile(file, content);
    expect(await refusal(file)).toMatchObject({ code: expected, severity: 'error' });
  });

  test('an SQLite file of another kind; a GeoPackage without a project', async () => {
    const other = join(folder, 'other.gpkg');
    const db = plainFile(other, false);
    db.exec('CREATE TABLE t (a)');
    db.close();
    expect(await refusal(other)).toMatchObject({ code: 'format-unknown' });
    const tagged = plainFile(other, false);
    tagged.pragma(`application_id = ${0x47504b47}`);
    tagged.close();
    expect(await refusal(other)).toMatchObject({ code: 'project-invalid' });
  });

  test('a layer was removed', async () => {
    const db = plainFile(file, false);
    db.exec('DROP TABLE water');
    db.close();
    expect(await refusal(file)).toMatchObject({ code: 'file-damaged', where: { layer: 'water' } });
  });

  test('not there', async () => {
    expect((await openProjectStore(join(folder, 'no.gpkg'))).findings).toMatchObject([{ code: 'file-missing' }]);
    await outage(createProjectStore(join(folder, 'no', 'town.gpkg')));
    await outage(createProjectStore(file));
    await mkdir(join(folder, 'dir.gpkg'));
    await outage(openProjectStore(join(folder, 'dir.gpkg')));
  });

  test('a geometry that another program wrote and nobody can read counts as none, and is told', async () => {
    const db = plainFile(file, false);
    for (const name of ['ST_IsEmpty', 'ST_MinX', 'ST_MaxX', 'ST_MinY', 'ST_MaxY'])
      db.function(name, (_blob: unknown) => 1);
    db.prepare('UPDATE crowns SET geom = ? WHERE fid = 7').run(
      Buffer.from('47500001e6100000010800000000000000', 'hex'),
    );
    db.close();
    const { layers, findings } = await readProject(file);
    expect(layers.crowns?.features[6]).toMatchObject({ row: 7, geometry: { kind: 'none' } });
    expect(findings).toMatchObject([
      { code: 'geometry-unexpected', effect: 'left_out', where: { layer: 'crowns', row: 7 } },
    ]);
  });
});

test('without the SQLite library: an outage that says so, and folder projects work', () => {
  const program = `
    import { readProject, openProjectStore } from '@crownfall/exchange/node';
    const { layers } = await readProject('sample-geo');
    const error = await openProjectStore(${JSON.stringify(file)}).catch((thrown) => thrown);
    console.log(JSON.stringify([layers.crowns.features.length, error.name, error.message, error.cause.code]));`;
  const hide = `data:text/javascript,${encodeURIComponent(
    `import { register } from 'node:module';
     register('data:text/javascript,' + encodeURIComponent("export async function resolve(name, context, next) { if (name === 'better-sqlite3') throw Object.assign(new Error('not installed'), { code: 'ERR_MODULE_NOT_FOUND' }); return next(name, context); }"));`,
  )}`;
  const { stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', 'tsx', '--import', hide, '--input-type=module', '--eval', program],
    { cwd: resolve(import.meta.dirname, '../../packages/exchange/../..'), encoding: 'utf8' },
  );
  expect(stderr).toBe('');
  expect(JSON.parse(stdout)).toEqual([1200, 'Outage', expect.stringContaining('better-sqlite3'), 'ENOPKG']);
});
