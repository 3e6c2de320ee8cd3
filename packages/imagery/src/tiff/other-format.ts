/** Names what a file is when it is no TIFF, so that the user is told what to do rather than what failed. */

const KINDS: readonly (readonly [string, readonly number[]])[] = [
  ['JPEG', [0xff, 0xd8, 0xff]],
  ['PNG', [0x89, 0x50, 0x4e, 0x47]],
  ['JPEG 2000', [0x00, 0x00, 0x00, 0x0c, 0x6a, 0x50]],
  ['JPEG 2000', [0xff, 0x4f, 0xff, 0x51]],
  ['MrSID', [0x6d, 0x73, 0x69, 0x64]],
  ['Erdas Imagine', [0x45, 0x48, 0x46, 0x41]],
  ['ZIP', [0x50, 0x4b, 0x03, 0x04]],
  ['PDF', [0x25, 0x50, 0x44, 0x46]],
];

/** null when the first bytes are those of a TIFF (classic or Big, either byte order). */
export function otherFormat(head: Uint8Array): string | null {
  const order = String.fromCharCode(head[0] ?? 0, head[1] ?? 0);
  const version = order === 'II' ? head[2] : head[3];
  if ((order === 'II' || order === 'MM') && (version === 42 || version === 43)) return null;
  if (head.length === 0) return 'an empty file';
  return KINDS.find(([, bytes]) => bytes.every((byte, i) => head[i] === byte))?.[0] ?? 'no TIFF file';
}
