/** `crownfall calibrate`: fits the dose coefficient to measured plots, prints it and keeps it with the project. */
import type { Command } from 'commander';
import type { CalibrateOptions } from '../jobs/calibrate.ts';
import { type Finish, projectCommand, withCommonOptions } from './common-options.ts';

const ABOUT = [
  'Fits the dose coefficient k to the quadrats: measured plots whose stained share is known, under crowns whose severity ' +
    'is known. Prints k with its interval, how well it holds from block to block, and what did not enter.',
  'Keeps k in calibration.json beside project.json; every other command then uses it and says "calibrated". ' +
    'Exits 1, and keeps nothing, when the quadrats do not suffice; it says what is missing.',
].join('\n\n');

export function calibrateCommand(finish: Finish): Command {
  const command = projectCommand('calibrate', ABOUT, 'crownfall calibrate sample-geo')
    .summary('fit the dose coefficient to measured plots')
    .option('--dry-run', 'print only; keep nothing')
    .option('--chart <FILE.svg>', 'also draw observed against fitted shares')
    .action(async (project: string, options: CalibrateOptions) => {
      const { calibrate } = await import('../jobs/calibrate.ts');
      finish(await calibrate(project, options));
    });
  return withCommonOptions(command);
}
