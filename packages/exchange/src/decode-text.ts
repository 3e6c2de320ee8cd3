/** Bytes to text, and how sure that is. */
export interface DecodedText {
  readonly text: string;
  readonly encoding: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';
  /** True when nothing in the file said so: the bytes are not UTF-8, and windows-1252 is the usual other reading. */
  readonly guessed: boolean;
}

/**
 * Decodes a text file: by its byte order mark (Unicode Standard, section 23.8) when it has one, else as UTF-8, else as
 * windows-1252, which reads any bytes. The mark itself is not part of the text. No bytes give an empty text.
 *
 * @example decodeText(Uint8Array.of(0x4d, 0xfc)).text // 'Mü', guessed
 */
export function decodeText(bytes: Uint8Array): DecodedText {
  const marked = encodingByMark(bytes);
  if (marked) return { text: new TextDecoder(marked).decode(bytes), encoding: marked, guessed: false };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'utf-8', guessed: false };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), encoding: 'windows-1252', guessed: true };
  }
}

function encodingByMark(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  return undefined;
}
