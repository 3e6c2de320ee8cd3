/** Photos kept as files named after their content: what a request says never becomes a path. */
import { createHash, randomBytes } from 'node:crypto';
import { mkdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

export class PhotoShelf {
  readonly #folder: string;

  constructor(folder: string) {
    this.#folder = folder;
  }

  /** Keeps a photo and answers its name, the SHA-256 of its bytes; one that is there already is not written again. */
  async keep(bytes: Uint8Array): Promise<{ readonly name: string; readonly known: boolean }> {
    const name = createHash('sha256').update(bytes).digest('hex');
    const file = this.#file(name);
    const known = await stat(file).then(
      () => true,
      () => false,
    );
    if (!known) await this.#write(file, bytes);
    return { name, known };
  }

  /** The photo of this name; null when there is none. Throws a RangeError for what is no name. */
  async photo(name: string): Promise<Buffer | null> {
    return readFile(this.#file(name)).catch((error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return null;
      throw error;
    });
  }

  async #write(file: string, bytes: Uint8Array): Promise<void> {
    await mkdir(this.#folder, { recursive: true });
    const draft = `${file}.${randomBytes(6).toString('hex')}`;
    try {
      await writeFile(draft, bytes, { flag: 'wx', flush: true });
      await rename(draft, file);
    } finally {
      await rm(draft, { force: true });
    }
  }

  #file(name: string): string {
    if (!/^[0-9a-f]{64}$/.test(name)) throw new RangeError('photo name: expected 64 hexadecimal digits');
    return join(this.#folder, `${name}.jpg`);
  }
}
