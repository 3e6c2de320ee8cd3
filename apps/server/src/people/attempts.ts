/** Counts failed log-ins and tells when to wait. */

/** Failures within the window after which further attempts are refused until it has passed. */
const ALLOWED = 10;
const WINDOW_MS = 5 * 60_000;
/** Keys remembered at most; the oldest go first, so that strangers cannot fill the memory. */
const REMEMBERED = 10_000;

interface Failures {
  readonly since: number;
  readonly count: number;
}

export class Attempts {
  readonly #failures = new Map<string, Failures>();
  readonly #now: () => number;

  /** `now` in milliseconds. */
  constructor(now: () => number) {
    this.#now = now;
  }

  /** Seconds to wait before the next attempt under any of these keys (an address, a person); 0 when it may be made. */
  wait(keys: readonly string[]): number {
    return Math.max(0, ...keys.map((key) => this.#waitOf(key)));
  }

  failed(keys: readonly string[]): void {
    for (const key of keys) {
      const known = this.#current(key);
      this.#failures.delete(key);
      this.#failures.set(key, { since: known?.since ?? this.#now(), count: (known?.count ?? 0) + 1 });
    }
    for (const key of this.#failures.keys()) {
      if (this.#failures.size <= REMEMBERED) break;
      this.#failures.delete(key);
    }
  }

  #waitOf(key: string): number {
    const known = this.#current(key);
    if (known === undefined || known.count < ALLOWED) return 0;
    return Math.ceil((known.since + WINDOW_MS - this.#now()) / 1000);
  }

  #current(key: string): Failures | undefined {
    const known = this.#failures.get(key);
    return known !== undefined && known.since + WINDOW_MS > this.#now() ? known : undefined;
  }
}
