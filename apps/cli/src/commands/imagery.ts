/** `crownfall imagery …`: what can be done with aerial images. */
import { Command } from 'commander';
import type { Finish } from './common-options.ts';
import { imageryBrownedCommand } from './imagery-browned.ts';
import { imageryDarknessCommand } from './imagery-darkness.ts';
import { imageryOutlineCommand } from './imagery-outline.ts';
import { imageryPrepareCommand } from './imagery-prepare.ts';

export function imageryCommand(finish: Finish): Command {
  return new Command('imagery')
    .description('Works on aerial images: crownfall imagery COMMAND --help tells more.')
    .summary('prepare aerial images; browned shares, outlines, darkness')
    .usage('COMMAND [options]')
    .helpOption('-h, --help', 'print this help')
    .helpCommand(false)
    .configureHelp({ subcommandTerm: (command) => `${command.name()} ${command.registeredArguments[0]?.name() ?? ''}` })
    .addCommand(imageryPrepareCommand(finish))
    .addCommand(imageryBrownedCommand(finish))
    .addCommand(imageryOutlineCommand(finish))
    .addCommand(imageryDarknessCommand(finish));
}
