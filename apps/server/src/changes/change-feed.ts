/** The journal's news for all who listen: read once, told to each. */
import type { Change, ProjectStore } from '@crownfall/exchange';

/** Changes kept at hand; who is further behind reads from the store. */
const AT_HAND = 2000;
const PORTION = 1000;

export type Listener = (changes: readonly Change[]) => void;

export class ChangeFeed {
  readonly #store: ProjectStore;
  readonly #listeners = new Set<Listener>();
  #recent: Change[] = [];
  #last = 0;

  constructor(store: ProjectStore) {
    this.#store = store;
  }

  /** Number of the newest change that listeners have been told. */
  get last(): number {
    return this.#last;
  }

  get listeners(): number {
    return this.#listeners.size;
  }

  /** News is what comes after now. */
  async start(): Promise<void> {
    this.#last = await this.#store.lastChange();
  }

  /** Reads what is new and tells it to the listeners, in order. */
  async look(): Promise<readonly Change[]> {
    const news: Change[] = [];
    for (;;) {
      const portion = await this.#store.changes(this.#last, PORTION);
      if (portion.length === 0) return news;
      this.#last = portion[portion.length - 1].change;
      news.push(...portion);
      this.#recent = [...this.#recent, ...portion].slice(-AT_HAND);
      for (const listener of this.#listeners) listener(portion);
    }
  }

  /**
   * Tells all changes after number `since`, then every new one. Nothing is told twice or left out: what is read from the
   * store ends at a number that had been told by then, and the rest comes from those at hand. Answers how to stop.
   */
  async listen(since: number, listener: Listener): Promise<() => void> {
    let from = since;
    while (from < this.#last && (this.#recent.length === 0 || this.#recent[0].change > from + 1)) {
      const portion = await this.#store.changes(from, PORTION);
      if (portion.length === 0) break;
      from = portion[portion.length - 1].change;
      listener(portion);
    }
    // No waiting between here and the end: news cannot come in between.
    const missed = this.#recent.filter(({ change }) => change > from);
    if (missed.length > 0) listener(missed);
    const upTo = Math.max(from, this.#last);
    const onlyNew: Listener = (changes) => {
      const later = changes.filter(({ change }) => change > upTo);
      if (later.length > 0) listener(later);
    };
    this.#listeners.add(onlyNew);
    return () => this.#listeners.delete(onlyNew);
  }

  close(): void {
    this.#listeners.clear();
  }
}
