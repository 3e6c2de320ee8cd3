/** Checks a project through the whole job and prints what was found. */
import { isStopped } from '@crownfall/assessment';
import { findingsReport } from '../reports/findings-report.ts';
import { EXIT } from '../terminal/failure.ts';
import { progressOn } from '../terminal/progress.ts';
import type { CommonOptions } from './job-options.ts';
import { reckonedProject } from './reckoned-project.ts';

export interface CheckOptions extends CommonOptions {
  readonly all?: true;
}

export async function check(project: string, options: CheckOptions): Promise<number> {
  const progress = progressOn(process.stderr, options.quiet === true);
  const { input, outcome } = await reckonedProject(project, progress).finally(progress.end);
  const title = input.title || project;
  const { findings } = outcome;
  const report = options.json
    ? JSON.stringify({ title, stopped: isStopped(outcome), findings }, null, 2)
    : findingsReport(title, findings, { all: options.all === true });
  process.stdout.write(`${report}\n`);
  return isStopped(outcome) ? EXIT.dataStops : EXIT.done;
}
