/** `crownfall imagery outline`: proposes crown outlines for trees that are points. */
import type { Command } from 'commander';
import type { OutlineJobOptions } from '../jobs/imagery/outline.ts';
import { type Finish, projectCommand, withCommonOptions } from './common-options.ts';
import { readRoles } from './imagery-prepare.ts';

const ABOUT =
  'Proposes an outline for every tree that is a point, from an aerial image, and writes them as GeoJSON to look through. ' +
  'Neighbours do not overlap, nor do they enter crowns that are drawn. Where no crown is seen, it says why.';

export function imageryOutlineCommand(finish: Finish): Command {
  const command = projectCommand('outline', ABOUT, 'crownfall imagery outline sample-geo --out proposals.geojson')
    .summary('propose outlines of crowns')
    .requiredOption('--out <FILE>', 'GeoJSON to write')
    .option('--image <IMAGE>', 'GeoTIFF to look at in place of the project’s imagery')
    .option('--crs <CODE>', 'its coordinate system, where the file states none or a wrong one: EPSG:2236')
    .option('--bands <ROLES>', 'what its bands are: red,green,blue,near-infrared', readRoles)
    .action(async (project: string, options: OutlineJobOptions) => {
      const { outline } = await import('../jobs/imagery/outline.ts');
      finish(await outline(project, options));
    });
  return withCommonOptions(command);
}
