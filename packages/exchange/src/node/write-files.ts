import { mkdir, open, readdir, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { FilePieces } from '../formats/write-layer.ts';
import { Outage, systemCode } from './outage.ts';

/** One file to write: its name, which may lead into folders below, and its text or bytes in pieces. */
export interface TextFile {
  readonly name: string;
  readonly text: FilePieces;
}

const STAGE = '.crownfall-writing-';
/** Text is handed to the disk in portions of about this many characters. */
const PORTION = 1 << 18;

/**
 * Writes a set of files into a folder, all or none: first everything into a hidden folder inside it, flushed to the disk,
 * then each file is moved into place, and moved back should one of the moves fail. Other files in the folder stay.
 * What an earlier run left behind when it was killed amid moving is put back first. Throws an `Outage` when the disk
 * fails; whatever else the making of the text throws passes through. Either way the earlier files are whole.
 */
export async function writeFiles(folder: string, files: readonly TextFile[]): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
    await clearLeftovers(folder);
  } catch (error) {
    throw outage(folder, error);
  }
  const stage = join(folder, `${STAGE}${process.pid}`);
  try {
    for (const { name, text } of files) await writeFlushed(join(stage, 'new', name), text);
    await moveAll(
      folder,
      stage,
      files.map(({ name }) => name),
    );
  } catch (error) {
    throw outage(folder, error);
  } finally {
    await rm(stage, { recursive: true, force: true });
  }
}

async function writeFlushed(path: string, text: FilePieces): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  const file = await open(path, 'w');
  try {
    let portion = '';
    let bytes: Uint8Array[] = [];
    let size = 0;
    const flush = async (): Promise<void> => {
      if (portion !== '') await file.writeFile(portion);
      if (bytes.length > 0) await file.writev(bytes);
      portion = '';
      bytes = [];
      size = 0;
    };
    for await (const piece of text) {
      // Texts and bytes are not mixed in a portion, so that they keep their order.
      if (typeof piece === 'string' ? bytes.length > 0 : portion !== '') await flush();
      if (typeof piece === 'string') portion += piece;
      else bytes.push(piece);
      size += piece.length;
      if (size >= PORTION) await flush();
    }
    await flush();
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Moves the new files in, keeping the old ones until all are in; on failure everything goes back. */
async function moveAll(folder: string, stage: string, names: readonly string[]): Promise<void> {
  const moved: string[] = [];
  try {
    for (const name of names) {
      await mkdir(dirname(join(folder, name)), { recursive: true });
      await moveIfThere(join(folder, name), join(stage, 'old', name));
      moved.push(name);
      await rename(join(stage, 'new', name), join(folder, name));
    }
    await syncFolder(folder);
  } catch (error) {
    for (const name of moved.reverse()) {
      await rm(join(folder, name), { force: true });
      await moveIfThere(join(stage, 'old', name), join(folder, name));
    }
    throw error;
  }
}

async function moveIfThere(from: string, to: string): Promise<void> {
  await mkdir(dirname(to), { recursive: true });
  try {
    await rename(from, to);
  } catch (error) {
    if (systemCode(error) !== 'ENOENT') throw error;
  }
}

/** Stages of runs that no longer live: what they had set aside goes back, the rest goes. */
async function clearLeftovers(folder: string): Promise<void> {
  for (const name of await readdir(folder)) {
    if (!name.startsWith(STAGE) || lives(Number(name.slice(STAGE.length)))) continue;
    const old = join(folder, name, 'old');
    for (const path of await filesBelow(old)) await moveIfThere(join(old, path), join(folder, path));
    await rm(join(folder, name), { recursive: true, force: true });
  }
}

async function filesBelow(folder: string): Promise<string[]> {
  const names = await readdir(folder, { recursive: true }).catch(() => []);
  const paths: string[] = [];
  for (const name of names) if ((await stat(join(folder, name))).isFile()) paths.push(name);
  return paths;
}

function lives(pid: number): boolean {
  if (pid === process.pid) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return systemCode(error) === 'EPERM';
  }
}

/** So that the moves themselves outlive a power cut. Windows cannot flush a folder, and need not. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => null);
  await handle?.sync().catch(() => {});
  await handle?.close();
}

function outage(folder: string, error: unknown): unknown {
  return systemCode(error) === undefined ? error : new Outage(`cannot write ${basename(folder)}`, error);
}
