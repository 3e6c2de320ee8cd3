/**
 * Image file directories of TIFF, little-endian (Adobe, TIFF Revision 6.0, 1992, section 2): twelve bytes per entry in ascending
 * order of tags, values longer than four bytes placed after the directory. BigTIFF (libtiff's design of 2007, "The BigTIFF File
 * Format") is the same with eight bytes for counts, offsets and values.
 */
const BYTES = { ascii: 1, short: 2, long: 4, long8: 8, double: 8 } as const;
const CODES = { ascii: 2, short: 3, long: 4, long8: 16, double: 12 } as const;

export interface TiffField {
  readonly tag: number;
  readonly type: keyof typeof BYTES;
  /** Text for `ascii` (its closing zero is added), else numbers. */
  readonly value: string | readonly number[] | Uint32Array | Float64Array;
}

/** Sizes in bytes of what differs between the two forms. */
interface Form {
  readonly entries: number;
  readonly entry: number;
  readonly offset: number;
}

const CLASSIC: Form = { entries: 2, entry: 12, offset: 4 };
const BIG: Form = { entries: 8, entry: 20, offset: 8 };

/** Bytes that a directory takes together with its long values, each starting on an even offset. */
export function directorySize(fields: readonly TiffField[], big = false): number {
  const form = big ? BIG : CLASSIC;
  const own = form.entries + form.entry * fields.length + form.offset;
  return fields.reduce((sum, field) => sum + outsideBytes(field, form), own);
}

/** Writes a directory at `offset`; `next` is the offset of the following one, 0 for the last. */
export function writeDirectory(
  view: DataView,
  offset: number,
  fields: readonly TiffField[],
  next: number,
  big = false,
): void {
  const form = big ? BIG : CLASSIC;
  const sorted = fields.toSorted((a, b) => a.tag - b.tag);
  let entry = offset + form.entries;
  let outside = entry + form.entry * sorted.length + form.offset;
  if (big) writeLong8(view, offset, sorted.length);
  else view.setUint16(offset, sorted.length, true);
  for (const field of sorted) {
    view.setUint16(entry, field.tag, true);
    view.setUint16(entry + 2, CODES[field.type], true);
    writeOffset(view, entry + 4, countOf(field), form);
    const inside = entry + 4 + form.offset;
    if (outsideBytes(field, form) === 0) {
      writeValue(view, inside, field);
    } else {
      writeOffset(view, inside, outside, form);
      writeValue(view, outside, field);
      outside += outsideBytes(field, form);
    }
    entry += form.entry;
  }
  writeOffset(view, entry, next, form);
}

/** The first bytes of a file: byte order, version and the offset of the first directory. Returns how many there are. */
export function writeHeader(view: DataView, firstDirectory: number, big: boolean): number {
  view.setUint16(0, 0x4949, true);
  view.setUint16(2, big ? 43 : 42, true);
  if (!big) {
    view.setUint32(4, firstDirectory, true);
    return 8;
  }
  view.setUint16(4, 8, true);
  writeLong8(view, 8, firstDirectory);
  return 16;
}

function countOf(field: TiffField): number {
  return field.value.length + (typeof field.value === 'string' ? 1 : 0);
}

function outsideBytes(field: TiffField, form: Form): number {
  const bytes = countOf(field) * BYTES[field.type];
  return bytes <= form.offset ? 0 : bytes + (bytes % 2);
}

function writeOffset(view: DataView, at: number, value: number, form: Form): void {
  if (form.offset === 8) writeLong8(view, at, value);
  else view.setUint32(at, value, true);
}

function writeLong8(view: DataView, at: number, value: number): void {
  view.setBigUint64(at, BigInt(value), true);
}

function writeValue(view: DataView, offset: number, field: TiffField): void {
  const { value, type } = field;
  for (let i = 0; i < value.length; i++) {
    const item = typeof value === 'string' ? value.charCodeAt(i) : value[i];
    const at = offset + i * BYTES[type];
    if (type === 'ascii') view.setUint8(at, item);
    else if (type === 'short') view.setUint16(at, item, true);
    else if (type === 'long') view.setUint32(at, item, true);
    else if (type === 'long8') writeLong8(view, at, item);
    else view.setFloat64(at, item, true);
  }
}
