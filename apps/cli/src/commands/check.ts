/** `crownfall check`: reads everything, prints what is wrong with it and what to do, writes nothing. */
import type { Command } from 'commander';
import type { CheckOptions } from '../jobs/check.ts';
import { type Finish, projectCommand, withCommonOptions } from './common-options.ts';

const ABOUT =
  'Reads every layer of a project, checks it through the whole job and prints findings: what is wrong, ' +
  'where, and what to do. Writes nothing. Exits 1 when an error would stop the job.';

export function checkCommand(finish: Finish): Command {
  const command = projectCommand('check', ABOUT, 'crownfall check sample-geo')
    .summary('print what is wrong with the data and what to do')
    .option('--all', 'print every finding, not only the first few of each kind')
    .action(async (project: string, options: CheckOptions) => {
      const { check } = await import('../jobs/check.ts');
      finish(await check(project, options));
    });
  return withCommonOptions(command);
}
