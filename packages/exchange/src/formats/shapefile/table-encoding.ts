/** The encoding of a dBASE table, and whether anything stated it. */
export interface TableEncoding {
  /** A label that `TextDecoder` knows. */
  readonly encoding: string;
  readonly guessed: boolean;
}

/** Language driver ids of the table's header (byte 29) that stand for an encoding which can be decoded. */
const BY_LANGUAGE_DRIVER: Readonly<Record<number, string>> = {
  3: 'windows-1252',
  87: 'windows-1252',
  88: 'windows-1252',
  89: 'windows-1252',
  101: 'ibm866',
  120: 'big5',
  121: 'euc-kr',
  122: 'gbk',
  123: 'shift_jis',
  124: 'windows-874',
  200: 'windows-1250',
  201: 'windows-1251',
  202: 'windows-1254',
  203: 'windows-1253',
};
const LANGUAGE_DRIVER_AT = 29;

/**
 * The encoding of a shapefile's table: by its .cpg file, else by the header's language driver id, else UTF-8 when its
 * start is, else windows-1252. A guess is told only when it matters: when there is anything but ASCII.
 */
export function tableEncoding(codePage: string, head: Uint8Array): TableEncoding {
  const stated = labelOf(codePage) ?? BY_LANGUAGE_DRIVER[head[LANGUAGE_DRIVER_AT]];
  if (stated !== undefined) return { encoding: stated, guessed: false };
  const rows = head.subarray(32);
  return { encoding: isUtf8(rows) ? 'utf-8' : 'windows-1252', guessed: rows.some((byte) => byte >= 0x80) };
}

/** `UTF-8`, `1252`, `ANSI 1252`, `ISO 88591`, `CP1252` as a label that can be decoded. */
function labelOf(codePage: string): string | undefined {
  const bare = codePage.trim().toLowerCase();
  if (bare === '') return undefined;
  const iso = /^(?:iso[ _-]?)?8859[ _-]?(\d{1,2})$/.exec(bare)?.[1];
  const page = /^(?:ansi|oem|cp|windows|ms)?[ _-]?(\d{3,5})$/.exec(bare)?.[1];
  const tries = [
    iso && `iso-8859-${iso}`,
    page === '65001' ? 'utf-8' : page && `windows-${page}`,
    page && `ibm${page}`,
  ];
  return [...tries, bare].find((label): label is string => typeof label === 'string' && isDecodable(label));
}

function isDecodable(label: string): boolean {
  try {
    return new TextDecoder(label).encoding !== '';
  } catch {
    return false;
  }
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    // The cut at the end may go through a character.
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
    return true;
  } catch {
    return false;
  }
}
