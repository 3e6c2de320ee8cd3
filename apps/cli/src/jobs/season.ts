/** Reviews the season between two days, prints it, writes the summary when asked to. */
import { basename } from 'node:path';
import { isStopped, reviewSeason, type SeasonReview } from '@crownfall/assessment';
import { readProject, writeFiles } from '@crownfall/exchange/node';
import type { Language } from '@crownfall/survey';
import { seasonCharts, seasonPage } from '../reports/season-page.ts';
import { seasonJson, seasonReport } from '../reports/season-report.ts';
import { SEASON_WORDS } from '../reports/season-words.ts';
import { reportStopped } from '../reports/stopped-report.ts';
import { EXIT } from '../terminal/failure.ts';
import { progressOn } from '../terminal/progress.ts';
import type { CommonOptions } from './job-options.ts';
import { tableAt } from './read-table.ts';

export interface SeasonCommandOptions extends CommonOptions {
  readonly before?: string;
  readonly after?: string;
  readonly treated?: string;
  readonly reach: number;
  readonly draws: number;
  readonly seed: number;
  readonly out?: string;
  readonly language: Language;
}

export async function season(project: string, options: SeasonCommandOptions): Promise<number> {
  const { before, after, reach, draws, seed } = options;
  const progress = progressOn(process.stderr, options.quiet === true);
  progress.stage(`Reading ${project}`, 0);
  const input = await readProject(project).finally(progress.end);
  const groups = options.treated === undefined ? {} : await readGroups(options.treated);
  progress.stage('Comparing two days', 0.4);
  const review = reviewSeason(input, {
    ...(before === undefined ? {} : { before }),
    ...(after === undefined ? {} : { after }),
    ...groups,
    reachM: reach,
    draws,
    seed,
  });
  progress.end();
  if (isStopped(review)) return reportStopped(input.title || project, review.findings, options);
  if (options.out !== undefined) await writeSummary(options.out, review, options.language);
  process.stdout.write(
    options.json
      ? `${JSON.stringify(seasonJson(review), null, 2)}\n`
      : `${seasonReport(review, input.units, options.language)}\n`,
  );
  if (options.out !== undefined && !options.json)
    process.stdout.write(`${SEASON_WORDS[options.language].written(options.out)}\n`);
  return EXIT.done;
}

async function writeSummary(folder: string, review: SeasonReview, language: Language): Promise<void> {
  const charts = seasonCharts(review, language).map(({ name, svg }) => ({ name, text: [svg] }));
  await writeFiles(folder, [{ name: 'season.html', text: [seasonPage(review, language)] }, ...charts]);
}

/** Treated trees, and checks when the file has a column `group`. */
export async function readGroups(path: string): Promise<{ treated: string[]; checks?: string[] }> {
  const file = basename(path);
  const hasGroups = await columnThere(path);
  const rows = await tableAt<'tree_id' | 'group'>(path, hasGroups ? ['tree_id', 'group'] : ['tree_id']);
  const of = (group: string) => rows.filter((row) => (row.group ?? 'treated') === group).map((row) => row.tree_id);
  const other = rows.findIndex((row) => !['treated', 'check'].includes(row.group ?? 'treated'));
  if (other >= 0) {
    throw new RangeError(
      `${file}, row ${other + 2}: expected group treated or check, got ${rows[other].group || 'nothing'}`,
    );
  }
  return hasGroups && of('check').length > 0
    ? { treated: of('treated'), checks: of('check') }
    : { treated: of('treated') };
}

async function columnThere(path: string): Promise<boolean> {
  try {
    await tableAt(path, ['tree_id', 'group']);
    return true;
  } catch (error) {
    if (error instanceof RangeError && error.message.includes('expected columns')) return false;
    throw error;
  }
}
