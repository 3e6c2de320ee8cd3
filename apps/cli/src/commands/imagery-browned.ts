/** `crownfall imagery browned`: suggests how much of each crown is browned. */
import { VEGETATION_INDICES } from '@crownfall/imagery';
import { isIsoDay } from '@crownfall/survey';
import { type Command, InvalidArgumentError, Option } from 'commander';
import type { BrownedOptions } from '../jobs/imagery/browned.ts';
import { type Finish, projectCommand, withCommonOptions } from './common-options.ts';
import { readRoles } from './imagery-prepare.ts';

const ABOUT =
  'Suggests the browned share of each crown from an aerial image and writes the suggestions as a table in the form of ' +
  'ratings: rater "imagery", confidence low. A row counts once a person has looked at the crown and put a name into its ' +
  'confirmed_by column; then add it to the project’s ratings.';

export function imageryBrownedCommand(finish: Finish): Command {
  const index = new Option('--index <INDEX>', 'vegetation index').choices(VEGETATION_INDICES).default('NGRDI');
  const example = 'crownfall imagery browned sample-geo --flown 2026-05-08 --out suggestions.csv';
  const command = projectCommand('browned', ABOUT, example)
    .summary('suggest browned shares of crowns')
    .requiredOption('--flown <DAY>', 'day the image was flown, YYYY-MM-DD', readDay)
    .requiredOption('--out <FILE>', 'table to write')
    .option('--image <IMAGE>', 'GeoTIFF to look at in place of the project’s imagery')
    .option('--crs <CODE>', 'its coordinate system, where the file states none or a wrong one: EPSG:2236')
    .option('--bands <ROLES>', 'what its bands are: red,green,blue,near-infrared', readRoles)
    .addOption(index)
    .option('--sound <IDS>', 'trees whose crowns are sound, separated by commas: two or more', readIds)
    .option('--browned <IDS>', 'trees whose crowns are largely browned: two or more', readIds)
    .option('--seed <N>', 'seed of the intervals', readSeed, 1)
    .action(async (project: string, options: BrownedOptions) => {
      const { browned } = await import('../jobs/imagery/browned.ts');
      finish(await browned(project, options));
    });
  return withCommonOptions(command);
}

function readDay(text: string): string {
  if (isIsoDay(text)) return text;
  throw new InvalidArgumentError('Expected a day such as 2026-05-08.');
}

function readIds(text: string): readonly string[] {
  const ids = text.split(',').map((id) => id.trim());
  if (ids.length >= 2 && ids.every((id) => id !== '')) return ids;
  throw new InvalidArgumentError('Expected two or more tree ids, separated by commas.');
}

function readSeed(text: string): number {
  const seed = Number(text);
  if (/^\d+$/.test(text) && Number.isSafeInteger(seed)) return seed;
  throw new InvalidArgumentError('Expected a whole number from 0 up.');
}
