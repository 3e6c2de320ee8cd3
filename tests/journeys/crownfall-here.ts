/** Runs a command's own main function in this process: what it says and how it ends, without starting a program for it. */
import { vi } from 'vitest';
import { main } from '../../apps/cli/src/main.ts';
import type { Ending } from './crownfall-process.ts';

/** As `crownfall`, for commands that end by themselves and start no others. */
export const crownfallHere = (args: readonly string[]): Promise<Ending> => captured(() => main(args));

/** What is written to standard output and error while it runs, and the exit code it gives. */
export async function captured(run: () => Promise<number>): Promise<Ending> {
  const said = { stdout: '', stderr: '' };
  const listen = (stream: 'stdout' | 'stderr') =>
    vi.spyOn(process[stream], 'write').mockImplementation((piece) => {
      said[stream] += piece.toString();
      return true;
    });
  const listening = [listen('stdout'), listen('stderr')];
  try {
    const code = await run();
    return { code, ...said };
  } finally {
    for (const each of listening) each.mockRestore();
  }
}
