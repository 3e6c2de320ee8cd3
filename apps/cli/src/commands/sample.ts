/** `crownfall sample`: which trees to rate next. */
import type { Command } from 'commander';
import { InvalidArgumentError, Option } from 'commander';
import type { SampleCommandOptions } from '../jobs/sample.ts';
import { type Finish, projectCommand, wholeFrom, withCommonOptions } from './common-options.ts';

const ABOUT = [
  'Tells how many further trees to rate, and which, so that the mean severity of the town is known to a wanted precision: ' +
    'shared out by host and block where severities vary most, drawn at random with a seed, listed in walking order.',
  'Also tells how the range of the stained area of the town would shrink, and what would remain because the dose ' +
    'coefficient is not known better.',
].join('\n\n');

export function sampleCommand(finish: Finish): Command {
  const within = new Option(
    '--within <POINTS>',
    'precision wanted: half the 95 % interval of the mean severity, percentage points',
  )
    .argParser(readPoints)
    .conflicts('trees');
  const command = projectCommand('sample', ABOUT, 'crownfall sample sample-geo --trees 40 --out next-ratings')
    .summary('choose the trees to rate next')
    .addOption(within)
    .option('--trees <N>', 'instead: how many further trees can be rated', wholeFrom(1))
    .option('--draws <N>', 'random draws for the range of the total: 0 for none, else at least 100', wholeFrom(0), 500)
    .option('--seed <N>', 'start of the random numbers', wholeFrom(0), 1)
    .option('--out <DIR>', 'folder for the list (sample.csv), a one-page summary and its chart')
    .action(async (project: string, options: SampleCommandOptions) => {
      const { sample } = await import('../jobs/sample.ts');
      finish(await sample(project, options));
    });
  return withCommonOptions(command);
}

function readPoints(text: string): number {
  const points = Number(text);
  if (!(points > 0 && points <= 50))
    throw new InvalidArgumentError('Expected percentage points, above 0 and up to 50.');
  return points;
}
