/** Reading of zip archives (APPNOTE 6.3) with nothing left to their goodwill: sizes are enforced while unpacking. */
import { Inflate } from 'fflate';

/** A file in an archive. */
export interface ZipEntry {
  readonly name: string;
  /** As the archive says; enforced by `unpack`. */
  readonly unpackedBytes: number;
  readonly packedBytes: number;
  unpack(): Uint8Array;
}

/** The archive breaks off or contradicts itself. */
class BrokenZip extends Error {}
/** The archive is not unpacked: it could do harm, or needs what is not supported. */
export class RefusedZip extends Error {}

/** More than this a layer in an archive does not hold; larger ones are better unpacked to a disk first. */
const LARGEST_BYTES = 512 << 20;
/** Deflate reaches at most 1032 : 1, on endless repetition; tables and coordinates stay far below 200. */
const LARGEST_RATIO = 200;
const RATIO_MATTERS_BYTES = 16 << 20;
const MOST_ENTRIES = 10_000;

const END_SIGNATURE = 0x06054b50;
const ENTRY_SIGNATURE = 0x02014b50;
const LOCAL_SIGNATURE = 0x04034b50;

/**
 * The files of an archive held in memory, by its central directory. Names that lead out of the archive, encrypted files,
 * and archives of more than 512 MB unpacked are refused. Throws `BrokenZip` or `RefusedZip`.
 */
export function zipEntries(archive: Uint8Array): ZipEntry[] {
  const view = new DataView(archive.buffer, archive.byteOffset, archive.byteLength);
  try {
    return directoryOf(archive, view);
  } catch (error) {
    if (error instanceof RangeError) throw new BrokenZip('its directory points outside the file');
    throw error;
  }
}

function directoryOf(archive: Uint8Array, view: DataView): ZipEntry[] {
  const end = endRecord(view);
  const count = view.getUint16(end + 10, true);
  if (count > MOST_ENTRIES) throw new RefusedZip(`it holds ${count} files`);
  let at = view.getUint32(end + 16, true);
  if (at === 0xffffffff) throw new RefusedZip('it is larger than 4 GB');
  const entries: ZipEntry[] = [];
  for (let i = 0; i < count; i++) {
    if (view.getUint32(at, true) !== ENTRY_SIGNATURE) throw new BrokenZip('its directory breaks off');
    const nameLength = view.getUint16(at + 28, true);
    const name = new TextDecoder().decode(archive.subarray(at + 46, at + 46 + nameLength));
    if (!name.endsWith('/')) entries.push(entryAt(archive, view, at, name));
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  const total = entries.reduce((sum, { unpackedBytes }) => sum + unpackedBytes, 0);
  if (total > LARGEST_BYTES) throw new RefusedZip(`it unpacks to ${Math.round(total / 1e6)} MB`);
  return entries;
}

function endRecord(view: DataView): number {
  const first = Math.max(0, view.byteLength - 22 - 0xffff);
  for (let at = view.byteLength - 22; at >= first; at--) if (view.getUint32(at, true) === END_SIGNATURE) return at;
  throw new BrokenZip('it has no directory: it was probably cut off');
}

function entryAt(archive: Uint8Array, view: DataView, at: number, name: string): ZipEntry {
  if (leadsOut(name)) throw new RefusedZip(`a file in it is named ${JSON.stringify(name.slice(0, 60))}`);
  if (view.getUint16(at + 8, true) & 1) throw new RefusedZip('it is encrypted');
  const method = view.getUint16(at + 10, true);
  const crc = view.getUint32(at + 16, true);
  const packedBytes = view.getUint32(at + 20, true);
  const unpackedBytes = view.getUint32(at + 24, true);
  const local = view.getUint32(at + 42, true);
  if (unpackedBytes > RATIO_MATTERS_BYTES && unpackedBytes > packedBytes * LARGEST_RATIO) {
    throw new RefusedZip(`${name} would swell ${Math.round(unpackedBytes / Math.max(1, packedBytes))}-fold`);
  }
  function unpack(): Uint8Array {
    if (view.getUint32(local, true) !== LOCAL_SIGNATURE) throw new BrokenZip(`${name} is not where it should be`);
    const from = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    const packed = archive.subarray(from, from + packedBytes);
    if (packed.length < packedBytes) throw new BrokenZip(`${name} breaks off`);
    const whole = method === 0 ? packed : method === 8 ? inflated(packed, unpackedBytes, name) : unsupported(name);
    if (whole.length !== unpackedBytes) throw new BrokenZip(`${name} is not of the size that is said`);
    if (crc32(whole) !== crc) throw new BrokenZip(`the checksum of ${name} is wrong`);
    return whole;
  }
  return { name, unpackedBytes, packedBytes, unpack };
}

/** Absolute, with a drive, or climbing: nothing is ever written under such a name, and no honest archive has one. */
function leadsOut(name: string): boolean {
  const parts = name.split(/[\\/]/);
  return parts.includes('..') || parts[0] === '' || /^[a-z]:/i.test(name) || name.includes('\u0000');
}

/** Unpacks piece by piece into the size that was said, and stops at the first byte beyond it. */
function inflated(packed: Uint8Array, size: number, name: string): Uint8Array {
  const whole = new Uint8Array(size);
  let at = 0;
  const inflate = new Inflate((piece) => {
    if (at + piece.length > size) throw new RefusedZip(`${name} unpacks to more than the ${size} bytes it says`);
    whole.set(piece, at);
    at += piece.length;
  });
  const step = 1 << 16;
  try {
    for (let from = 0; from < packed.length || from === 0; from += step) {
      inflate.push(packed.subarray(from, from + step), from + step >= packed.length);
    }
  } catch (error) {
    if (error instanceof RefusedZip) throw error;
    throw new BrokenZip(`${name} is damaged`, { cause: error });
  }
  return whole.subarray(0, at);
}

function unsupported(name: string): never {
  throw new RefusedZip(`${name} is packed in a way that is not supported`);
}

/** CRC-32 of IEEE 802.3, reflected, polynomial EDB88320. */
function crc32(bytes: Uint8Array): number {
  const table = new Uint32Array(256).map((_, n) => {
    let c = n;
    for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
    return c;
  });
  let crc = 0xffffffff;
  for (const byte of bytes) crc = table[(crc ^ byte) & 0xff] ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}
