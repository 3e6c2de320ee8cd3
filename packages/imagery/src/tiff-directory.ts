/**
 * Image file directories of classic TIFF, little-endian (Adobe, TIFF Revision 6.0, 1992, section 2): twelve bytes per
 * entry in ascending order of tags, values longer than four bytes placed after the directory.
 */
const BYTES = { ascii: 1, short: 2, long: 4, double: 8 } as const;
const CODES = { ascii: 2, short: 3, long: 4, double: 12 } as const;

export interface TiffField {
  readonly tag: number;
  readonly type: keyof typeof BYTES;
  /** Text for `ascii` (its closing zero is added), else numbers. */
  readonly value: string | readonly number[] | Uint32Array;
}

/** Bytes that a directory takes together with its long values, each starting on an even offset. */
export function directorySize(fields: readonly TiffField[]): number {
  return fields.reduce((sum, field) => sum + outsideBytes(field), 2 + 12 * fields.length + 4);
}

/** Writes a directory at `offset`; `next` is the offset of the following one, 0 for the last. */
export function writeDirectory(view: DataView, offset: number, fields: readonly TiffField[], next: number): void {
  const sorted = fields.toSorted((a, b) => a.tag - b.tag);
  let entry = offset + 2;
  let outside = offset + 2 + 12 * sorted.length + 4;
  view.setUint16(offset, sorted.length, true);
  for (const field of sorted) {
    view.setUint16(entry, field.tag, true);
    view.setUint16(entry + 2, CODES[field.type], true);
    view.setUint32(entry + 4, countOf(field), true);
    if (outsideBytes(field) === 0) {
      writeValue(view, entry + 8, field);
    } else {
      view.setUint32(entry + 8, outside, true);
      writeValue(view, outside, field);
      outside += outsideBytes(field);
    }
    entry += 12;
  }
  view.setUint32(entry, next, true);
}

function countOf(field: TiffField): number {
  return field.value.length + (typeof field.value === 'string' ? 1 : 0);
}

function outsideBytes(field: TiffField): number {
  const bytes = countOf(field) * BYTES[field.type];
  return bytes <= 4 ? 0 : bytes + (bytes % 2);
}

function writeValue(view: DataView, offset: number, field: TiffField): void {
  const { value, type } = field;
  for (let i = 0; i < value.length; i++) {
    const item = typeof value === 'string' ? value.charCodeAt(i) : value[i];
    const at = offset + i * BYTES[type];
    if (type === 'ascii') view.setUint8(at, item);
    else if (type === 'short') view.setUint16(at, item, true);
    else if (type === 'long') view.setUint32(at, item, true);
    else view.setFloat64(at, item, true);
  }
}
