/** `crownfall bloom`: the bloom window of each block, as a list and as a calendar file. */
import { type Command, Option } from 'commander';
import type { BloomCommandOptions } from '../jobs/bloom.ts';
import { type Finish, projectCommand, withCommonOptions } from './common-options.ts';

const ABOUT = [
  'Lists the bloom windows of the blocks, closing soon first, those that are over last. From your own dated observations of at ' +
    'least three earlier seasons and a file of daily temperatures it forecasts when the flowers open, with a range in days; ' +
    'with less it says so and forecasts nothing.',
  '--calendar writes the windows as an iCalendar file for any calendar program. A window is an expectation: look at the ' +
    'flowers, and for bees, before anything is done.',
].join('\n\n');

export function bloomCommand(finish: Finish): Command {
  const command = projectCommand('bloom', ABOUT, 'crownfall bloom sample-geo --calendar bloom.ics')
    .summary('list the bloom windows; write them as a calendar')
    .option('--temperatures <FILE.csv>', 'daily temperatures: date, tmin_c, tmax_c')
    .option('--calendar <FILE.ics>', 'write the windows as iCalendar')
    .addOption(new Option('--language <CODE>', 'language of the calendar').choices(['en', 'es']).default('en'))
    .action(async (project: string, options: BloomCommandOptions) => {
      const { bloom } = await import('../jobs/bloom.ts');
      finish(await bloom(project, options));
    });
  return withCommonOptions(command);
}
