/** The crownfall command: reads the arguments, runs one command, turns every ending into an exit code. */
import { CommanderError } from 'commander';
import { buildProgram } from './program.ts';
import { EXIT, explainFailure } from './terminal/failure.ts';
import { explainMisuse } from './terminal/misuse.ts';

/** Runs the command line and answers its exit code: 0 done, 1 the data stops the job, 2 wrong use, 3 outage. */
export async function main(argv: readonly string[]): Promise<number> {
  const outcome = { code: EXIT.done as number };
  const program = buildProgram((code) => {
    outcome.code = code;
  });
  try {
    await program.parseAsync(argv.length === 0 ? ['--help'] : [...argv], { from: 'user' });
    return outcome.code;
  } catch (error) {
    if (error instanceof CommanderError) return endOfParsing(program, argv, error);
    const failure = explainFailure(error, argv.includes('--debug'));
    process.stderr.write(`${failure.words}\n`);
    return failure.code;
  }
}

function endOfParsing(
  program: ReturnType<typeof buildProgram>,
  argv: readonly string[],
  error: CommanderError,
): number {
  if (error.exitCode === 0) return EXIT.done;
  process.stderr.write(`${explainMisuse(program, argv, error)}\n`);
  return EXIT.misuse;
}
