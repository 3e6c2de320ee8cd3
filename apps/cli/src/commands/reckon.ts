/** `crownfall reckon`: the main job. Prints the ranking, writes ledgers, map layers and the record of the run. */
import type { Command } from 'commander';
import type { ReckonOptions } from '../jobs/reckon.ts';
import { type Finish, projectCommand, wholeFrom, withCommonOptions } from './common-options.ts';

const ABOUT = [
  'Reckons the stained pavement under every crown and ranks the blocks by it.',
  'Prints the ranking and writes to DIR: blocks.geojson, trees.geojson, pavement.geojson, ledger.csv, ' +
    'findings.json and run.json. If a run fails, what stood in DIR stays whole.',
].join('\n\n');

const DEFAULT_ROWS = 20;
const DEFAULT_DRAWS = 1000;

export function reckonCommand(finish: Finish): Command {
  const command = projectCommand('reckon', ABOUT, 'crownfall reckon sample-geo --out results')
    .summary('rank the blocks and write all results')
    .requiredOption('--out <DIR>', 'folder to write results to; made if it does not exist')
    .option('--rows <N>', 'blocks to print; the files hold all of them', wholeFrom(1), DEFAULT_ROWS)
    .option('--draws <N>', 'random draws for the ranges: 0 for none, else at least 100', wholeFrom(0), DEFAULT_DRAWS)
    .option('--seed <N>', 'start of the random numbers; equal seeds give equal ranges', wholeFrom(0), 1)
    .option('--workers <N>', 'threads that share the draws; changes no digit', wholeFrom(1), 1)
    .action(async (project: string, options: ReckonOptions) => {
      const { reckon } = await import('../jobs/reckon.ts');
      finish(await reckon(project, options));
    });
  return withCommonOptions(command);
}
