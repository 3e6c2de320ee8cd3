/** The earlier value where a later one says the same, so that whoever asks what changed can tell by identity. */

/** A list whose entries are those of an earlier one wherever they say the same; entries are matched by their key. */
export function keptList<T>(before: readonly T[] | undefined, after: readonly T[], keyOf: (entry: T) => string): T[] {
  if (before === undefined) return [...after];
  let byKey: ReadonlyMap<string, T> | null = null;
  return after.map((entry, i) => {
    const key = keyOf(entry);
    const there = before[i];
    if (there !== undefined && keyOf(there) === key) return kept(there, entry);
    byKey ??= new Map(before.map((each) => [keyOf(each), each]));
    return kept(byKey.get(key), entry);
  });
}

function kept<T>(before: T | undefined, after: T): T {
  return before !== undefined && isSame(before, after) ? before : after;
}

/** Plain data says the same when its parts do; anything else only when it is the same. */
function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (Array.isArray(a)) return Array.isArray(b) && a.length === b.length && a.every((each, i) => isSame(each, b[i]));
  if (!isPlain(a) || !isPlain(b)) return false;
  for (const key in a) if (!isSame(a[key], b[key])) return false;
  for (const key in b) if (!(key in a)) return false;
  return true;
}

function isPlain(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;
}
