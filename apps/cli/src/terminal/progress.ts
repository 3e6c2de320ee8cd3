/** Progress on stderr: a bar on a terminal, plain lines otherwise, nothing when quiet. Results never go here. */

export interface Progress {
  /** Begins a stage; `share` of the whole job done so far, 0–1. */
  stage(words: string, share: number): void;
  /** Clears the bar. Safe to call twice. */
  end(): void;
}

const BAR_CELLS = 24;
const CLEAR_LINE = '\r\u001b[2K';

const SILENT: Progress = { stage: () => {}, end: () => {} };

/** A progress reporter for `stream`; `quiet` makes it silent. */
export function progressOn(stream: NodeJS.WriteStream, quiet: boolean): Progress {
  if (quiet) return SILENT;
  return stream.isTTY ? bar(stream) : lines(stream);
}

function lines(stream: NodeJS.WriteStream): Progress {
  return { stage: (words) => stream.write(`${words}\n`), end: () => {} };
}

function bar(stream: NodeJS.WriteStream): Progress {
  return {
    stage: (words, share) => {
      const full = Math.round(Math.min(1, Math.max(0, share)) * BAR_CELLS);
      stream.write(`${CLEAR_LINE}${'█'.repeat(full)}${'░'.repeat(BAR_CELLS - full)} ${words}`);
    },
    end: () => stream.write(CLEAR_LINE),
  };
}
