/** `crownfall convert`: the project in another place and format. */
import type { LayerFormat } from '@crownfall/exchange';
import { type ConvertReport, convertProject } from '@crownfall/exchange/node';
import type { Command } from 'commander';
import { Option } from 'commander';
import { EXIT } from '../terminal/failure.ts';
import { progressOn } from '../terminal/progress.ts';
import { type CommonOptions, type Finish, projectCommand, withCommonOptions } from './common-options.ts';
import { findingsReport } from './findings-report.ts';

const ABOUT = `Copies a project into another folder: fields renamed as its mapping says, units in metres, positions in
longitude and latitude, every further field kept. Nothing is written when the data has errors.`;

const FORMATS: readonly LayerFormat[] = ['geojson', 'geojsonl', 'csv'];

interface ConvertOptions extends CommonOptions {
  readonly to: string;
  readonly format: LayerFormat;
}

export function convertCommand(finish: Finish): Command {
  const format = new Option('--format <FORMAT>', 'format of the layers').choices(FORMATS).default('geojson');
  const command = projectCommand('convert', ABOUT, 'crownfall convert sample-geo --to plain-copy')
    .requiredOption('--to <DIR>', 'folder to write the new project to; made if it does not exist')
    .addOption(format)
    .action((project: string, options: ConvertOptions) => convert(project, options).then(finish));
  return withCommonOptions(command);
}

async function convert(project: string, options: ConvertOptions): Promise<number> {
  const progress = progressOn(process.stderr, options.quiet === true);
  progress.stage(`Converting ${project}`, 0.3);
  const report = await convertProject(project, options.to, options.format).finally(progress.end);
  process.stdout.write(
    options.json ? `${JSON.stringify(report, null, 2)}\n` : `${inWords(project, report, options)}\n`,
  );
  return report.files.length > 0 ? EXIT.done : EXIT.dataStops;
}

function inWords(project: string, { files, findings }: ConvertReport, { to }: ConvertOptions): string {
  const told = findings.length > 0 ? `${findingsReport(project, findings, { all: false })}\n` : '';
  return files.length > 0 ? `${told}Written to ${to}: ${files.join(', ')}` : `${told}Nothing was written.`;
}
