/** Lists the bloom windows of a project, writes them as a calendar when asked to. */
import { readFile } from 'node:fs/promises';
import { basename, dirname } from 'node:path';
import { bloomCalendar, isStopped } from '@crownfall/assessment';
import { readTemperatures } from '@crownfall/exchange';
import { writeFiles } from '@crownfall/exchange/node';
import { calendarSpans, icalendarOf } from '@crownfall/priority';
import { BLOOM_WORDS, type Language } from '@crownfall/survey';
import { bloomJson, bloomReport } from '../reports/bloom-report.ts';
import { reportStopped } from '../reports/stopped-report.ts';
import { EXIT } from '../terminal/failure.ts';
import type { CommonOptions } from './job-options.ts';
import { fileBeside } from './plan-files.ts';
import { reckonedHere } from './reckoned-here.ts';

export interface BloomCommandOptions extends CommonOptions {
  readonly temperatures?: string;
  readonly calendar?: string;
  /** Of the calendar file. */
  readonly language: Language;
}

export async function bloom(project: string, options: BloomCommandOptions): Promise<number> {
  const { title, outcome } = await reckonedHere(project, options.quiet === true);
  if (isStopped(outcome)) return reportStopped(title, outcome.findings, options);
  const path = await fileBeside(project, options.temperatures, outcome.settings.bloom.temperature_file);
  const calendar = bloomCalendar(
    outcome,
    path === null ? [] : await readTemperatures(await readFile(path), basename(path)),
  );
  if (options.calendar !== undefined) {
    const stamp = `${new Date().toISOString().slice(0, 19)}Z`;
    const name = BLOOM_WORDS[options.language].calendar(calendar.title);
    const text = icalendarOf(name, calendarSpans(calendar, options.language), stamp);
    await writeFiles(dirname(options.calendar), [{ name: basename(options.calendar), text: [text] }]);
  }
  const words = options.json ? JSON.stringify(bloomJson(calendar), null, 2) : bloomReport(calendar, options.calendar);
  process.stdout.write(`${words}\n`);
  return EXIT.done;
}
