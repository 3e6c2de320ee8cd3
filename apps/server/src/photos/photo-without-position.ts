/** A photo as it may be kept: checked to be one, and rid of where it was taken. */
import { type KeptExif, readKeptExif, writeKeptExif } from './exif-kept.ts';
import { jpegSegments, jpegSize, type Segment } from './jpeg-segments.ts';

export interface Photo {
  readonly width: number;
  readonly height: number;
  /** `YYYY:MM:DD HH:MM:SS` by the camera's clock, when the file says so. */
  readonly takenAt: string | null;
  readonly bytes: Uint8Array;
}

/** The picture itself at most; a phone's has 12 to 200 million pixels. */
const MOST_PIXELS = 250e6;
const APP1 = 0xe1;

/**
 * Checks that the bytes are a whole JPEG file and rewrites its head: only JFIF, colour profile and Adobe's colour transform
 * are kept of the application segments, EXIF shrinks to orientation and time, comments and whatever follows the image go. The
 * picture is not decoded: its pixels stay as they were, bit for bit. With `keepPosition` the bytes stay as sent. Null when
 * it is no JPEG file.
 */
export function photoWithoutPosition(file: Uint8Array, keepPosition = false): Photo | null {
  const segments = jpegSegments(file);
  const size = segments && jpegSize(segments);
  if (!segments || !size || size.width * size.height === 0 || size.width * size.height > MOST_PIXELS) return null;
  if (!segments.some(({ marker }) => marker === 0xda)) return null;
  const exif = segments.filter(({ marker }) => marker === APP1).map(({ content }) => readKeptExif(content));
  const kept: KeptExif = Object.assign({}, ...exif);
  return { ...size, takenAt: kept.takenAt ?? null, bytes: keepPosition ? file : rewritten(segments, kept) };
}

function rewritten(segments: readonly Segment[], exif: KeptExif): Uint8Array {
  const content = writeKeptExif(exif);
  const head = segments.filter((segment) => segment.marker === 0xe0 && isKept(segment));
  const rest = segments.filter((segment) => segment.marker !== 0xe0 && isKept(segment));
  const app1 =
    content === null ? [] : [Uint8Array.of(0xff, APP1, (content.length + 2) >> 8, (content.length + 2) & 255), content];
  return Buffer.concat([
    Uint8Array.of(0xff, 0xd8),
    ...head.map(({ bytes }) => bytes),
    ...app1,
    ...rest.map(({ bytes }) => bytes),
    Uint8Array.of(0xff, 0xd9),
  ]);
}

/** Application segments (0xE0–0xEF) and comments (0xFE) only when they say how to show the picture. */
function isKept({ marker, content }: Segment): boolean {
  if (marker === 0xe0) return startsWith(content, 'JFIF\0');
  if (marker === 0xe2) return startsWith(content, 'ICC_PROFILE\0');
  if (marker === 0xee) return startsWith(content, 'Adobe');
  return !(marker >= 0xe0 && marker <= 0xef) && marker !== 0xfe;
}

const startsWith = (content: Uint8Array, text: string): boolean =>
  Array.from(text).every((letter, i) => content[i] === letter.charCodeAt(0));
