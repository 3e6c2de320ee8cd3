/** The pictures that a project lists, as files to hand out. A request names one of them; it never becomes a path. */
import { open } from 'node:fs/promises';
import { basename, resolve } from 'node:path';

export class ImageryShelf {
  readonly #folder: string;
  readonly #listed: () => readonly string[];

  /** `listed` gives the project's paths as they are now, from `folder`. */
  constructor(folder: string, listed: () => readonly string[]) {
    this.#folder = folder;
    this.#listed = listed;
  }

  /** Names of the pictures that are there, each once, in the project's order. */
  async names(): Promise<readonly string[]> {
    const files = [...this.#files()];
    const there = await Promise.all(files.map(([, path]) => isTiff(path)));
    return files.flatMap(([name], i) => (there[i] ? [name] : []));
  }

  /** Where the picture of this name lies; null when the project has none. */
  async path(name: string): Promise<string | null> {
    const path = this.#files().get(name);
    return path !== undefined && (await isTiff(path)) ? path : null;
  }

  #files(): ReadonlyMap<string, string> {
    const files = new Map<string, string>();
    for (const path of this.#listed()) {
      // What lies on another machine is not fetched for those who ask here.
      if (/^https?:\/\//i.test(path)) continue;
      const own = basename(path);
      let name = own;
      for (let number = 2; files.has(name); number++) name = `${number}-${own}`;
      files.set(name, resolve(this.#folder, path));
    }
    return files;
  }
}

/** First bytes of a TIFF in either byte order (TIFF 6.0, section 2), and of a BigTIFF. */
const HEADS: readonly string[] = ['II*\0', 'MM\0*', 'II+\0', 'MM\0+'];

/** A project could list any file of this machine: what is no TIFF is not handed out. */
async function isTiff(path: string): Promise<boolean> {
  const file = await open(path, 'r').catch(() => null);
  if (file === null) return false;
  try {
    const { bytesRead, buffer } = await file.read(new Uint8Array(4), 0, 4, 0);
    return bytesRead === 4 && HEADS.includes(String.fromCharCode(...buffer));
  } catch {
    // A folder opens, but does not read.
    return false;
  } finally {
    await file.close();
  }
}
