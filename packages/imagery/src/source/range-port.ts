/** Bytes of a file on a server, by range requests (RFC 9110, section 14). */
import type { BytesPort, Cancellation } from './bytes-port.ts';

/** Of the platform's `fetch`, what is used here. */
export type FetchLike = (
  url: string,
  options: { readonly headers: Readonly<Record<string, string>>; readonly signal?: never },
) => Promise<ResponseLike>;

export interface ResponseLike {
  readonly status: number;
  readonly headers: { get(name: string): string | null };
  arrayBuffer(): Promise<ArrayBuffer>;
}

/**
 * A port over a file on a server. The size becomes known with the first answer, from its `Content-Range`.
 *
 * `read` throws an Error, with the cause where there is one, when the server cannot be reached, does not answer ranges
 * (status 200 in place of 206: the whole file would have come) or refuses.
 */
export function rangePort(url: string, fetchRange: FetchLike): BytesPort {
  let size: number | null = null;
  return {
    get size() {
      return size;
    },
    read: async (offset, length, signal) => {
      if (length <= 0) return new Uint8Array(0);
      const answer = await asked(url, fetchRange, `bytes=${offset}-${offset + length - 1}`, signal);
      if (answer.status === 416) return new Uint8Array(0);
      size ??= sizeIn(answer.headers.get('content-range'));
      return new Uint8Array(await answer.arrayBuffer());
    },
  };
}

async function asked(
  url: string,
  fetchRange: FetchLike,
  range: string,
  signal: Cancellation | undefined,
): Promise<ResponseLike> {
  const answer = await fetchRange(url, { headers: { Range: range }, signal: signal as never }).catch((cause) => {
    throw new Error(`${url} could not be reached`, { cause });
  });
  if (answer.status === 200) {
    throw new Error(`${url}: the server does not answer range requests, so windows of the image cannot be read`);
  }
  if (answer.status !== 206 && answer.status !== 416) throw new Error(`${url}: the server answered ${answer.status}`);
  return answer;
}

/** `bytes 0-1023/146515` → 146515. */
function sizeIn(contentRange: string | null): number | null {
  const total = /\/(\d+)\s*$/.exec(contentRange ?? '')?.[1];
  return total === undefined ? null : Number(total);
}
