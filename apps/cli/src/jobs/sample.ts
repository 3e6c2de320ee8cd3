/** Plans which trees to rate next, prints the plan, writes the list when asked to. */
import { isStopped, planRatings, type RatingPlan } from '@crownfall/assessment';
import { writeCsv } from '@crownfall/exchange';
import { readProject, writeFiles } from '@crownfall/exchange/node';
import { sampleChart, sampleJson, samplePage, sampleReport } from '../reports/sample-report.ts';
import { reportStopped } from '../reports/stopped-report.ts';
import { EXIT } from '../terminal/failure.ts';
import { progressOn } from '../terminal/progress.ts';
import type { CommonOptions } from './job-options.ts';

export interface SampleCommandOptions extends CommonOptions {
  readonly within?: number;
  readonly trees?: number;
  readonly draws: number;
  readonly seed: number;
  readonly out?: string;
}

/** Percentage points, when nothing is wanted in particular. */
const DEFAULT_WITHIN = 1;
const COLUMNS = ['order', 'tree_id', 'host', 'block_id', 'lon', 'lat'] as const;

export async function sample(project: string, options: SampleCommandOptions): Promise<number> {
  const { within = DEFAULT_WITHIN, trees, draws, seed } = options;
  const progress = progressOn(process.stderr, options.quiet === true);
  progress.stage(`Reading ${project}`, 0);
  const input = await readProject(project).finally(progress.end);
  progress.stage('Choosing trees', 0.4);
  const plan = planRatings(input, { goal: trees === undefined ? { halfWidth: within / 100 } : { trees }, draws, seed });
  progress.end();
  if (isStopped(plan)) return reportStopped(input.title || project, plan.findings, options);
  if (options.out !== undefined) await writePlan(options.out, plan);
  process.stdout.write(
    options.json ? `${JSON.stringify(sampleJson(plan), null, 2)}\n` : `${sampleReport(plan, options.out)}\n`,
  );
  return EXIT.done;
}

async function writePlan(folder: string, plan: RatingPlan): Promise<void> {
  const rows = plan.list.map(({ treeId, host, blockId, at }, i) => ({
    order: i + 1,
    tree_id: treeId,
    host,
    block_id: blockId,
    lon: Number(at.lon.toFixed(7)),
    lat: Number(at.lat.toFixed(7)),
  }));
  await writeFiles(folder, [
    { name: 'sample.csv', text: writeCsv(COLUMNS, rows) },
    { name: 'sample.html', text: [samplePage(plan)] },
    { name: 'sample-precision.svg', text: [sampleChart(plan)] },
  ]);
}
