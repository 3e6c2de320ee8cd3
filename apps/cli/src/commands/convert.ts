/** `crownfall convert`: the project in another format. */
import { convertProject } from '@crownfall/exchange/node';
import type { Command } from 'commander';
import type { Finish } from '../program.ts';
import { EXIT } from '../terminal/failure.ts';
import { progressOn } from '../terminal/progress.ts';
import { type CommonOptions, projectCommand, withCommonOptions } from './common-options.ts';

const ABOUT =
  'Writes a project in another format, with its fields renamed and its units converted to the ones of this program.';

interface ConvertOptions extends CommonOptions {
  readonly to: string;
}

export function convertCommand(finish: Finish): Command {
  const command = projectCommand('convert', ABOUT, 'crownfall convert sample-geo --to copy-of-town')
    .requiredOption('--to <FILE>', 'what to write')
    .action((project: string, options: ConvertOptions) => convert(project, options).then(finish));
  return withCommonOptions(command);
}

async function convert(project: string, options: ConvertOptions): Promise<number> {
  const progress = progressOn(process.stderr, options.quiet === true);
  progress.stage(`Converting ${project}`, 0.3);
  const written = await convertProject(project, options.to).finally(progress.end);
  process.stdout.write(options.json ? `${JSON.stringify(written, null, 2)}\n` : `Written to ${options.to}.\n`);
  return EXIT.done;
}
