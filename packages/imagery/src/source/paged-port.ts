/** A port whose small reads, those of directories and tags, are answered from pages kept in memory. */
import type { BytesPort } from './bytes-port.ts';

const PAGE_BYTES = 65_536;
/** 4 MB at most. */
const PAGES_KEPT = 64;

/** The same bytes in pages of 64 KB, the last 64 of them kept; concurrent reads of a page share one request. */
export function pagedPort(port: BytesPort): BytesPort {
  const pages = new Map<number, Promise<Uint8Array>>();
  const page = (number: number): Promise<Uint8Array> => {
    const kept = pages.get(number);
    if (kept) return kept;
    const read = port.read(number * PAGE_BYTES, PAGE_BYTES);
    pages.set(number, read);
    read.catch(() => pages.delete(number));
    if (pages.size > PAGES_KEPT) pages.delete(pages.keys().next().value as number);
    return read;
  };
  return {
    get size() {
      return port.size;
    },
    read: async (offset, length) => {
      const first = Math.floor(offset / PAGE_BYTES);
      const last = Math.floor((offset + Math.max(length, 1) - 1) / PAGE_BYTES);
      if (last - first >= PAGES_KEPT) return port.read(offset, length);
      const parts = await Promise.all(Array.from({ length: last - first + 1 }, (_, i) => page(first + i)));
      return joined(parts)
        .subarray(offset - first * PAGE_BYTES)
        .subarray(0, length);
    },
  };
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  if (parts.length === 1) return parts[0];
  const out = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}
