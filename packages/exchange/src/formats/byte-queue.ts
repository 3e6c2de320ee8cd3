import type { ByteStream } from '../byte-stream.ts';

/** Takes so many bytes at a time from a stream. */
export interface ByteQueue {
  /** The next `length` bytes; null at the end of the stream. A stream that ends amid them throws a `ShortStream`. */
  take(length: number): Promise<Uint8Array | null>;
  /** Passes over bytes without holding them. */
  skip(length: number): Promise<void>;
  /** How many bytes were taken or passed over. */
  at(): number;
}

/** The stream ends amid something. */
class ShortStream extends Error {
  constructor(at: number, length: number, got: number) {
    super(`it ends after ${at + got} bytes, amid a part of ${length} bytes`);
  }
}

/** A queue over a stream. It never sets aside more memory than bytes have arrived, whatever length is asked for. */
export function byteQueue(bytes: ByteStream): ByteQueue {
  const stream = bytes[Symbol.asyncIterator]();
  let piece = new Uint8Array(0);
  let at = 0;

  async function more(): Promise<boolean> {
    while (piece.length === 0) {
      const next = await stream.next();
      if (next.done) return false;
      piece = next.value as Uint8Array<ArrayBuffer>;
    }
    return true;
  }

  async function gathered(length: number): Promise<Uint8Array> {
    const parts: Uint8Array[] = [];
    let got = 0;
    while (got < length) {
      if (!(await more())) throw new ShortStream(at, length, got);
      const part = piece.subarray(0, length - got);
      parts.push(part);
      got += part.length;
      piece = piece.subarray(part.length);
    }
    at += length;
    const whole = new Uint8Array(length);
    let to = 0;
    for (const part of parts) {
      whole.set(part, to);
      to += part.length;
    }
    return whole;
  }

  return {
    async take(length) {
      if (length > 0 && !(await more())) return null;
      return gathered(length);
    },
    async skip(length) {
      for (let left = length; left > 0; ) {
        if (!(await more())) throw new ShortStream(at, length, length - left);
        const passed = Math.min(left, piece.length);
        piece = piece.subarray(passed);
        left -= passed;
      }
      at += length;
    },
    at: () => at,
  };
}
