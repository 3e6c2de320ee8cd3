/** Rows of a dBASE table (.dbf, levels III to 5 and FoxPro's headers), one at a time. */
import type { ByteQueue } from '../byte-queue.ts';

export interface DbaseTable {
  /** The next row; null after the last. A row marked as deleted is empty of values, so that rows and shapes stay together. */
  next(): Promise<Record<string, unknown> | null>;
}

interface Field {
  readonly name: string;
  readonly type: string;
  readonly at: number;
  readonly length: number;
}

const HEADER_BYTES = 32;
const FIELD_BYTES = 32;
const FIELDS_END = 0x0d;
const FILE_END = 0x1a;
const DELETED = 0x2a;

/** Opens a table whose text is in the given encoding (a label of `TextDecoder`). Throws a `RangeError` for no table. */
export async function dbaseTable(queue: ByteQueue, encoding: string): Promise<DbaseTable> {
  const header = await queue.take(HEADER_BYTES);
  if (header === null) throw new RangeError('the table is empty');
  const view = new DataView(header.buffer, header.byteOffset);
  const rowCount = view.getUint32(4, true);
  const headerBytes = view.getUint16(8, true);
  const rowBytes = view.getUint16(10, true);
  if (headerBytes < HEADER_BYTES || rowBytes < 1) throw new RangeError('the table has no header');
  const decoder = new TextDecoder(encoding);
  const fields = fieldsOf((await queue.take(headerBytes - HEADER_BYTES)) ?? new Uint8Array(0), decoder, rowBytes);
  let row = 0;
  return {
    async next() {
      if (row >= rowCount) return null;
      const bytes = await queue.take(rowBytes);
      if (bytes === null || bytes[0] === FILE_END) return null;
      row++;
      if (bytes[0] === DELETED) return {};
      return Object.fromEntries(fields.map((field) => [field.name, cellOf(field, bytes, decoder)]));
    },
  };
}

type Decoder = InstanceType<typeof TextDecoder>;

function fieldsOf(bytes: Uint8Array, decoder: Decoder, rowBytes: number): Field[] {
  const fields: Field[] = [];
  let at = 1;
  for (let i = 0; i + FIELD_BYTES <= bytes.length && bytes[i] !== FIELDS_END; i += FIELD_BYTES) {
    const nameBytes = bytes.subarray(i, i + 11);
    const end = nameBytes.indexOf(0);
    const type = String.fromCharCode(bytes[i + 11]);
    // Long texts keep the high byte of their length where numbers keep their decimals.
    const length = bytes[i + 16] + (type === 'C' ? 256 * bytes[i + 17] : 0);
    if (at + length > rowBytes) throw new RangeError('the fields of the table are longer than its rows');
    const name = decoder.decode(end < 0 ? nameBytes : nameBytes.subarray(0, end)).trim();
    fields.push({ name: freeName(name || `column_${fields.length + 1}`, fields), type, at, length });
    at += length;
  }
  return fields;
}

function freeName(name: string, fields: readonly Field[]): string {
  let free = name;
  for (let n = 2; fields.some((field) => field.name === free); n++) free = `${name}_${n}`;
  return free;
}

/** Blank is no value; a number that does not parse (`****` is one too long for its field) is no value either. */
function cellOf({ type, at, length }: Field, row: Uint8Array, decoder: Decoder): unknown {
  const bytes = row.subarray(at, at + length);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (type === 'I' || type === '+') return length === 4 ? view.getInt32(0, true) : null;
  if ((type === 'O' || type === 'B') && length === 8) return view.getFloat64(0, true);
  const text = decoder.decode(bytes).replaceAll('\0', ' ').trimEnd();
  if (text.trim() === '') return null;
  if (type === 'N' || type === 'F') return numberOrNull(text.trim());
  if (type === 'D') return /^(?!0000)\d{8}$/.test(text) ? text.replace(/(....)(..)(..)/, '$1-$2-$3') : null;
  if (type === 'L') return /^[yt]$/i.test(text) ? true : /^[nf]$/i.test(text) ? false : null;
  return type === 'C' ? text : null;
}

/** Some programs write a decimal comma. */
function numberOrNull(text: string): number | null {
  const number = Number(text.replace(',', '.'));
  return Number.isFinite(number) ? number : null;
}
