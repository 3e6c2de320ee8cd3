/** The segments of a JPEG file (ITU-T T.81, annex B), read without decoding the picture. */

export interface Segment {
  /** Second byte of the marker: 0xE1 for APP1. */
  readonly marker: number;
  /** Marker, length and content; for a scan also the entropy-coded data that follows. */
  readonly bytes: Uint8Array;
  /** The content alone, without marker and length. */
  readonly content: Uint8Array;
}

const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
const isRestart = (marker: number): boolean => marker >= 0xd0 && marker <= 0xd7;

/**
 * Segments between start and end of image, in order. Whatever follows the end of the image is not part of it and is not
 * given (phones append second pictures there). Null when this is no whole JPEG file.
 */
export function jpegSegments(file: Uint8Array): readonly Segment[] | null {
  if (file[0] !== 0xff || file[1] !== SOI) return null;
  const segments: Segment[] = [];
  for (let at = 2; ; ) {
    if (file[at] !== 0xff) return null;
    // Any number of fill bytes 0xFF may stand before a marker (B.1.1.2).
    while (file[at + 1] === 0xff) at++;
    const marker = file[at + 1];
    if (marker === undefined || marker === 0 || marker === SOI || isRestart(marker)) return null;
    if (marker === EOI) return segments;
    const length = (file[at + 2] << 8) | file[at + 3];
    const end = at + 2 + length;
    if (!(length >= 2) || end > file.length) return null;
    const next = marker === SOS ? endOfScan(file, end) : end;
    if (next === null) return null;
    segments.push({ marker, bytes: file.subarray(at, next), content: file.subarray(at + 4, end) });
    at = next;
  }
}

/** Where the next marker stands that is no stuffed zero and no restart; null when the file ends before. */
function endOfScan(file: Uint8Array, from: number): number | null {
  for (let at = file.indexOf(0xff, from); at >= 0 && at + 1 < file.length; at = file.indexOf(0xff, at + 1)) {
    const next = file[at + 1];
    if (next !== 0 && next !== 0xff && !isRestart(next)) return at;
  }
  return null;
}

/** Width and height from the frame header (B.2.2); null without one. */
export function jpegSize(segments: readonly Segment[]): { readonly width: number; readonly height: number } | null {
  const frame = segments.find(({ marker }) => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker));
  if (frame === undefined || frame.content.length < 6) return null;
  const [, h1, h0, w1, w0] = frame.content;
  return { width: (w1 << 8) | w0, height: (h1 << 8) | h0 };
}
