/** A place in a text file as an editor shows it: both count from 1, the column in characters. */
export interface LinePosition {
  readonly line: number;
  readonly column: number;
}

const NEWLINE = 0x0a;

/** Faults are told a little after their place: so many bytes before the last piece can still be told. */
const KEPT_BYTES = 4096;

/** Follows a UTF-8 stream and tells line and column of an offset in its last pieces. */
export interface LineFollower {
  advance(piece: Uint8Array): void;
  /** Offsets older than the pieces kept are told as the oldest place still known. */
  at(offset: number): LinePosition;
}

/** A follower at the start of a stream. It keeps the last pieces, and of all earlier ones only a count. */
export function lineFollower(): LineFollower {
  const kept: Uint8Array[] = [];
  let keptFrom = 0;
  let keptBytes = 0;
  let start: LinePosition = { line: 1, column: 1 };
  return {
    advance(piece) {
      // The oldest piece is let go once the others, without the new one, reach back far enough.
      const old = kept[0];
      if (old !== undefined && keptBytes - old.length >= KEPT_BYTES) {
        start = walk(start, old, old.length);
        keptFrom += old.length;
        keptBytes -= old.length;
        kept.shift();
      }
      kept.push(piece);
      keptBytes += piece.length;
    },
    at(offset) {
      let position = start;
      let left = offset - keptFrom;
      for (const piece of kept) {
        if (left <= 0) break;
        position = walk(position, piece, Math.min(left, piece.length));
        left -= piece.length;
      }
      return position;
    },
  };
}

function walk(from: LinePosition, piece: Uint8Array, length: number): LinePosition {
  let line = from.line;
  let column = from.column;
  let at = 0;
  for (let next = piece.indexOf(NEWLINE); next >= 0 && next < length; next = piece.indexOf(NEWLINE, at)) {
    line++;
    column = 1;
    at = next + 1;
  }
  // A byte 10xxxxxx continues a character (RFC 3629, section 3).
  for (; at < length; at++) if ((piece[at] & 0xc0) !== 0x80) column++;
  return { line, column };
}
