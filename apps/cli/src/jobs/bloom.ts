/** Lists the bloom windows of a project, writes them as a calendar when asked to. */
import { basename, dirname } from 'node:path';
import { bloomCalendar, isStopped } from '@crownfall/assessment';
import { writeFiles } from '@crownfall/exchange/node';
import { icalendarOf } from '@crownfall/priority';
import { bloomJson, bloomReport, calendarSpans } from '../reports/bloom-report.ts';
import { reportStopped } from '../reports/stopped-report.ts';
import { EXIT } from '../terminal/failure.ts';
import type { CommonOptions } from './job-options.ts';
import { fileBeside, readTemperatures } from './plan-files.ts';
import { reckonedHere } from './reckoned-here.ts';

export interface BloomCommandOptions extends CommonOptions {
  readonly temperatures?: string;
  readonly calendar?: string;
}

export async function bloom(project: string, options: BloomCommandOptions): Promise<number> {
  const { title, outcome } = await reckonedHere(project, options.quiet === true);
  if (isStopped(outcome)) return reportStopped(title, outcome.findings, options);
  const path = await fileBeside(project, options.temperatures, outcome.settings.bloom.temperature_file);
  const calendar = bloomCalendar(outcome, path === null ? [] : await readTemperatures(path));
  if (options.calendar !== undefined) {
    const stamp = `${new Date().toISOString().slice(0, 19)}Z`;
    const text = icalendarOf(`Bloom windows – ${calendar.title}`, calendarSpans(calendar), stamp);
    await writeFiles(dirname(options.calendar), [{ name: basename(options.calendar), text: [text] }]);
  }
  const words = options.json ? JSON.stringify(bloomJson(calendar), null, 2) : bloomReport(calendar, options.calendar);
  process.stdout.write(`${words}\n`);
  return EXIT.done;
}
