/** `crownfall raters`: do the raters mean the same, and who reads high or low? */
import { type Command, Option } from 'commander';
import type { RatersOptions } from '../jobs/raters.ts';
import { type Finish, projectCommand, withCommonOptions } from './common-options.ts';

const ABOUT = [
  'Compares raters on the trees that more than one of them rated on its newest visit: how much higher one rates than ' +
    'another, and how closely they agree, for each scale. Estimates how far each reads off.',
  'With --training FILE.csv (columns item, rater, known_pct, rated_pct: pictures or trees with known answers) biases are ' +
    'held against those answers, else against the mean of the raters. --store keeps them in raters.json beside ' +
    'project.json; every command then takes them off the ratings.',
].join('\n\n');

export function ratersCommand(finish: Finish): Command {
  const command = projectCommand('raters', ABOUT, 'crownfall raters sample-geo --out rater-check')
    .summary('see whether raters agree, and who reads high or low')
    .option('--training <FILE.csv>', 'answers that are known, and what raters said of them')
    .option('--store', 'keep the biases with the project')
    .option('--out <DIR>', 'folder for a one-page summary and its charts')
    .addOption(new Option('--language <CODE>', 'of the report').choices(['en', 'es']).default('en'))
    .action(async (project: string, options: RatersOptions) => {
      const { raters } = await import('../jobs/raters.ts');
      finish(await raters(project, options));
    });
  return withCommonOptions(command);
}
