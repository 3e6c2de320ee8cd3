import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import type { ByteStream } from '../byte-stream.ts';
import { Outage } from './outage.ts';

/** A file that is hashed while it is read. */
export interface HashedFile {
  readonly bytes: ByteStream;
  /** Its SHA-256 (FIPS 180-4) and size; right only after the stream was read to its end. */
  source(): { readonly file: string; readonly sha256: string; readonly bytes: number };
}

const PIECE_BYTES = 1 << 18;

/** Opens a file for reading once. `name` is what the user calls it. A failing disk throws an `Outage`. */
export function hashedFile(path: string, name: string): HashedFile {
  const hash = createHash('sha256');
  let size = 0;
  async function* read(): ByteStream {
    try {
      for await (const piece of createReadStream(path, { highWaterMark: PIECE_BYTES })) {
        hash.update(piece);
        size += piece.length;
        yield piece;
      }
    } catch (error) {
      throw new Outage(`cannot read ${name}`, error);
    }
  }
  return { bytes: read(), source: () => ({ file: name, sha256: hash.digest('hex'), bytes: size }) };
}
