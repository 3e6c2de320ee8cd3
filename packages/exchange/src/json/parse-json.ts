import { type DecodedText, decodeText } from '../decode-text.ts';
import { type JsonBreak, jsonStream } from './json-stream.ts';

/** A small JSON file, parsed, or the place where it breaks. */
export interface ParsedJson extends DecodedText {
  readonly value: unknown;
  readonly broken: JsonBreak | null;
}

/**
 * Parses a JSON file held in memory. Never throws for what the file holds: `broken` tells the place in the same words in
 * every engine. An empty file is truncated at its first character.
 */
export function parseJson(bytes: Uint8Array): ParsedJson {
  const decoded = decodeText(bytes);
  try {
    return { ...decoded, value: JSON.parse(decoded.text), broken: null };
  } catch {
    return { ...decoded, value: undefined, broken: whereJsonBreaks(decoded.text) };
  }
}

function whereJsonBreaks(text: string): JsonBreak {
  const stream = jsonStream([], () => {});
  stream.push(new TextEncoder().encode(text));
  const { broken, notNumbers } = stream.end();
  if (broken) return broken;
  const { line, column } = notNumbers ?? { line: 1, column: 1 };
  return { kind: 'invalid', line, column, offset: 0, got: 'NaN or Infinity', expected: 'number or null' };
}
