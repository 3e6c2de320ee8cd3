/** Where work in progress is kept, so that an interrupted run goes on where it stopped. A folder, usually. */
export interface PartStore {
  /** The whole of a small part; null when there is none. */
  readonly text: (part: string) => Promise<string | null>;
  /** Replaces a small part as a whole. */
  readonly setText: (part: string, text: string) => Promise<void>;
  /** Bytes in a part; 0 when there is none. */
  readonly size: (part: string) => Promise<number>;
  readonly append: (part: string, bytes: Uint8Array) => Promise<void>;
  /** Cuts a part off after `size` bytes. */
  readonly truncate: (part: string, size: number) => Promise<void>;
  readonly read: (part: string, offset: number, length: number) => Promise<Uint8Array>;
  /** Removes all parts. */
  readonly clear: () => Promise<void>;
}

/** A store in memory, for small images and tests. */
export function memoryParts(): PartStore {
  const texts = new Map<string, string>();
  const parts = new Map<string, Uint8Array>();
  const bytes = (part: string) => parts.get(part) ?? new Uint8Array(0);
  return {
    text: async (part) => texts.get(part) ?? null,
    setText: async (part, text) => void texts.set(part, text),
    size: async (part) => bytes(part).length,
    append: async (part, more) => {
      const joined = new Uint8Array(bytes(part).length + more.length);
      joined.set(bytes(part));
      joined.set(more, bytes(part).length);
      parts.set(part, joined);
    },
    truncate: async (part, size) => void parts.set(part, bytes(part).slice(0, size)),
    read: async (part, offset, length) => bytes(part).slice(offset, offset + length),
    clear: async () => {
      texts.clear();
      parts.clear();
    },
  };
}
