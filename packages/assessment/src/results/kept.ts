/** Lists whose entries are the objects given before wherever they say the same, so that what changed can be told by identity. */

/** The entries of an earlier list by key: those at the same place are found at once, others looked up. */
export class Earlier<T> {
  readonly #entries: readonly T[];
  readonly #keyOf: (entry: T) => string;
  #byKey: ReadonlyMap<string, T> | null = null;

  constructor(entries: readonly T[], keyOf: (entry: T) => string) {
    this.#entries = entries;
    this.#keyOf = keyOf;
  }

  find(key: string, place: number): T | undefined {
    const there = this.#entries[place];
    if (there !== undefined && this.#keyOf(there) === key) return there;
    this.#byKey ??= new Map(this.#entries.map((entry) => [this.#keyOf(entry), entry]));
    return this.#byKey.get(key);
  }
}

/** Whether two pieces of plain data say the same; anything but plain data only when it is the same. */
export function saysTheSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (Array.isArray(a))
    return Array.isArray(b) && a.length === b.length && a.every((each, i) => saysTheSame(each, b[i]));
  if (!isPlain(a) || !isPlain(b)) return false;
  for (const key in a) if (!saysTheSame(a[key], b[key])) return false;
  for (const key in b) if (!(key in a)) return false;
  return true;
}

function isPlain(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;
}
