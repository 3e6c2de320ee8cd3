/** `crownfall plan`: what to do in which block, with the money and the crew there are. */
import { type Command, InvalidArgumentError } from 'commander';
import type { PlanCommandOptions } from '../jobs/plan.ts';
import { type Finish, projectCommand, wholeFrom, withCommonOptions } from './common-options.ts';

const ABOUT = [
  'Chooses one action for each block – leave alone, inspect, clean, treat in bloom, treat and clean, replace a tree – so that ' +
    'the most stained pavement is avoided within the budget, the crew days and the bloom windows. Prices, crew, rules of ' +
    'safety and must-do blocks are in the settings of the project (plan).',
  'The plan is proved to be the best one, or its distance from the best is told. It tells why an action is not offered, what ' +
    'the next unit of money or crew would buy, and how firm each choice is. It computes and suggests no dose.',
].join('\n\n');

export function planCommand(finish: Finish): Command {
  const command = projectCommand('plan', ABOUT, 'crownfall plan sample-geo --budget 12000 --crew-days 3 --out plan')
    .summary('choose what to do in which block')
    .option('--budget <MONEY>', 'money there is, in the currency of the price list', readAmount)
    .option('--crew-days <N>', 'crew days there are in each week', readAmount)
    .option('--weeks <N>', 'weeks to plan, from the day of the figures', wholeFrom(1))
    .option('--temperatures <FILE.csv>', 'daily temperatures: date, tmin_c, tmax_c')
    .option('--addresses <FILE.geojson>', 'addresses or parcels with a field address, for the notice list')
    .option('--block <ID>', 'print everything that is known of one block')
    .option('--draws <N>', 'random draws for the ranges: 0 for none, else at least 100', wholeFrom(0), 200)
    .option('--seed <N>', 'start of the random numbers', wholeFrom(0), 1)
    .option(
      '--seconds <N>',
      'longest search for one plan; then the best found is taken, with its gap',
      wholeFrom(1),
      20,
    )
    .option('--rows <N>', 'blocks to print; the files hold all of them', wholeFrom(1), 20)
    .option('--out <DIR>', 'folder for plan.csv, plan.json, plan.geojson and notices.csv')
    .action(async (project: string, options: PlanCommandOptions) => {
      const { plan } = await import('../jobs/plan.ts');
      finish(await plan(project, options));
    });
  return withCommonOptions(command);
}

function readAmount(text: string): number {
  const amount = Number(text);
  if (!(amount >= 0 && Number.isFinite(amount)) || text.trim() === '')
    throw new InvalidArgumentError('Expected a number from 0.');
  return amount;
}
