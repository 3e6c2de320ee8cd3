/**
 * NaN, Infinity and -Infinity are not JSON (RFC 8259, section 6), yet many programs write them. This passes a stream on
 * with each of them replaced by `null`, so that one missing figure does not cost the rest of the file.
 */
const LITERALS = ['NaN', 'Infinity', '-Infinity'].map((text) => new TextEncoder().encode(text));
const LONGEST = 9;
const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const CAPITAL_N = 0x4e;
const CAPITAL_I = 0x49;
const MINUS = 0x2d;
const NOTHING = new Uint8Array(0);

export interface LiteralFilter {
  /** Hands on the piece's bytes, and tells where such a literal stood instead of handing it on. */
  push(piece: Uint8Array): void;
  /** Hands on what was held back to see whether it becomes a literal. */
  end(): void;
}

/**
 * A filter at the start of a JSON text. `pass` gets the bytes in between with the offset of their first byte;
 * `literal` gets the offset of each literal.
 */
export function literalFilter(
  pass: (bytes: Uint8Array, offset: number) => void,
  literal: (offset: number) => void,
): LiteralFilter {
  let offset = 0;
  let held = NOTHING;
  let inString = false;
  let escaped = false;

  function scan(bytes: Uint8Array, last: boolean): void {
    let from = 0;
    let i = 0;
    for (; i < bytes.length; i++) {
      const byte = bytes[i];
      if (inString) {
        if (escaped) escaped = false;
        else if (byte === BACKSLASH) escaped = true;
        else if (byte === QUOTE) inString = false;
      } else if (byte === QUOTE) inString = true;
      else if (byte === CAPITAL_N || byte === CAPITAL_I || byte === MINUS) {
        const length = literalAt(bytes, i);
        if (length === 0 && !last && bytes.length - i < LONGEST && mayBecomeLiteral(bytes, i)) break;
        if (length === 0) continue;
        if (i > from) pass(bytes.subarray(from, i), offset + from);
        literal(offset + i);
        from = i + length;
        i = from - 1;
      }
    }
    if (i > from) pass(bytes.subarray(from, i), offset + from);
    offset += i;
    held = bytes.slice(i);
  }

  return {
    push(piece) {
      if (held.length === 0) return scan(piece, false);
      const bytes = new Uint8Array(held.length + piece.length);
      bytes.set(held);
      bytes.set(piece, held.length);
      scan(bytes, false);
    },
    end: () => scan(held, true),
  };
}

function literalAt(bytes: Uint8Array, at: number): number {
  for (const literal of LITERALS) if (literal.every((byte, i) => bytes[at + i] === byte)) return literal.length;
  return 0;
}

function mayBecomeLiteral(bytes: Uint8Array, at: number): boolean {
  return LITERALS.some((literal) => {
    for (let i = at; i < bytes.length; i++) if (bytes[i] !== literal[i - at]) return false;
    return true;
  });
}
