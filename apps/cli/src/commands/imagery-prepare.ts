/** `crownfall imagery prepare`: any readable image as a file that opens at once at any scale. */
import type { BandRole } from '@crownfall/imagery';
import { Command, InvalidArgumentError } from 'commander';
import type { PrepareImageOptions } from '../jobs/imagery/prepare.ts';
import { type Finish, withCommonOptions } from './common-options.ts';

const ABOUT =
  'Makes a tiled, compressed GeoTIFF with smaller versions of itself inside (cloud-optimised layout) out of any GeoTIFF: ' +
  'strips, old compressions, overviews or world file beside it. Samples are kept to the digit. Interrupted, it goes on ' +
  'where it stopped when run again; the file appears under its name only when it is whole.';

const ROLES: readonly BandRole[] = [
  'red',
  'green',
  'blue',
  'near-infrared',
  'grey',
  'alpha',
  'palette',
  'height',
  'other',
];

export function imageryPrepareCommand(finish: Finish): Command {
  const command = new Command('prepare')
    .description(ABOUT)
    .summary('make a tiled GeoTIFF with overviews')
    .usage('IMAGE --out FILE [options]')
    .argument('<IMAGE>', 'GeoTIFF to read, a file or an http address')
    .helpOption('-h, --help', 'print this help')
    .requiredOption('--out <FILE>', 'GeoTIFF to write')
    .option('--crs <CODE>', 'its coordinate system, where the file states none or a wrong one: EPSG:2236')
    .option('--bands <ROLES>', 'what its bands are: red,green,blue,near-infrared', readRoles)
    .option('--tile <PIXELS>', 'side of a tile, a multiple of 16', readTile, 512)
    .addHelpText('after', '\nExample:\n  crownfall imagery prepare county.tif --out county-tiled.tif')
    .action(async (image: string, options: PrepareImageOptions) => {
      const { prepareImage } = await import('../jobs/imagery/prepare.ts');
      finish(await prepareImage(image, options));
    });
  return withCommonOptions(command);
}

/** Reads a list of band roles. */
export function readRoles(text: string): readonly BandRole[] {
  const words = text.split(',').map((word) => word.trim());
  const stray = words.find((word) => !(ROLES as readonly string[]).includes(word));
  if (stray !== undefined) throw new InvalidArgumentError(`Expected roles among ${ROLES.join(', ')}; got ${stray}.`);
  return words as BandRole[];
}

function readTile(text: string): number {
  const pixels = Number(text);
  if (Number.isInteger(pixels) && pixels >= 16 && pixels <= 4096 && pixels % 16 === 0) return pixels;
  throw new InvalidArgumentError('Expected a multiple of 16 from 16 to 4096.');
}
