/** A record without the fields that are `undefined`: an absent field is absent, not empty. */
export function present<T extends object>(fields: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  const known = Object.entries(fields).filter(([, value]) => value !== undefined);
  return Object.fromEntries(known) as { [K in keyof T]?: Exclude<T[K], undefined> };
}
