/** Options that every command takes, worded once. */
import { Command, InvalidArgumentError } from 'commander';

/** Told the exit code of a command that ended without throwing. */
export type Finish = (code: number) => void;

/** A command named `name` that takes a project, with the options all commands share and one example in its help. */
export function projectCommand(name: string, about: string, example: string): Command {
  return new Command(name)
    .description(about)
    .argument('<PROJECT>', 'folder with project.json, or a .gpkg project file')
    .helpOption('-h, --help', 'print this help')
    .addHelpText('after', `\nExample:\n  ${example}`);
}

/** Adds `--json`, `--quiet` and `--debug`; called last so that they stand below the command's own options. */
export function withCommonOptions(command: Command): Command {
  return command
    .option('--json', 'print the result as JSON')
    .option('--quiet', 'print no progress')
    .option('--debug', 'on a failure, print where in the program it happened');
}

/** Reads a whole number from `least` up. */
export function wholeFrom(least: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (!/^\d+$/.test(text) || value < least || !Number.isSafeInteger(value)) {
      throw new InvalidArgumentError(`Expected a whole number from ${least}.`);
    }
    return value;
  };
}

/** Reads a port: a whole number from 0 (any free port) to 65535. */
export function readPort(text: string): number {
  const port = Number(text);
  if (!/^\d+$/.test(text) || port > 65535) throw new InvalidArgumentError('Expected a whole number from 0 to 65535.');
  return port;
}
