import { Outage, systemCode } from '../outage.ts';

interface Meaning {
  readonly code: string;
  readonly words: string;
}

/** SQLite's result codes in the words and codes of an operating system. */
const MEANINGS: readonly (readonly [RegExp, Meaning])[] = [
  [/^SQLITE_(BUSY|LOCKED)/, { code: 'EBUSY', words: 'another program is writing to the file and does not let go' }],
  [/^SQLITE_FULL/, { code: 'ENOSPC', words: 'no space is left; what was stored before is whole' }],
  [/^SQLITE_(READONLY|PERM|AUTH)/, { code: 'EROFS', words: 'the file may only be read' }],
  [/^SQLITE_CANTOPEN/, { code: 'EACCES', words: 'the file cannot be opened' }],
  [/^SQLITE_(CORRUPT|NOTADB)/, { code: 'EIO', words: 'the file is damaged' }],
  [/^SQLITE_(IOERR|PROTOCOL|NOLFS)/, { code: 'EIO', words: 'the disk did not read or write' }],
];

/** Whether another connection's lock is the reason, so that trying again may help. */
export function isBusy(error: unknown): boolean {
  return /^SQLITE_(BUSY|LOCKED)/.test(systemCode(error) ?? '');
}

/** Whether the file itself is broken. */
export function isDamage(error: unknown): boolean {
  return /^SQLITE_(CORRUPT|NOTADB)/.test(systemCode(error) ?? '');
}

/** An error of SQLite's as an outage; any other error as it is. `file` is a name without folders. */
export function sqliteOutage(doing: string, file: string, error: unknown): unknown {
  const code = systemCode(error) ?? '';
  const meaning = MEANINGS.find(([pattern]) => pattern.test(code))?.[1];
  if (meaning === undefined) return error;
  return new Outage(
    `cannot ${doing} ${file}`,
    Object.assign(new Error(meaning.words, { cause: error }), { code: meaning.code }),
  );
}
