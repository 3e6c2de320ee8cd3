import { open, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { Outage } from '../outage.ts';

/**
 * Makes a new GeoPackage file whole, or not at all: `write` fills a file beside it, which is flushed and moved into place.
 * Throws a `RangeError` when there is a file already (its journal, or its other layers, would be lost), an `Outage` when the
 * disk fails; what `write` throws otherwise passes through.
 */
export async function wholeFile(path: string, write: (stage: string) => Promise<void>): Promise<void> {
  await mustBeNew(path);
  const stage = join(dirname(resolve(path)), `.${basename(path)}.crownfall-writing-${process.pid}`);
  try {
    await removeAll(stage);
    await write(stage);
    await flushed(stage);
    await rename(stage, path);
  } catch (error) {
    await removeAll(stage);
    throw error instanceof Outage || !(error instanceof Error) || !('code' in error)
      ? error
      : new Outage(`cannot write ${basename(path)}`, error);
  }
}

/** Throws a `RangeError` when there is a file already; to be asked before long work as well. */
export async function mustBeNew(path: string): Promise<void> {
  if ((await stat(path).catch(() => null)) === null) return;
  throw new RangeError(`expected the name of a new file, got ${path}, which exists`);
}

async function flushed(path: string): Promise<void> {
  const file = await open(path, 'r+');
  await file.sync().finally(() => file.close());
}

async function removeAll(path: string): Promise<void> {
  for (const end of ['', '-journal', '-wal', '-shm']) await rm(`${path}${end}`, { force: true });
}
