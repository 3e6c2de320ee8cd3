import { Tokenizer, TokenParser, TokenType } from '@streamparser/json';
import { type LinePosition, lineFollower } from './line-position.ts';
import { literalFilter } from './not-a-number.ts';

/** Where and why a text stopped being JSON. */
export interface JsonBreak extends LinePosition {
  /** `truncated`: right as far as it goes, but it ends too early. */
  readonly kind: 'invalid' | 'truncated';
  /** In bytes from the start of the file. */
  readonly offset: number;
  readonly got: string;
  /** What JSON wants at that place, mostly as the signs themselves. */
  readonly expected: string;
}

/** The place within its line, and why: `column 8: got }, expected "name"`. */
export function inWords({ column, got, expected }: JsonBreak): string {
  return `column ${column}: got ${got}, expected ${expected}`;
}

/** NaN and Infinity in place of numbers: how many, and where the first one is. */
export interface NotNumbers extends LinePosition {
  readonly count: number;
}

export interface JsonStream {
  /** Takes the next bytes (UTF-8, a byte order mark may lead); false once the text is broken: no use going on. */
  push(piece: Uint8Array): boolean;
  end(): { readonly broken: JsonBreak | null; readonly notNumbers: NotNumbers | null };
}

const NULL = new TextEncoder().encode('null');
/** Numbers are gathered in a buffer of this size, which about halves the time. */
const NUMBER_BUFFER_BYTES = 256;

/**
 * Parses JSON piece by piece and hands out the values at the given paths (`$.features.*`) as soon as each is complete,
 * keeping nothing else. Never throws for what the text holds: `end` tells where it broke. NaN and Infinity are taken as
 * null and counted.
 */
export function jsonStream(
  paths: readonly string[],
  onValue: (value: unknown, key: string | number | undefined, depth: number) => void,
): JsonStream {
  const tokenizer = new Tokenizer({ numberBufferSize: NUMBER_BUFFER_BYTES });
  const parser = new TokenParser({ paths: [...paths], keepStack: false });
  const lines = lineFollower();
  const open: ('{' | '[')[] = [];
  let last: TokenType | undefined;
  // The parser counts the bytes it was given; a literal replaced by `null` makes that differ from the file's own count.
  let shift = 0;
  let written = 0;
  let broken: JsonBreak | null = null;
  let notNumbers: NotNumbers | null = null;

  tokenizer.onToken = (info) => {
    const expected = expectedAfter(last, open);
    try {
      parser.write(info);
    } catch (error) {
      throw new Misplaced(info.offset + shift, String(info.value), expected, { cause: error });
    }
    if (info.token === TokenType.LEFT_BRACE) open.push('{');
    else if (info.token === TokenType.LEFT_BRACKET) open.push('[');
    else if (info.token === TokenType.RIGHT_BRACE || info.token === TokenType.RIGHT_BRACKET) open.pop();
    last = info.token;
  };
  parser.onValue = ({ value, key, stack }) => onValue(value, key, stack.length);

  function write(bytes: Uint8Array): void {
    if (broken) return;
    try {
      tokenizer.write(bytes);
      written += bytes.length;
    } catch (error) {
      broken = breakFrom(error, bytes);
    }
  }

  function breakFrom(error: unknown, bytes: Uint8Array): JsonBreak {
    if (error instanceof Misplaced) {
      return {
        kind: 'invalid',
        offset: error.offset,
        got: error.got,
        expected: error.expected,
        ...lines.at(error.offset),
      };
    }
    const inPiece = Number(/chunk position "(\d+)"/.exec(String((error as Error).message))?.[1] ?? 0);
    const offset = written + inPiece + shift;
    const got = String.fromCodePoint(bytes[inPiece]);
    return { kind: 'invalid', offset, got, expected: expectedAfter(last, open), ...lines.at(offset) };
  }

  const filter = literalFilter(
    (bytes, offset) => {
      shift = offset - written;
      write(bytes);
    },
    (offset) => {
      if (broken) return;
      notNumbers = { ...lines.at(offset), ...notNumbers, count: (notNumbers?.count ?? 0) + 1 };
      shift = offset - written;
      write(NULL);
    },
  );

  let total = 0;
  return {
    push(piece) {
      lines.advance(piece);
      total += piece.length;
      filter.push(piece);
      return broken === null;
    },
    end() {
      filter.end();
      if (!broken && !parser.isEnded) broken = { kind: 'truncated', offset: total, ...ending(), ...lines.at(total) };
      return { broken, notNumbers };
    },
  };

  function ending() {
    return { got: 'end of file', expected: [...open].reverse().map(closing).join('') || expectedAfter(last, open) };
  }
}

/** A token that is JSON, at a place where JSON wants another. */
class Misplaced extends Error {
  readonly offset: number;
  readonly got: string;
  readonly expected: string;
  constructor(offset: number, got: string, expected: string, options: ErrorOptions) {
    super(`unexpected ${got}`, options);
    this.offset = offset;
    this.got = got;
    this.expected = expected;
  }
}

function closing(bracket: '{' | '['): string {
  return bracket === '{' ? '}' : ']';
}

function expectedAfter(last: TokenType | undefined, open: readonly ('{' | '[')[]): string {
  const inside = open.at(-1);
  if (last === undefined) return '{';
  if (last === TokenType.LEFT_BRACE) return '"name" or }';
  if (last === TokenType.LEFT_BRACKET) return 'value or ]';
  if (last === TokenType.COLON) return 'value';
  if (last === TokenType.COMMA) return inside === '{' ? '"name"' : 'value';
  if (inside === undefined) return 'end of file';
  return `, or ${closing(inside)} (or : after a "name")`;
}
