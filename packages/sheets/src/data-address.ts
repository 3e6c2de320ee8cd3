/** A picture written into the text of a document: RFC 2397, RFC 4648 section 4. */

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/**
 * The `data:` address of a JPEG or PNG.
 * @throws RangeError for bytes that begin like neither.
 */
export function dataAddress(bytes: Uint8Array): string {
  return `data:image/${pictureKind(bytes)};base64,${base64(bytes)}`;
}

function pictureKind(bytes: Uint8Array): 'jpeg' | 'png' {
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return 'jpeg';
  if (bytes[0] === 0x89 && bytes[1] === 0x50) return 'png';
  throw new RangeError(`picture: expected JPEG or PNG, got bytes that begin ${bytes.slice(0, 4).join(' ')}`);
}

/** @example base64(Uint8Array.of(102, 111, 111, 98)) // 'Zm9vYg==' (RFC 4648, section 10) */
export function base64(bytes: Uint8Array): string {
  const out: string[] = [];
  for (let i = 0; i < bytes.length; i += 3) {
    const left = bytes.length - i;
    const word = (bytes[i] << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    out.push(DIGITS[word >> 18], DIGITS[(word >> 12) & 63]);
    out.push(left > 1 ? DIGITS[(word >> 6) & 63] : '=', left > 2 ? DIGITS[word & 63] : '=');
  }
  return out.join('');
}
