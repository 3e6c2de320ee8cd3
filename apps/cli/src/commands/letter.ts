/** `crownfall letter`: what to answer to a complaint about one block. */
import { type Command, InvalidArgumentError, Option } from 'commander';
import type { LetterCommandOptions } from '../jobs/report/letter.ts';
import { type Finish, projectCommand, wholeFrom, withCommonOptions } from './common-options.ts';

const ABOUT = [
  'Writes a letter about one block in plain words: what was found, what is planned and when, what is not and why, whom to ask. ' +
    'It names no cause that nobody found in a crown. Read it before you send it.',
  'What is planned comes from the plan, when the settings hold a price list (plan.prices).',
].join('\n\n');

const DEFAULT_DRAWS = 1000;

export function letterCommand(finish: Finish): Command {
  const example = 'crownfall letter sample-geo --block B04 --ask "Tree desk, 555-0100" --out answer.pdf';
  const command = projectCommand('letter', ABOUT, example)
    .summary('write an answer to a complaint about one block')
    .requiredOption('--block <ID>', 'the block that the complaint is about')
    .requiredOption('--ask <LINE...>', 'who answers questions and how to reach them')
    .requiredOption('--out <FILE>', 'the letter to write, .txt, .html or .pdf', readLetterName)
    .option('--to <NAME>', 'whom the letter is to')
    .option('--about <WORDS>', 'what they wrote about, to stand after “thank you for writing to us about”')
    .addOption(new Option('--language <CODE>', 'language of the letter').choices(['en', 'es']).default('en'))
    .addOption(new Option('--paper <SIZE>', 'paper size').choices(['letter', 'a4']).default('letter'))
    .addOption(new Option('--units <UNITS>', 'instead of the project’s own').choices(['metric', 'us']))
    .option('--no-plan', 'leave the plan out')
    .option('--draws <N>', 'random draws for the ranges: 0 for none, else at least 100', wholeFrom(0), DEFAULT_DRAWS)
    .option('--seed <N>', 'start of the random numbers; equal seeds give equal ranges', wholeFrom(0), 1)
    .action(async (project: string, options: LetterCommandOptions) => {
      const { letter } = await import('../jobs/report/letter.ts');
      finish(await letter(project, options));
    });
  return withCommonOptions(command);
}

function readLetterName(name: string): string {
  if (!/\.(txt|html|pdf)$/i.test(name))
    throw new InvalidArgumentError('Expected a name that ends in .txt, .html or .pdf.');
  return name;
}
