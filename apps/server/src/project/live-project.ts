/** A project while it is served: its store, the figures that follow it, the feed that tells of changes. */
import type { ProjectStore, Writer } from '@crownfall/exchange';
import { ChangeFeed } from '../changes/change-feed.ts';
import { Refusal } from '../http/refusal.ts';
import type { Asker } from '../people/gate.ts';
import type { FollowingFigures } from '../reckoning/following-figures.ts';

/** How often the journal is asked whether another program wrote. */
const WATCH_MS = 1000;
/** What the journal notes beside records: no figure depends on it. */
const WITHOUT_FIGURES = ['results', 'visits', 'conflicts'];

export class LiveProject {
  readonly figures: FollowingFigures;
  readonly feed: ChangeFeed | null;
  readonly #store: ProjectStore | null;
  #watch: NodeJS.Timeout | null = null;
  #looking = false;
  #again = false;

  /** `store` null for a project that is only read. */
  constructor(figures: FollowingFigures, store: ProjectStore | null) {
    this.figures = figures;
    this.#store = store;
    this.feed = store && new ChangeFeed(store);
  }

  /** Starts looking out for changes by other programs. */
  async follow(): Promise<void> {
    await this.feed?.start();
    if (this.#store !== null) this.#watch = setInterval(() => this.look(), WATCH_MS);
  }

  /** Whether there are records to ask for one by one. */
  get storing(): boolean {
    return this.#store !== null;
  }

  get writable(): boolean {
    return this.#store !== null && !this.#store.readOnly;
  }

  /** The store, to read from; a refusal for a project without one. */
  reading(): ProjectStore {
    if (this.#store !== null) return this.#store;
    throw new Refusal(409, 'no-records', `This project is a folder and only read here. ${REMEDY}`);
  }

  /** The store, to write to. */
  writing(): ProjectStore {
    const store = this.reading();
    if (store.readOnly)
      throw new Refusal(409, 'read-only', 'This project can only be read: its file is write-protected.');
    return store;
  }

  /** Whether the project can be read now: its store answers. */
  async answers(): Promise<boolean> {
    if (this.#store === null) return true;
    try {
      await this.#store.lastChange();
      return true;
    } catch {
      return false;
    }
  }

  /** Asks the journal for news and tells figures and listeners; to be called after every write. */
  look(): void {
    if (this.feed === null) return;
    if (this.#looking) this.#again = true;
    else void this.#look(this.feed);
  }

  async #look(feed: ChangeFeed): Promise<void> {
    this.#looking = true;
    try {
      do {
        this.#again = false;
        const news = await feed.look();
        if (news.some(({ layer }) => !WITHOUT_FIGURES.includes(layer))) this.figures.edited();
      } while (this.#again);
    } catch {
      // The store does not answer: readiness says so, and the next look tries again.
    } finally {
      this.#looking = false;
    }
  }

  async close(): Promise<void> {
    if (this.#watch !== null) clearInterval(this.#watch);
    this.feed?.close();
    await this.figures.close();
    await this.#store?.close();
  }
}

const REMEDY = 'To edit it together, convert it: crownfall convert PROJECT --to project.gpkg';

/** The asker as the journal knows them. */
export const writerOf = (asker: Asker): Writer => ({ author: asker.name, at: new Date().toISOString() });
