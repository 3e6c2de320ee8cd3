/** `crownfall check`: reads everything, prints what is wrong with it and what to do, writes nothing. */
import { isStopped } from '@crownfall/assessment';
import type { Command } from 'commander';
import { EXIT } from '../terminal/failure.ts';
import { progressOn } from '../terminal/progress.ts';
import { type CommonOptions, type Finish, projectCommand, withCommonOptions } from './common-options.ts';
import { findingsReport } from './findings-report.ts';
import { reckonedProject } from './reckoned-project.ts';

const ABOUT = `Reads every layer of a project, checks it through the whole job and prints findings:
what is wrong, where, and what to do. Writes nothing. Exits 1 when an error would stop the job.`;

interface CheckOptions extends CommonOptions {
  readonly all?: true;
}

export function checkCommand(finish: Finish): Command {
  const command = projectCommand('check', ABOUT, 'crownfall check sample-geo')
    .option('--all', 'print every finding, not only the first few of each kind')
    .action((project: string, options: CheckOptions) => check(project, options).then(finish));
  return withCommonOptions(command);
}

async function check(project: string, options: CheckOptions): Promise<number> {
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
