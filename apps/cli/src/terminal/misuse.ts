/** Answers to wrong use: what was wrong, what is valid, and the nearest valid word. */
import type { Command, CommanderError } from 'commander';

/** A message for an unknown command or option, a missing value or argument; never a bare refusal. */
export function explainMisuse(program: Command, argv: readonly string[], error: CommanderError): string {
  const command = commandIn(program, argv);
  const path = pathOf(command);
  const stray = strayOption(command, argv);
  if (stray !== undefined) return unknown('option', stray, optionNames(command), path);
  const given = /'([^']+)'/.exec(error.message)?.[1] ?? '';
  if (command.commands.length > 0 && given !== '' && !given.startsWith('-')) {
    return unknown('command', given, commandNames(command), path);
  }
  const words = error.message.replace(/^error: /, '');
  return `crownfall: ${words}\nSee: ${path} --help`;
}

/** The command that the words lead to: `imagery prepare` is one within another. */
function commandIn(program: Command, argv: readonly string[]): Command {
  let command = program;
  for (const word of argv.filter((each) => !each.startsWith('-'))) {
    const next = command.commands.find((each) => each.name() === word);
    if (next === undefined) break;
    command = next;
  }
  return command;
}

function pathOf(command: Command): string {
  return command.parent ? `${pathOf(command.parent)} ${command.name()}` : 'crownfall';
}

/** An option that the command does not have; named even when the parser stumbled over something else first. */
function strayOption(command: Command, argv: readonly string[]): string | undefined {
  const words = argv.map((word) => word.replace(/=.*$/, ''));
  const end = words.indexOf('--');
  const known = [...command.options.flatMap((option) => [option.long, option.short]), '--help', '-h'];
  return words.slice(0, end < 0 ? words.length : end).find((word) => /^--?[a-z]/i.test(word) && !known.includes(word));
}

function unknown(what: string, given: string, valid: readonly string[], path: string): string {
  const near = nearest(given, valid);
  const hint = near === undefined ? '' : ` Did you mean ${near}?`;
  return `crownfall: unknown ${what} ${given}.${hint}\nValid ${what}s: ${valid.join(', ')}\nSee: ${path} --help`;
}

const commandNames = (program: Command): string[] => program.commands.map((each) => each.name());

function optionNames(command: Command): string[] {
  const own = command.options.map((option) => option.long ?? option.flags);
  return [...own, '--help'];
}

/** The valid word that takes the fewest single-letter changes to reach, if fewer than half of its letters change. */
export function nearest(given: string, valid: readonly string[]): string | undefined {
  const ranked = valid
    .map((word) => ({ word, changes: letterChanges(given, word) }))
    .sort((a, b) => a.changes - b.changes || a.word.localeCompare(b.word, 'en'));
  const best = ranked[0];
  return best && best.changes <= Math.max(2, best.word.length / 2) ? best.word : undefined;
}

/** Levenshtein's distance (1966): insertions, deletions and replacements from one word to the other. */
export function letterChanges(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, i) => i);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    for (let j = 1; j <= to.length; j++) {
      const replaced = row[j - 1] + (from[i - 1] === to[j - 1] ? 0 : 1);
      next.push(Math.min(replaced, row[j] + 1, next[j - 1] + 1));
    }
    row = next;
  }
  return row[to.length];
}
