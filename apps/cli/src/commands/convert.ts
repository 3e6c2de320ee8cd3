/** `crownfall convert`: the project in another place and format. */
import type { WrittenFormat } from '@crownfall/exchange';
import type { Command } from 'commander';
import { Option } from 'commander';
import type { ConvertOptions } from '../jobs/convert.ts';
import { type Finish, projectCommand, withCommonOptions } from './common-options.ts';

const ABOUT =
  'Copies a project into another folder, or into one GeoPackage file and back: fields renamed as its mapping says, units in metres, positions in ' +
  'longitude and latitude, every further field kept. Nothing is written when the data has errors. ' +
  'A single layer (a file instead of a project) goes into a file of the format that its new name says, of any size.';

const FORMATS: readonly WrittenFormat[] = ['geojson', 'geojsonl', 'csv', 'flatgeobuf', 'geoparquet'];

export function convertCommand(finish: Finish): Command {
  const format = new Option('--format <FORMAT>', 'format of the layers').choices(FORMATS).default('geojson');
  const command = projectCommand('convert', ABOUT, 'crownfall convert sample-geo --to town.gpkg')
    .summary('copy a project into another format')
    .requiredOption(
      '--to <DIR>',
      'folder to write the new project to, made if it does not exist; or a new .gpkg file. For a layer: its new file',
    )
    .addOption(format)
    .option('--crs <CRS>', 'coordinate system of a single layer whose file does not state it, EPSG:2236')
    .option('--table <NAME>', 'table of a GeoPackage, to convert it alone as a single layer')
    .action(async (project: string, options: ConvertOptions) => {
      const { convert } = await import('../jobs/convert.ts');
      finish(await convert(project, options));
    });
  return withCommonOptions(command);
}
