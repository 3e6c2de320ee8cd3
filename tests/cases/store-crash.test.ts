/**
 * Killed in the middle of writing, again and again: what was acknowledged is there, the file is sound, the journal tells
 * the same as the tables. STORE_KILLS sets how often (30 unless set).
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import type { ProjectStore } from '@crownfall/exchange';
import { createProjectStore, openProjectStore } from '@crownfall/exchange/node';
import { beforeAll, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';
import { checkedFile, journalAgrees } from './store-file-checks.ts';

const KILLS = Number(process.env.STORE_KILLS ?? 30);
const WRITER = resolve(import.meta.dirname, 'store-crash-writer.ts');
/** The library belongs to the room that uses it; the bundler is that of tsx, which starts our programs otherwise. */
const library = createRequire(resolve(import.meta.dirname, '../../packages/exchange/package.json')).resolve(
  'better-sqlite3',
);
const { buildSync } = createRequire(createRequire(import.meta.url).resolve('tsx'))('esbuild');

let folder: string;
let writer: string;
beforeAll(() => {
  folder = temporaryFolder('store-crash');
  writer = join(folder, 'writer.mjs');
  // In one file the writer is at work in a fraction of a second, instead of loading hundreds before each kill.
  const onto = { outfile: writer, bundle: true, platform: 'node', format: 'esm' };
  buildSync({ ...onto, entryPoints: [WRITER], alias: { 'better-sqlite3': library }, external: [library] });
});

interface Promised {
  readonly step?: number;
  readonly applied?: readonly (readonly [record: number, version: number, spread: number | null])[];
  readonly undone?: number;
}

/** Starts the writer, kills it at some moment of its writing, and gives what it had acknowledged. */
async function killedWriter(file: string, seed: number): Promise<Promised[]> {
  const child = spawn(process.execPath, [writer, file, String(seed)], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const lines: string[] = [];
  let rest = '';
  let trouble = '';
  child.stderr.on('data', (piece) => {
    trouble += piece;
  });
  child.stdout.on('data', (piece) => {
    const parts = (rest + piece).split('\n');
    rest = parts.pop() ?? '';
    // Not before it writes, then at any moment: the delay is drawn by the seed, a line more or less by the machine.
    if (lines.length === 0 && parts.length > 0) setTimeout(() => child.kill('SIGKILL'), 5 + ((seed * 7919) % 120));
    lines.push(...parts);
  });
  const [, signal] = await once(child, 'close');
  expect({ signal, trouble }).toEqual({ signal: 'SIGKILL', trouble: '' });
  return lines.slice(1).map((line) => JSON.parse(line) as Promised);
}

/** Every step that was promised is in the journal, and records not touched since are as promised. */
async function promisesAreKept(store: ProjectStore, promised: readonly Promised[], since: number): Promise<void> {
  const changes = [];
  for (let at = since; ; at = changes.at(-1)?.change ?? at) {
    const portion = await store.changes(at, 1000);
    if (portion.length === 0) break;
    changes.push(...portion);
  }
  const written = new Set(changes.map(({ layer, recordId, version }) => `${layer} ${recordId} ${version}`));
  const last = new Map(changes.map(({ recordId, version }) => [recordId, version]));
  for (const { applied = [] } of promised) {
    for (const [recordId, version, spread] of applied) {
      expect(written).toContain(`crowns ${recordId} ${version}`);
      if (last.get(recordId) !== version) continue;
      expect((await store.record('crowns', recordId))?.properties.spread_m ?? null).toBe(spread);
    }
  }
  if (promised.some(({ undone }) => undone !== undefined))
    expect(changes.some(({ kind }) => kind === 'undo')).toBe(true);
}

test(
  `killed ${KILLS} times amid writing: acknowledged edits are there, the file is sound`,
  async () => {
    const file = join(folder, 'town.gpkg');
    await (await createProjectStore(file)).close();
    let edits = 0;
    let since = 0;
    for (let kill = 1; kill <= KILLS; kill++) {
      const promised = await killedWriter(file, kill);
      edits += promised.reduce((sum, { applied = [] }) => sum + applied.length, 0);
      const { store } = await openProjectStore(file);
      if (store === null) throw new Error('the file does not open after a kill');
      await promisesAreKept(store, promised, since);
      since = await store.lastChange();
      await store.close();
      checkedFile(file);
      if (kill % 10 === 0 || kill === KILLS) journalAgrees(file);
    }
    // The harness itself must have had something to lose.
    expect(edits).toBeGreaterThan(KILLS);
  },
  20_000 * Math.max(KILLS, 3),
);
