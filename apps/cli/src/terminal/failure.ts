/** What a command says, and the code it exits with, when it cannot go on. */

export const EXIT = { done: 0, dataStops: 1, misuse: 2, outage: 3 } as const;

export interface Failure {
  readonly code: number;
  readonly words: string;
}

/**
 * Words and exit code for anything thrown. RangeError and TypeError at a door are wrong use (2); errors of the operating
 * system (they carry `code`, or a `cause` that does) are outages (3); anything else is a fault of the program, also 3.
 * The stack is shown only when `debug`.
 */
export function explainFailure(error: unknown, debug: boolean): Failure {
  const failure = sortOut(error);
  const stack = debug && error instanceof Error ? `\n${error.stack}` : '';
  return { ...failure, words: failure.words + stack };
}

function sortOut(error: unknown): Failure {
  if (!(error instanceof Error)) return { code: EXIT.outage, words: `crownfall stopped: ${String(error)}` };
  const system = systemCodeOf(error);
  if (system !== undefined) {
    return { code: EXIT.outage, words: `crownfall stopped: ${error.message}\n${remedyFor(system)}`.trimEnd() };
  }
  if (error instanceof RangeError || (error instanceof TypeError && error.message.includes('expected'))) {
    return { code: EXIT.misuse, words: `crownfall: ${error.message}` };
  }
  return {
    code: EXIT.outage,
    words: `crownfall stopped on a fault of its own: ${error.message}\nRun it again with --debug to see where, and report that.`,
  };
}

/** The operating system's word for what went wrong, from the error or what caused it. */
function systemCodeOf(error: Error): string | undefined {
  const code = (error as NodeJS.ErrnoException).code;
  if (typeof code === 'string' && /^E[A-Z0-9]+$/.test(code)) return code;
  return error.cause instanceof Error ? systemCodeOf(error.cause) : undefined;
}

function remedyFor(system: string): string {
  const remedies: Readonly<Record<string, string>> = {
    EACCES: 'You may not read or write there. Choose another folder, or ask whoever owns it.',
    EPERM: 'You may not read or write there. Choose another folder, or ask whoever owns it.',
    EROFS: 'That disk is read-only. Choose another folder with --out.',
    ENOSPC: 'The disk is full. Free some space and run the command again; earlier results are untouched.',
    EADDRINUSE: 'Another program uses that port. Choose another with --port, or --port 0 for any free one.',
    EBUSY: 'Close the other program, or let it finish, and run the command again.',
    ENOPKG: 'Run npm install in the folder of Crownfall; it needs a C++ compiler. Folder projects work without it.',
    ENOTDIR: 'A file stands where a folder is needed. Choose another folder.',
  };
  return remedies[system] ?? '';
}
