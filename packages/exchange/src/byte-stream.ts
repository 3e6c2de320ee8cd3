/** Bytes as they arrive from a disk, a network or a browser's file: in pieces, read once. */
export type ByteStream = AsyncIterable<Uint8Array>;

/** The first bytes of a stream in one piece, and the whole stream again from its start. */
export interface Gathered {
  readonly head: Uint8Array;
  /** True when `head` is everything there was. */
  readonly complete: boolean;
  readonly all: ByteStream;
}

/**
 * Reads a stream until it ends or has given more than `limit` bytes, whichever comes first, and loses none of it. An
 * empty stream gives an empty, complete head.
 */
export async function gather(stream: ByteStream, limit: number): Promise<Gathered> {
  const rest = stream[Symbol.asyncIterator]();
  const pieces: Uint8Array[] = [];
  let bytes = 0;
  let complete = false;
  while (bytes <= limit && !complete) {
    const next = await rest.next();
    complete = next.done === true;
    if (next.done) break;
    pieces.push(next.value);
    bytes += next.value.length;
  }
  if (complete) {
    const head = joined(pieces, bytes);
    return { head, complete, all: oneChunk(head) };
  }
  // Only the sniffing needs the head in one piece: the pieces themselves are replayed and let go one by one.
  const head = joined(pieces.slice(0, 16), Math.min(bytes, sizeOf(pieces.slice(0, 16))));
  return { head, complete, all: replay(pieces, rest) };
}

/** A stream that gives one piece. */
export async function* oneChunk(bytes: Uint8Array): ByteStream {
  yield bytes;
}

async function* replay(pieces: Uint8Array[], rest: AsyncIterator<Uint8Array>): ByteStream {
  for (let piece = pieces.shift(); piece; piece = pieces.shift()) yield piece;
  for (let next = await rest.next(); !next.done; next = await rest.next()) yield next.value;
}

function sizeOf(pieces: readonly Uint8Array[]): number {
  return pieces.reduce((sum, piece) => sum + piece.length, 0);
}

function joined(pieces: readonly Uint8Array[], bytes: number): Uint8Array {
  if (pieces.length === 1) return pieces[0];
  const whole = new Uint8Array(bytes);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
