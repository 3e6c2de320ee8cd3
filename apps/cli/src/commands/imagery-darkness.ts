/** `crownfall imagery darkness`: how dark the pavement in view is under the fallout of crowns. */
import type { Command } from 'commander';
import type { DarknessOptions } from '../jobs/imagery/darkness.ts';
import { type Finish, projectCommand, withCommonOptions } from './common-options.ts';
import { readRoles } from './imagery-prepare.ts';

const ABOUT =
  'Compares, by kind of pavement and surface, what an aerial image shows of the crowns’ fallout zones with the same ' +
  'surface away from crowns: lightness (CIELAB L*), colour difference, the share that is darker. What crowns and shade hide ' +
  'is not judged, and how much is in view is told. It says dark, not why.';

export function imageryDarknessCommand(finish: Finish): Command {
  const command = projectCommand('darkness', ABOUT, 'crownfall imagery darkness sample-geo')
    .summary('compare pavement in view with clean pavement')
    .option('--image <IMAGE>', 'GeoTIFF to look at in place of the project’s imagery')
    .option('--crs <CODE>', 'its coordinate system, where the file states none or a wrong one: EPSG:2236')
    .option('--bands <ROLES>', 'what its bands are: red,green,blue,near-infrared', readRoles)
    .action(async (project: string, options: DarknessOptions) => {
      const { darkness } = await import('../jobs/imagery/darkness.ts');
      finish(await darkness(project, options));
    });
  return withCommonOptions(command);
}
