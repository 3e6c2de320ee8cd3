/** Reckons a project, writes all results, prints the ranking. */
import { type Assessment, isStopped } from '@crownfall/assessment';
import { writeResults } from '@crownfall/exchange/node';
import { rankingJson } from '../reports/ranking-json.ts';
import { rankingReport } from '../reports/ranking-report.ts';
import { reportStopped } from '../reports/stopped-report.ts';
import { EXIT } from '../terminal/failure.ts';
import { progressOn } from '../terminal/progress.ts';
import { versions } from '../versions.ts';
import type { CommonOptions } from './job-options.ts';
import { reckonedProject } from './reckoned-project.ts';

export interface ReckonOptions extends CommonOptions {
  readonly out: string;
  readonly rows: number;
  readonly draws: number;
  readonly seed: number;
  readonly workers: number;
  readonly tiles?: string;
}

/** Characters to a line of a pipe or a file, which have no width of their own. */
const DEFAULT_WIDTH = 140;

export async function reckon(project: string, options: ReckonOptions): Promise<number> {
  const progress = progressOn(process.stderr, options.quiet === true);
  try {
    const { input, outcome, timings } = await reckonedProject(project, progress, options);
    if (isStopped(outcome)) {
      progress.end();
      return reportStopped(input.title || project, outcome.findings, options);
    }
    progress.stage(`Writing ${options.out}`, 0.92);
    await writeResults(options.out, outcome, { inputs: input.sources, versions: versions(), timings });
    progress.end();
    process.stdout.write(`${report(outcome, options)}\n`);
    return EXIT.done;
  } finally {
    progress.end();
  }
}

function report(assessment: Assessment, { json, out, rows }: ReckonOptions): string {
  if (json) return JSON.stringify(rankingJson(assessment, out), null, 2);
  return rankingReport(assessment, { rows, out, width: process.stdout.columns ?? DEFAULT_WIDTH });
}
