/** `crownfall visits`: what one day in the field brought, and what it changed. */
import { type Command, Option } from 'commander';
import type { VisitsCommandOptions } from '../jobs/visits.ts';
import { type Finish, projectCommand, wholeFrom, withCommonOptions } from './common-options.ts';

const ABOUT = [
  'Lists the visits of a day: who was where, what was rated, measured and seen, trees not found, new or of another host, ' +
    'bees, photos, edits that wait for a decision; and what the day changed in the figures of its blocks.',
  'The day defaults to the newest one with a visit.',
].join('\n\n');

export function visitsCommand(finish: Finish): Command {
  const command = projectCommand('visits', ABOUT, 'crownfall visits town.gpkg --day 2026-05-20 --out day')
    .summary('report what a day in the field brought')
    .option('--day <DATE>', 'YYYY-MM-DD')
    .option('--out <DIR>', 'folder for visits.html and visits.csv')
    .addOption(new Option('--language <CODE>', 'of the report').choices(['en', 'es']).default('en'))
    .option('--draws <N>', 'random draws for the ranges: 0 for none, else at least 100', wholeFrom(0), 1000)
    .option('--seed <N>', 'start of the random numbers', wholeFrom(0), 1)
    .action(async (project: string, options: VisitsCommandOptions) => {
      const { visits } = await import('../jobs/visits.ts');
      finish(await visits(project, options));
    });
  return withCommonOptions(command);
}
