/** The command line's table of contents. A command is listed here only when it works. */
import { Command } from 'commander';
import { adoptCommand } from './commands/adopt.ts';
import { bloomCommand } from './commands/bloom.ts';
import { calibrateCommand } from './commands/calibrate.ts';
import { checkCommand } from './commands/check.ts';
import type { Finish } from './commands/common-options.ts';
import { convertCommand } from './commands/convert.ts';
import { copyCommand } from './commands/copy.ts';
import { imageryCommand } from './commands/imagery.ts';
import { letterCommand } from './commands/letter.ts';
import { peopleCommand } from './commands/people.ts';
import { planCommand } from './commands/plan.ts';
import { ratersCommand } from './commands/raters.ts';
import { reckonCommand } from './commands/reckon.ts';
import { reportCommand } from './commands/report.ts';
import { sampleCommand } from './commands/sample.ts';
import { seasonCommand } from './commands/season.ts';
import { serveCommand } from './commands/serve.ts';
import { sheetCommand } from './commands/sheet.ts';
import { visitsCommand } from './commands/visits.ts';
import { ownVersion } from './versions.ts';

const ABOUT = `Maps street-tree crowns over pavement, reckons the stained area below them and ranks blocks by it.

A PROJECT is a folder with project.json in it, or one .gpkg file that convert made.`;

const AFTER = `
Examples:
  crownfall check sample-geo
  crownfall reckon sample-geo --out results
  crownfall serve sample-geo

Exit codes: 0 done, 1 the data has errors that stop the job, 2 wrong use, 3 outage (disk, network).`;

export function buildProgram(finish: Finish): Command {
  const program = new Command('crownfall')
    .description(ABOUT)
    .usage('COMMAND PROJECT [options]')
    .version(ownVersion(), '--version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand(false)
    .configureHelp({ subcommandTerm: (command) => `${command.name()} ${command.registeredArguments[0]?.name() ?? ''}` })
    .addHelpText('after', AFTER);
  for (const command of [
    checkCommand,
    reckonCommand,
    calibrateCommand,
    ratersCommand,
    sampleCommand,
    bloomCommand,
    planCommand,
    seasonCommand,
    visitsCommand,
    sheetCommand,
    reportCommand,
    letterCommand,
    convertCommand,
    adoptCommand,
    imageryCommand,
    serveCommand,
    peopleCommand,
    copyCommand,
  ]) {
    program.addCommand(command(finish));
  }
  for (const each of [program, ...program.commands.flatMap((command) => [command, ...command.commands])]) {
    each
      .exitOverride()
      .configureOutput({ outputError: () => {} })
      .showSuggestionAfterError(false);
  }
  return program;
}
