import { open, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Finding } from '@crownfall/geometry';
import { finding } from '@crownfall/survey';
import { APPLICATION_ID } from '../../formats/geopackage/geopackage-facts.ts';
import { Outage, systemCode } from '../outage.ts';

const HEADER_BYTES = 100;

/**
 * What the first 100 bytes (SQLite's database header) already rule out: no file, another kind of file, one cut off; null
 * when it may be opened. Throws an `Outage` when the disk fails.
 */
export async function headerRefusal(path: string): Promise<Finding | null> {
  const where = { file: basename(path) };
  const header = await headerOf(path);
  if (header === null) return finding('file-missing', 'error/stops', where, {});
  const { bytes, size } = header;
  if (size < HEADER_BYTES) return finding('file-truncated', 'error/stops', where, { bytes: size });
  if (new TextDecoder('latin1').decode(bytes.subarray(0, 16)) !== 'SQLite format 3\0') {
    return finding('format-unknown', 'error/stops', where, { got: 'no SQLite file', valid: 'GeoPackage' });
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, HEADER_BYTES);
  if (view.getUint32(68) !== APPLICATION_ID) {
    return finding('format-unknown', 'error/stops', where, {
      got: 'an SQLite file of another kind',
      valid: 'GeoPackage',
    });
  }
  const log = await stat(`${path}-wal`).catch(() => null);
  const whole = wholeSize(view);
  // With a write-ahead log beside it the file may rightly be shorter: its last pages are in the log.
  if (whole !== null && size < whole && (log === null || log.size === 0)) {
    return finding('file-truncated', 'error/stops', where, { bytes: size, problem: `${whole} bytes are expected` });
  }
  return null;
}

/** Bytes the file should have by its header; null when the header does not vouch for its count of pages. */
function wholeSize(view: DataView): number | null {
  const pageSize = view.getUint16(16) === 1 ? 65536 : view.getUint16(16);
  return view.getUint32(24) === view.getUint32(92) ? pageSize * view.getUint32(28) : null;
}

async function headerOf(path: string): Promise<{ bytes: Uint8Array; size: number } | null> {
  try {
    const file = await open(path, 'r');
    try {
      const bytes = new Uint8Array(HEADER_BYTES);
      await file.read(bytes, 0, HEADER_BYTES, 0);
      return { bytes, size: (await file.stat()).size };
    } finally {
      await file.close();
    }
  } catch (error) {
    if (systemCode(error) === 'ENOENT' || systemCode(error) === 'ENOTDIR') return null;
    throw new Outage(`cannot read ${basename(path)}`, error);
  }
}
