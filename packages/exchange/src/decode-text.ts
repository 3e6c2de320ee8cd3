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
    return { text: windows1252(bytes), encoding: 'windows-1252', guessed: true };
  }
}

/** Characters of the bytes 0x80 to 0x9F (Encoding Standard, index windows-1252). */
const HIGH_CONTROLS =
  '\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f' +
  '\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178';

/** Some engines decode this label as Latin 1, which leaves these bytes control characters; others do not. */
function windows1252(bytes: Uint8Array): string {
  const text = new TextDecoder('windows-1252').decode(bytes);
  return text.replace(/[\u0080-\u009f]/g, (sign) => HIGH_CONTROLS[sign.charCodeAt(0) - 0x80]);
}

function encodingByMark(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  return undefined;
}
