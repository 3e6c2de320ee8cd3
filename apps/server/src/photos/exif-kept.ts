/**
 * Of a photo's EXIF (CIPA DC-008, a TIFF 6.0 structure) only what the work needs: which way up it is and when it was taken.
 * Position, maker's notes, serial numbers, thumbnails and owner are in fields that are not on the list.
 */

export interface KeptExif {
  /** 1–8, tag 0x0112. */
  readonly orientation?: number;
  /** `YYYY:MM:DD HH:MM:SS`, tag 0x9003. */
  readonly takenAt?: string;
}

const TAG = { orientation: 0x0112, exifPointer: 0x8769, takenAt: 0x9003 } as const;
const TYPE = { ascii: 2, short: 3, long: 4 } as const;
const TAKEN_AT = /^\d{4}:\d{2}:\d{2} \d{2}:\d{2}:\d{2}$/;
const HEAD = [0x45, 0x78, 0x69, 0x66, 0, 0];

/** Reads what is kept from the content of an APP1 segment; nothing from one that is no EXIF or is damaged. */
export function readKeptExif(content: Uint8Array): KeptExif {
  if (!HEAD.every((byte, i) => content[i] === byte)) return {};
  const view = new DataView(content.buffer, content.byteOffset + HEAD.length, content.length - HEAD.length);
  try {
    const little = view.getUint16(0) === 0x4949;
    const first = entries(view, view.getUint32(4, little), little);
    const orientation = first.get(TAG.orientation);
    const pointer = first.get(TAG.exifPointer);
    const inner = pointer === undefined ? undefined : entries(view, view.getUint32(pointer + 8, little), little);
    const taken = inner?.get(TAG.takenAt);
    return {
      ...orientationAt(view, orientation, little),
      ...(taken === undefined ? {} : takenAtOf(view, view.getUint32(taken + 8, little))),
    };
  } catch (error) {
    // A field that points outside the segment: damaged, nothing is kept.
    if (error instanceof RangeError) return {};
    throw error;
  }
}

/** The content of an APP1 segment that holds just these; null when there is nothing to hold. */
export function writeKeptExif({ orientation, takenAt }: KeptExif): Uint8Array | null {
  if (orientation === undefined && takenAt === undefined) return null;
  const first = [
    ...(orientation === undefined ? [] : [[TAG.orientation, TYPE.short, 1, orientation]]),
    ...(takenAt === undefined ? [] : [[TAG.exifPointer, TYPE.long, 1, 0]]),
  ];
  const innerAt = 8 + 2 + 12 * first.length + 4;
  if (takenAt !== undefined) first[first.length - 1][3] = innerAt;
  const textAt = innerAt + 2 + 12 + 4;
  const out = new Uint8Array(HEAD.length + (takenAt === undefined ? innerAt : textAt + 20));
  out.set(HEAD);
  const view = new DataView(out.buffer, HEAD.length);
  view.setUint32(0, 0x49492a00);
  view.setUint32(4, 8, true);
  writeEntries(view, 8, first);
  if (takenAt !== undefined) {
    writeEntries(view, innerAt, [[TAG.takenAt, TYPE.ascii, 20, textAt]]);
    out.set(new TextEncoder().encode(takenAt), HEAD.length + textAt);
  }
  return out;
}

/** Offsets of a directory's entries by tag. */
function entries(view: DataView, at: number, little: boolean): Map<number, number> {
  const count = view.getUint16(at, little);
  const found = new Map<number, number>();
  for (let i = 0; i < count; i++) found.set(view.getUint16(at + 2 + 12 * i, little), at + 2 + 12 * i);
  return found;
}

function orientationAt(view: DataView, at: number | undefined, little: boolean): KeptExif {
  const value = at === undefined ? 0 : view.getUint16(at + 8, little);
  return value >= 1 && value <= 8 ? { orientation: value } : {};
}

function takenAtOf(view: DataView, at: number): KeptExif {
  const text = String.fromCharCode(...Array.from({ length: 19 }, (_, i) => view.getUint8(at + i)));
  return TAKEN_AT.test(text) ? { takenAt: text } : {};
}

function writeEntries(view: DataView, at: number, rows: readonly (readonly number[])[]): void {
  view.setUint16(at, rows.length, true);
  rows.forEach(([tag, type, count, value], i) => {
    const entry = at + 2 + 12 * i;
    view.setUint16(entry, tag, true);
    view.setUint16(entry + 2, type, true);
    view.setUint32(entry + 4, count, true);
    view.setUint32(entry + 8, value, true);
  });
}
