/** `crownfall report`: the season for the council, and all that it rests on. */
import { type Command, InvalidArgumentError, Option } from 'commander';
import type { ReportCommandOptions } from '../jobs/report/report.ts';
import { type Finish, projectCommand, wholeFrom, withCommonOptions } from './common-options.ts';

const ABOUT = [
  'Writes a report as one HTML file or as PDF. The first page is for the council: a map, three figures with their ranges, what ' +
    'is planned, what it leaves undone. Then the plan in detail with what is forbidden and why, safety, all blocks, the ' +
    'follow-up, methods, accuracy, gaps, settings, and where each figure comes from.',
  'A plan is made when the settings hold a price list (plan.prices), a follow-up when an earlier year was rated.',
].join('\n\n');

const DEFAULT_DRAWS = 1000;

export function reportCommand(finish: Finish): Command {
  const command = projectCommand(
    'report',
    ABOUT,
    'crownfall report sample-geo --out season.pdf --paper a4 --language es',
  )
    .summary('write the report for the council')
    .requiredOption('--out <FILE>', 'the report to write, .html or .pdf', readReportName)
    .addOption(new Option('--language <CODE>', 'language of the report').choices(['en', 'es']).default('en'))
    .addOption(new Option('--paper <SIZE>', 'paper size').choices(['letter', 'a4']).default('letter'))
    .addOption(new Option('--units <UNITS>', 'instead of the project’s own').choices(['metric', 'us']))
    .option('--budget <MONEY>', 'money there is for the plan, in the currency of the price list', readAmount)
    .option('--crew-days <N>', 'crew days there are in each week', readAmount)
    .option('--temperatures <FILE.csv>', 'daily temperatures: date, tmin_c, tmax_c')
    .option('--addresses <FILE.geojson>', 'addresses or parcels with a field address, for the notice list')
    .option('--no-plan', 'leave the plan out')
    .option('--before <DATE>', 'first day of the follow-up, YYYY-MM-DD')
    .option('--after <DATE>', 'second day of the follow-up, YYYY-MM-DD')
    .option('--treated <FILE.csv>', 'trees that were treated in between')
    .option('--no-season', 'leave the follow-up out')
    .option('--draws <N>', 'random draws for the ranges: 0 for none, else at least 100', wholeFrom(0), DEFAULT_DRAWS)
    .option('--seed <N>', 'start of the random numbers; equal seeds give equal ranges', wholeFrom(0), 1)
    .action(async (project: string, options: ReportCommandOptions) => {
      const { report } = await import('../jobs/report/report.ts');
      finish(await report(project, options));
    });
  return withCommonOptions(command);
}

function readReportName(name: string): string {
  if (!/\.(html|pdf)$/i.test(name)) throw new InvalidArgumentError('Expected a name that ends in .html or .pdf.');
  return name;
}

function readAmount(text: string): number {
  const amount = Number(text);
  if (text.trim() === '' || !(amount >= 0 && Number.isFinite(amount)))
    throw new InvalidArgumentError('Expected a number from 0.');
  return amount;
}
