/** Copies a project into another folder and format, and says what was written. */
import type { LayerFormat } from '@crownfall/exchange';
import { type ConvertReport, convertProject } from '@crownfall/exchange/node';
import { findingsReport } from '../reports/findings-report.ts';
import { EXIT } from '../terminal/failure.ts';
import { progressOn } from '../terminal/progress.ts';
import type { CommonOptions } from './job-options.ts';

export interface ConvertOptions extends CommonOptions {
  readonly to: string;
  readonly format: LayerFormat;
}

export async function convert(project: string, options: ConvertOptions): Promise<number> {
  const progress = progressOn(process.stderr, options.quiet === true);
  progress.stage(`Converting ${project}`, 0.3);
  const report = await convertProject(project, options.to, options.format).finally(progress.end);
  process.stdout.write(options.json ? `${JSON.stringify(report, null, 2)}\n` : inWords(project, report, options));
  return report.files.length > 0 ? EXIT.done : EXIT.dataStops;
}

function inWords(project: string, { files, findings }: ConvertReport, { to }: ConvertOptions): string {
  const told = findings.length > 0 ? `${findingsReport(project, findings, { all: false })}\n\n` : '';
  return `${told}${files.length > 0 ? `Written to ${to}: ${files.join(', ')}` : 'Nothing was written.'}\n`;
}
