/** The ids that other layers may refer to, with the nearest in spelling for those that are not among them. */
export class KnownIds {
  readonly #ids: ReadonlySet<string>;
  readonly #folded = new Map<string, string>();

  constructor(ids: Iterable<string>) {
    this.#ids = new Set(ids);
    for (const id of this.#ids) if (!this.#folded.has(folded(id))) this.#folded.set(folded(id), id);
  }

  has(id: string): boolean {
    return this.#ids.has(id);
  }

  /** An id that differs only in case, blanks, hyphens, leading zeros or a spreadsheet's `.0`. */
  similar(id: string): string | undefined {
    return this.#folded.get(folded(id));
  }
}

function folded(id: string): string {
  return id
    .toLowerCase()
    .replace(/\.0+$/, '')
    .replace(/[\s_-]+/g, '')
    .replace(/(^|\D)0+(?=\d)/g, '$1');
}
