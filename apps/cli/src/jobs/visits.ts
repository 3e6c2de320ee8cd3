/** Reviews a day's visits, prints them, writes a page and a table when asked to. */
import { isStopped, reviewVisits } from '@crownfall/assessment';
import { openProjectStore, readProject, writeFiles } from '@crownfall/exchange/node';
import { isIsoDay } from '@crownfall/survey';
import { reportStopped } from '../reports/stopped-report.ts';
import { visitsCsv, visitsJson, visitsPage, visitsText } from '../reports/visits-report.ts';
import { EXIT } from '../terminal/failure.ts';
import { progressOn } from '../terminal/progress.ts';
import type { CommonOptions } from './job-options.ts';

export interface VisitsCommandOptions extends CommonOptions {
  readonly day?: string;
  readonly out?: string;
  readonly language: 'en' | 'es';
  readonly draws: number;
  readonly seed: number;
}

export async function visits(project: string, options: VisitsCommandOptions): Promise<number> {
  const { day, out, language, draws, seed } = options;
  if (day !== undefined && !isIsoDay(day)) throw new RangeError(`--day: expected YYYY-MM-DD, got ${day}`);
  const progress = progressOn(process.stderr, options.quiet === true);
  progress.stage(`Reading ${project}`, 0);
  const input = await readProject(project).finally(progress.end);
  progress.stage('Reckoning with and without the day', 0.4);
  const review = reviewVisits(input, { ...(day === undefined ? {} : { day }), draws, seed });
  progress.end();
  if (isStopped(review)) return reportStopped(input.title || project, review.findings, options);
  const report = { review, conflicts: await openConflicts(project), language };
  if (out !== undefined) {
    await writeFiles(out, [
      { name: 'visits.html', text: [visitsPage(report)] },
      { name: 'visits.csv', text: [visitsCsv(report)] },
    ]);
  }
  process.stdout.write(options.json ? `${JSON.stringify(visitsJson(report), null, 2)}\n` : `${visitsText(report)}\n`);
  return EXIT.done;
}

/** Edits that met another's and wait for a person; only a store knows of them. */
async function openConflicts(project: string): Promise<number> {
  if (!/\.gpkg$/i.test(project)) return 0;
  const { store } = await openProjectStore(project, { readOnly: true });
  if (store === null) return 0;
  return (await store.conflicts('open').finally(() => store.close())).length;
}
