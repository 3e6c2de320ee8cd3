/** `crownfall copy`: a project from its file to a database, or back. */
import { Command } from 'commander';
import type { CopyOptions } from '../jobs/copy.ts';
import { type Finish, withCommonOptions } from './common-options.ts';

const ABOUT = [
  'Copies a project between a GeoPackage file and a PostGIS database, or between two of a kind: settings, all layers, all visits, ' +
    'values and coordinates as they are. The target must hold no records yet; a file is made.',
  'Record numbers and versions begin anew. The journal stays with the source: keep it.',
].join('\n\n');

export function copyCommand(finish: Finish): Command {
  const command = new Command('copy')
    .summary('copy a project from a file to a database, or back')
    .description(ABOUT)
    .argument('<FROM>', 'project.gpkg or postgres://...')
    .argument('<TO>', 'project.gpkg or postgres://...')
    .helpOption('-h, --help', 'print this help')
    .addHelpText('after', '\nExample:\n  crownfall copy town.gpkg postgres://trees@db.example/town')
    .action(async (from: string, to: string, options: CopyOptions) => {
      const { copy } = await import('../jobs/copy.ts');
      finish(await copy(from, to, options));
    });
  return withCommonOptions(command);
}
