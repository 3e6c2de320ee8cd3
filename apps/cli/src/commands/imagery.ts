/** `crownfall imagery …`: what can be done with aerial images. */
import { Command } from 'commander';
import type { Finish } from './common-options.ts';
import { imageryPrepareCommand } from './imagery-prepare.ts';

export function imageryCommand(finish: Finish): Command {
  return new Command('imagery')
    .description('Works on aerial images: crownfall imagery COMMAND --help tells more.')
    .summary('prepare aerial images')
    .usage('COMMAND IMAGE [options]')
    .helpOption('-h, --help', 'print this help')
    .helpCommand(false)
    .configureHelp({ subcommandTerm: (command) => `${command.name()} IMAGE` })
    .addCommand(imageryPrepareCommand(finish));
}
