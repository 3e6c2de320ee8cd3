/** The file of people, read again when it changes: a person taken out is out within seconds. */
import { stat } from 'node:fs/promises';
import { type Person, readPeople } from './people-file.ts';

const LOOK_MS = 2000;

export class PeopleWatch {
  people: readonly Person[] = [];
  readonly #file: string;
  readonly #timer: NodeJS.Timeout;
  #seen = '';

  private constructor(file: string) {
    this.#file = file;
    this.#timer = setInterval(() => void this.#look().catch(() => {}), LOOK_MS);
    this.#timer.unref();
  }

  /** Throws when the file is not there, is none of people, or names nobody. */
  static async open(file: string): Promise<PeopleWatch> {
    const watch = new PeopleWatch(file);
    await watch.#look();
    if (watch.people.length === 0)
      throw new Error(`${file} names nobody. Add people: crownfall people add ${file} NAME`);
    return watch;
  }

  close(): void {
    clearInterval(this.#timer);
  }

  /** A file that cannot be read for a moment (it is being replaced) leaves the people as they were. */
  async #look(): Promise<void> {
    const { mtimeMs, ino, size } = await stat(this.#file);
    const seen = `${mtimeMs} ${ino} ${size}`;
    if (seen === this.#seen) return;
    this.people = await readPeople(this.#file);
    this.#seen = seen;
  }
}
