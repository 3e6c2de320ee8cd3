/** `crownfall sheet`: visit sheets as PDF. */
import { type Command, InvalidArgumentError, Option } from 'commander';
import type { SheetOptions } from '../jobs/sheet/sheet.ts';
import { type Finish, projectCommand, wholeFrom, withCommonOptions } from './common-options.ts';

const ABOUT = [
  'Writes visit sheets as a PDF: for each block a map true to scale, its trees numbered in walking order with what was found ' +
    'last time and what to look for today, cautions, figures with ranges, the bloom window, and room to write.',
  'Several blocks make a book in walking order, behind a map of the day. Print at 100 %.',
].join('\n\n');

const DEFAULT_DRAWS = 1000;

export function sheetCommand(finish: Finish): Command {
  const command = projectCommand('sheet', ABOUT, 'crownfall sheet sample-geo --top 5 --out visits.pdf --language es')
    .summary('write visit sheets for blocks')
    .addOption(new Option('--block <ID...>', 'blocks to visit').conflicts('top'))
    .option('--top <N>', 'instead: the first N blocks in rank order', wholeFrom(1))
    .requiredOption('--out <FILE.pdf>', 'the PDF to write')
    .addOption(new Option('--paper <SIZE>', 'paper size').choices(['letter', 'a4']).default('letter'))
    .addOption(new Option('--language <CODE>', 'language of the sheets').choices(['en', 'es']).default('en'))
    .addOption(new Option('--units <UNITS>', 'instead of the project’s own').choices(['metric', 'us']))
    .option('--link <ADDRESS>', 'address for the QR code; {block} stands for the block’s id', readLink)
    .option('--imagery', 'print the aerial picture beneath the maps')
    .option('--from <LON,LAT>', 'where the day begins', readPlace)
    .option('--to <LON,LAT>', 'where the day ends', readPlace)
    .option('--draws <N>', 'random draws for the ranges: 0 for none, else at least 100', wholeFrom(0), DEFAULT_DRAWS)
    .option('--seed <N>', 'start of the random numbers; equal seeds give equal ranges', wholeFrom(0), 1)
    .action(async (project: string, options: SheetOptions) => {
      const { sheet } = await import('../jobs/sheet/sheet.ts');
      finish(await sheet(project, options));
    });
  return withCommonOptions(command);
}

function readLink(text: string): string {
  if (!/^https?:\/\/\S+$/.test(text))
    throw new InvalidArgumentError('Expected an address that begins with https:// or http://.');
  return text;
}

function readPlace(text: string): { readonly lon: number; readonly lat: number } {
  const [lon, lat, ...more] = text.split(',').map(Number);
  if (more.length > 0 || !(Math.abs(lon) <= 180 && Math.abs(lat) <= 90))
    throw new InvalidArgumentError('Expected longitude and latitude in degrees, as -80.06,28.30.');
  return { lon, lat };
}
