/** `crownfall adopt`: a tree inventory of any make becomes the crowns of a project. */
import { Command, InvalidArgumentError, Option } from 'commander';
import type { AdoptOptions } from '../jobs/adopt.ts';
import { type Finish, withCommonOptions } from './common-options.ts';

const ABOUT =
  'Takes a tree inventory into a project. The first run guesses what its columns are and writes the guess into the project ' +
  'folder as a mapping for you to correct; the second, given that mapping, writes the crowns layer and a report of what was ' +
  'taken, mended and refused, row by row. Spreads that were not measured are estimated from trunk diameters, and marked.';

const AFTER = `
Example:
  crownfall adopt trees.csv --to town
  crownfall adopt trees.csv --to town --mapping town/inventory-trees-mapping.json`;

export function adoptCommand(finish: Finish): Command {
  const command = new Command('adopt')
    .description(ABOUT)
    .summary('take a tree inventory into a project')
    .argument('<FILE>', 'the inventory, in any format that layers are read from')
    .helpOption('-h, --help', 'print this help')
    .addHelpText('after', AFTER)
    .requiredOption('--to <PROJECT>', 'project folder; made if it does not exist')
    .option('--mapping <FILE>', 'the mapping you looked through; without it one is guessed and nothing is taken')
    .option('--crs <CRS>', 'coordinate system of the inventory when its file does not state it, EPSG:2236')
    .option('--season <YEAR>', 'season of a project that is being made (default: this year)', readYear)
    .addOption(
      new Option('--units <UNITS>', 'units of a project that is being made')
        .choices(['metric', 'us'])
        .default('metric'),
    )
    .action(async (file: string, options: AdoptOptions) => {
      const { adopt } = await import('../jobs/adopt.ts');
      finish(await adopt(file, options));
    });
  return withCommonOptions(command);
}

function readYear(text: string): number {
  const year = Number(text);
  if (!/^\d{4}$/.test(text)) throw new InvalidArgumentError('Expected a year of four digits.');
  return year;
}
