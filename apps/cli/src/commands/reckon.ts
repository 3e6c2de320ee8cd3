/** `crownfall reckon`: the main job. Prints the ranking, writes ledgers, map layers and the record of the run. */
import { type Command, InvalidArgumentError } from 'commander';
import type { Tile } from '../jobs/overlay/tile-file.ts';
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
    .option('--workers <N>', 'threads that share the overlay and the draws; changes no digit', wholeFrom(1), 1)
    .option('--tile <I/N>', 'only lay crowns over the pavement of tile I of N and write that to DIR', readTileName)
    .option('--tiles <DIR>', 'take the overlay from all tiles in this folder')
    .action(async (project: string, { tile, ...options }: ReckonOptions & { tile?: Tile }) => {
      if (tile) {
        const { reckonTile } = await import('../jobs/reckon-tile.ts');
        finish(await reckonTile(project, { ...options, tile }));
      } else {
        const { reckon } = await import('../jobs/reckon.ts');
        finish(await reckon(project, options));
      }
    });
  return withCommonOptions(command);
}

/** Reads `3/8`: tile 3 of 8. */
function readTileName(text: string): Tile {
  const [, number, count] = /^(\d+)\/(\d+)$/.exec(text)?.map(Number) ?? [];
  if (!(number >= 1 && number <= count)) {
    throw new InvalidArgumentError('Expected a tile and how many there are, as 3/8.');
  }
  return { number, count };
}
