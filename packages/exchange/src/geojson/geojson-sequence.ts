import { finding } from '@crownfall/survey';
import type { ByteStream } from '../byte-stream.ts';
import { decodeText } from '../decode-text.ts';
import { inWords } from '../json/json-stream.ts';
import { parseJson } from '../json/parse-json.ts';
import type { FeatureTaker } from './feature-taker.ts';

/** RFC 8142 leads each text with this; newline-delimited JSON has none. */
const RECORD_SEPARATOR = 0x1e;
const NEWLINE = 0x0a;
/** A first line longer than this is not looked at: the file is then taken for one JSON text. */
const SNIFFED_BYTES = 4 << 20;

/**
 * Whether a file is a sequence of GeoJSON texts: it starts with a record separator, or its first line is a whole object
 * with a `type` and another object follows.
 */
export function isSequence(head: Uint8Array, complete: boolean): boolean {
  const start = firstByte(head);
  if (head[start] === RECORD_SEPARATOR) return true;
  const end = head.indexOf(NEWLINE, start);
  if (end < 0 || end - start > SNIFFED_BYTES) return false;
  const next = firstByte(head, end);
  if (next >= head.length ? complete : head[next] !== 0x7b) return false;
  try {
    const first = JSON.parse(decodeText(head.subarray(start, end)).text) as { type?: unknown } | null;
    return typeof first?.type === 'string';
  } catch {
    return false;
  }
}

/**
 * Takes in a sequence, one text at a time; a broken text is told with its line and left out, the others are kept. Row
 * counts the texts. A bare geometry counts as a feature without properties.
 */
export async function readSequence(bytes: ByteStream, collector: FeatureTaker): Promise<void> {
  let row = 0;
  let line = 1;
  let separator: number | undefined;
  let held: Uint8Array[] = [];

  function take(text: Uint8Array, last: boolean): void {
    const firstLine = line;
    for (let at = text.indexOf(NEWLINE); at >= 0; at = text.indexOf(NEWLINE, at + 1)) line++;
    if (separator === NEWLINE) line++;
    if (firstByte(text) >= text.length) return;
    row++;
    const { value, broken } = parseJson(text);
    if (!broken) {
      collector.addFeature(asFeature(value), row);
      return;
    }
    const at = firstLine + broken.line - 1;
    const problem = inWords(broken);
    const where = { ...collector.place, feature: `#${row}` };
    const cut = last && broken.kind === 'truncated';
    collector.findings.add(
      cut
        ? finding('file-truncated', 'warning/left_out', where, { problem: `line ${at}, ${problem}` })
        : finding('not-json', 'warning/left_out', where, { problem, line: at }),
    );
  }

  for await (const piece of bytes) {
    separator ??= piece[firstByte(piece)] === RECORD_SEPARATOR ? RECORD_SEPARATOR : NEWLINE;
    let from = 0;
    for (let end = piece.indexOf(separator); end >= 0; end = piece.indexOf(separator, from)) {
      held.push(piece.subarray(from, end));
      take(held.length === 1 ? held[0] : concatenated(held), false);
      held = [];
      from = end + 1;
    }
    if (from < piece.length) held.push(piece.slice(from));
    await collector.ready();
  }
  take(concatenated(held), true);
}

function asFeature(value: unknown): unknown {
  const type = (value as { type?: unknown } | null)?.type;
  return type === undefined || type === 'Feature' ? value : { type: 'Feature', properties: {}, geometry: value };
}

/** The first byte from `at` that is no white space and no byte order mark. */
function firstByte(bytes: Uint8Array, at = 0): number {
  let i = at;
  if (bytes[i] === 0xef && bytes[i + 1] === 0xbb && bytes[i + 2] === 0xbf) i += 3;
  while (i < bytes.length && (bytes[i] === 0x20 || (bytes[i] >= 0x09 && bytes[i] <= 0x0d))) i++;
  return i;
}

function concatenated(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
