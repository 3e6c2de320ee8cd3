import { type FileHandle, open, readdir, stat } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import type { LayerEntry, LayerSource, RandomAccess } from '../layer-reading.ts';
import { type HashedFile, hashedFile } from './hashed-file.ts';
import { Outage } from './outage.ts';
import { takeGeoPackage } from './store/take-geopackage.ts';

/** A layer's file on a disk, with the files that belong beside it; all that is read is hashed. */
export interface LayerFile {
  readonly source: Pick<LayerSource, 'bytes' | 'entry' | 'file' | 'beside' | 'takeGeoPackage'>;
  /** Name, SHA-256 and size of every file that was read, the layer's own first; right only after reading. */
  sources(): ReturnType<HashedFile['source']>[];
  close(): Promise<void>;
}

/**
 * Opens a layer's file for reading from front to back, at any place, and with its neighbours of the same name (`beside`,
 * upper or lower case alike), each of which `allowed` may refuse. Throws an `Outage` when the disk fails.
 */
export async function layerFile(
  path: string,
  entry: LayerEntry,
  allowed: (path: string) => Promise<boolean> = async () => true,
): Promise<LayerFile> {
  const main = hashedFile(path, entry.path);
  const neighbours: HashedFile[] = [];
  const access = await randomAccess(path, entry.path);
  const stem = basename(path, extname(path)).toLowerCase();

  async function beside(extension: string) {
    const names = await readdir(dirname(path)).catch(() => []);
    const name = names.find((other) => other.toLowerCase() === `${stem}.${extension}`);
    if (name === undefined || !(await allowed(join(dirname(path), name)))) return null;
    const file = hashedFile(join(dirname(path), name), join(dirname(entry.path), name).replaceAll('\\', '/'));
    neighbours.push(file);
    return file.bytes;
  }

  return {
    source: {
      bytes: main.bytes,
      entry,
      file: access.file,
      beside,
      takeGeoPackage: (source, taker) => takeGeoPackage(path, source, taker),
    },
    sources: () => [main, ...neighbours].map((file) => file.source()),
    close: () => access.close(),
  };
}

/** A file read at any place; opened at the first reading. */
async function randomAccess(path: string, name: string): Promise<{ file: RandomAccess; close(): Promise<void> }> {
  let handle: FileHandle | null = null;
  try {
    const { size } = await stat(path);
    return {
      file: {
        byteLength: size,
        async slice(start, end) {
          try {
            handle ??= await open(path, 'r');
            const bytes = new Uint8Array(Math.max(0, Math.min(end, size) - start));
            const { bytesRead } = await handle.read(bytes, 0, bytes.length, start);
            return bytes.subarray(0, bytesRead);
          } catch (error) {
            throw new Outage(`cannot read ${name}`, error);
          }
        },
      },
      close: async () => handle?.close(),
    };
  } catch (error) {
    throw new Outage(`cannot read ${name}`, error);
  }
}
