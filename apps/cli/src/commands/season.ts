/** `crownfall season`: what changed between two days, and did the treatment work? */
import type { Command } from 'commander';
import { InvalidArgumentError, Option } from 'commander';
import type { SeasonCommandOptions } from '../jobs/season.ts';
import { type Finish, projectCommand, wholeFrom, withCommonOptions } from './common-options.ts';

const ABOUT = [
  'Compares two days: severity and stained pavement by block, places where severe crowns gather, and, with --treated, how ' +
    'well a treatment worked against untreated trees (Henderson-Tilton, Abbott, Sun-Shepard, Schneider-Orelli), each with an ' +
    'interval, or with the reason why it cannot be told.',
  'The first day defaults to the newest rating of an earlier year, the second to the day of the figures. FILE.csv has a ' +
    'column tree_id and may have a column group (treated or check); without checks all other rated trees of the treated ' +
    "trees' hosts serve.",
].join('\n\n');

const REACH_M = 60;

export function seasonCommand(finish: Finish): Command {
  const command = projectCommand('season', ABOUT, 'crownfall season sample-geo --out season-2026')
    .summary('compare two days; tell whether a treatment worked')
    .option('--before <DATE>', 'first day, YYYY-MM-DD')
    .option('--after <DATE>', 'second day, YYYY-MM-DD')
    .option('--treated <FILE.csv>', 'trees that were treated in between')
    .option('--reach <METRES>', 'how far neighbours lie for the hot spots', readReach, REACH_M)
    .option('--draws <N>', 'random draws for the ranges of change: 0 for none, else at least 100', wholeFrom(0), 500)
    .option('--seed <N>', 'start of the random numbers', wholeFrom(0), 1)
    .option('--out <DIR>', 'folder for a one-page summary and its charts')
    .addOption(new Option('--language <CODE>', 'of the report').choices(['en', 'es']).default('en'))
    .action(async (project: string, options: SeasonCommandOptions) => {
      const { season } = await import('../jobs/season.ts');
      finish(await season(project, options));
    });
  return withCommonOptions(command);
}

function readReach(text: string): number {
  const metres = Number(text);
  if (!(metres > 0 && metres <= 10_000)) throw new InvalidArgumentError('Expected metres, above 0 and up to 10000.');
  return metres;
}
