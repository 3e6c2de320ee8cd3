/** Work in progress in a folder, so that an interrupted run goes on where it stopped. */
import { appendFile, mkdir, open, readFile, rename, rm, stat, truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { PartStore } from '@crownfall/imagery';

/** A store of parts in `folder`; made when first written to. */
export function partFolder(folder: string): PartStore {
  const at = (part: string) => join(folder, part);
  const ready = () => mkdir(folder, { recursive: true });
  return {
    text: (part) => readFile(at(part), 'utf8').catch(ifMissing(null)),
    setText: async (part, text) => {
      await ready();
      await writeFile(at(`${part}.new`), text);
      await rename(at(`${part}.new`), at(part));
    },
    size: (part) => stat(at(part)).then(({ size }) => size, ifMissing(0)),
    append: async (part, bytes) => {
      await ready();
      await appendFile(at(part), bytes);
    },
    truncate: (part, size) => truncate(at(part), size),
    read: (part, offset, length) => readPart(at(part), offset, length),
    clear: () => rm(folder, { recursive: true, force: true }),
  };
}

async function readPart(path: string, offset: number, length: number): Promise<Uint8Array> {
  if (length === 0) return new Uint8Array(0);
  const handle = await open(path, 'r');
  try {
    const { bytesRead, buffer } = await handle.read(new Uint8Array(length), 0, length, offset);
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}

function ifMissing<T>(otherwise: T): (cause: unknown) => T {
  return (cause) => {
    if ((cause as NodeJS.ErrnoException).code === 'ENOENT') return otherwise;
    throw cause;
  };
}
