/** Checks the raters of a project, prints how they agree, keeps their biases when asked to. */
import { checkRaters, isStopped, type RaterCheck, type TrainingReading } from '@crownfall/assessment';
import { RATERS_FILE, ratersText } from '@crownfall/exchange';
import { projectFolder, readProject, storedName, writeFiles } from '@crownfall/exchange/node';
import type { Language } from '@crownfall/survey';
import { raterCharts, ratersJson, ratersPage, ratersReport } from '../reports/raters-report.ts';
import { reportStopped } from '../reports/stopped-report.ts';
import { EXIT } from '../terminal/failure.ts';
import { progressOn } from '../terminal/progress.ts';
import type { CommonOptions } from './job-options.ts';
import { tableAt } from './read-table.ts';

export interface RatersOptions extends CommonOptions {
  readonly training?: string;
  readonly store?: true;
  readonly out?: string;
  readonly language: Language;
}

export async function raters(project: string, options: RatersOptions): Promise<number> {
  const progress = progressOn(process.stderr, options.quiet === true);
  progress.stage(`Reading ${project}`, 0);
  const input = await readProject(project).finally(progress.end);
  const training = options.training === undefined ? undefined : await readTraining(options.training);
  const check = checkRaters(input, training);
  if (isStopped(check)) return reportStopped(input.title || project, check.findings, options);
  const kept = options.store === true && Object.keys(check.keep).length > 0;
  if (kept) {
    const text = ratersText(check.keep, check.biasesAgainst);
    await writeFiles(await projectFolder(project), [{ name: storedName(project, RATERS_FILE), text: [text] }]);
  }
  if (options.out !== undefined) await writeSummary(options.out, check, options.language);
  process.stdout.write(
    options.json
      ? `${JSON.stringify(ratersJson(check, kept), null, 2)}\n`
      : `${ratersReport(check, kept ? storedName(project, RATERS_FILE) : null, options.language)}\n`,
  );
  if (options.store && !kept) process.stderr.write('crownfall: no bias is known well enough to keep.\n');
  return options.store && !kept ? EXIT.dataStops : EXIT.done;
}

async function writeSummary(folder: string, check: RaterCheck, language: Language): Promise<void> {
  const charts = raterCharts(check, language).map(({ name, svg }) => ({ name, text: [svg] }));
  await writeFiles(folder, [{ name: 'raters.html', text: [ratersPage(check, language)] }, ...charts]);
}

/** Reads a training file: one row for each answer, `item`, `rater`, `known_pct`, `rated_pct`. */
async function readTraining(path: string): Promise<TrainingReading[]> {
  const rows = await tableAt(path, ['item', 'rater', 'known_pct', 'rated_pct']);
  return rows.map((row, i) => ({
    item: row.item,
    rater: row.rater,
    known: shareOf(row.known_pct, 'known_pct', i),
    rated: shareOf(row.rated_pct, 'rated_pct', i),
  }));
}

function shareOf(text: string, column: string, row: number): number {
  const pct = Number(text.replace('%', ''));
  if (text.trim() === '' || !(pct >= 0 && pct <= 100)) {
    throw new RangeError(`training file, row ${row + 2}: expected ${column} from 0 to 100, got ${text || 'nothing'}`);
  }
  return pct / 100;
}
