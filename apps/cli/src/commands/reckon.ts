/** `crownfall reckon`: the main job. Prints the ranking, writes ledgers, map layers and the record of the run. */
import { type Assessment, isStopped } from '@crownfall/assessment';
import { writeResults } from '@crownfall/exchange/node';
import type { Finding } from '@crownfall/geometry';
import type { Command } from 'commander';
import { InvalidArgumentError } from 'commander';
import { EXIT } from '../terminal/failure.ts';
import { progressOn } from '../terminal/progress.ts';
import { versions } from '../versions.ts';
import { type CommonOptions, type Finish, projectCommand, withCommonOptions } from './common-options.ts';
import { findingsReport } from './findings-report.ts';
import { rankingJson } from './ranking-json.ts';
import { rankingReport } from './ranking-report.ts';
import { reckonedProject } from './reckoned-project.ts';

const ABOUT = `Reckons the stained pavement under every crown and ranks the blocks by it.

Prints the ranking and writes to DIR: blocks.geojson, trees.geojson, pavement.geojson, ledger.csv,
findings.json and run.json. If a run fails, what stood in DIR stays whole.`;

const EXAMPLE = 'crownfall reckon sample-geo --out results';
const DEFAULT_ROWS = 20;

interface ReckonOptions extends CommonOptions {
  readonly out: string;
  readonly rows: number;
}

export function reckonCommand(finish: Finish): Command {
  const command = projectCommand('reckon', ABOUT, EXAMPLE)
    .requiredOption('--out <DIR>', 'folder to write results to; made if it does not exist')
    .option('--rows <N>', 'blocks to print; the files hold all of them', readRows, DEFAULT_ROWS)
    .action((project: string, options: ReckonOptions) => reckon(project, options).then(finish));
  return withCommonOptions(command);
}

async function reckon(project: string, options: ReckonOptions): Promise<number> {
  const progress = progressOn(process.stderr, options.quiet === true);
  try {
    const { input, outcome, timings } = await reckonedProject(project, progress);
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

function reportStopped(title: string, findings: readonly Finding[], { json }: ReckonOptions): number {
  if (json) process.stdout.write(`${JSON.stringify({ title, stopped: true, findings }, null, 2)}\n`);
  process.stderr.write(`${findingsReport(title, findings, { all: false })}\n`);
  process.stderr.write('Nothing was reckoned. Earlier results, if any, are untouched.\n');
  return EXIT.dataStops;
}

/** Of a pipe or a file, which have no width of their own. */
const DEFAULT_WIDTH = 120;

function readRows(text: string): number {
  const rows = Number(text);
  if (!/^\d+$/.test(text) || rows < 1) throw new InvalidArgumentError('Expected a whole number from 1.');
  return rows;
}
