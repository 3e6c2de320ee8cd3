/** Opens an image by path or address, with what lies beside it: overviews, a mask, a world file, a .prj. */
import { type FileHandle, open, readFile } from 'node:fs/promises';
import { promisify } from 'node:util';
import { inflate, type ZlibOptions } from 'node:zlib';
import {
  type BytesPort,
  fileHandlePort,
  type OpenedImagery,
  type OpenImageryOptions,
  openImagery,
  rangePort,
} from '@crownfall/imagery';

export interface ImageFile extends OpenedImagery {
  /** Tells this state of the file from another: path, size and date. */
  readonly state: string;
  readonly close: () => Promise<void>;
}

export type ImageFileOptions = Pick<OpenImageryOptions, 'crs' | 'roles' | 'cacheBytes'>;

const inflated = promisify<Uint8Array, ZlibOptions, Uint8Array>(inflate);

/** RFC 1950, on another thread, into one piece of memory. */
export function inflateOnAnotherThread(bytes: Uint8Array, expectedLength: number): Promise<Uint8Array> {
  return inflated(bytes, { chunkSize: Math.max(64, expectedLength) });
}

/**
 * Opens a GeoTIFF for reading windows. Findings say what is wrong with it; a file that cannot be opened at all is an outage.
 * Close it when done.
 */
export async function openImageFile(path: string, options: ImageFileOptions = {}): Promise<ImageFile> {
  if (/^https?:\/\//.test(path)) return openImageAt(path, options);
  const open = new Map<string, FileHandle>();
  const close = async () => {
    for (const handle of open.values()) await handle.close();
  };
  try {
    const { port, state } = await portOf(path, open);
    const beside = {
      overviews: (await portIfThere(`${path}.ovr`, open)) ?? (await portIfThere(path.replace(/\.\w+$/, '.ovr'), open)),
      mask: await portIfThere(`${path}.msk`, open),
      worldFile: await textIfThere(['.tfw', '.tifw', '.wld', '.TFW'].map((end) => path.replace(/\.\w+$/, end))),
      prj: await textIfThere(['.prj', '.PRJ'].map((end) => path.replace(/\.\w+$/, end))),
    };
    const opened = await openImagery(port, { ...options, file: path, beside, inflate: inflateOnAnotherThread });
    return { ...opened, state, close };
  } catch (cause) {
    await close();
    throw cause;
  }
}

async function openImageAt(address: string, options: ImageFileOptions): Promise<ImageFile> {
  const port = rangePort(address, fetch);
  const opened = await openImagery(port, { ...options, file: address, inflate: inflateOnAnotherThread });
  return { ...opened, state: `${address} ${port.size}`, close: async () => {} };
}

async function portOf(path: string, opened: Map<string, FileHandle>): Promise<{ port: BytesPort; state: string }> {
  const handle = await open(path, 'r');
  opened.set(path, handle);
  const { size, mtimeMs } = await handle.stat();
  return { port: fileHandlePort(handle, size), state: `${path} ${size} ${mtimeMs}` };
}

async function portIfThere(path: string, opened: Map<string, FileHandle>): Promise<BytesPort | undefined> {
  if (opened.has(path)) return undefined;
  return portOf(path, opened).then(({ port }) => port, noneIfMissing);
}

async function textIfThere(paths: readonly string[]): Promise<string | undefined> {
  for (const path of new Set(paths)) {
    const text = await readFile(path, 'utf8').catch(noneIfMissing);
    if (text !== undefined) return text;
  }
  return undefined;
}

function noneIfMissing(cause: unknown): undefined {
  if ((cause as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
  throw cause;
}
