/** Copies a project into another folder and format or into one GeoPackage file, and says what was written. */
import { type Writer, type WrittenFormat, writtenFormat } from '@crownfall/exchange';
import { type ConvertReport, convertLayer, convertProject } from '@crownfall/exchange/node';
import { findingsReport } from '../reports/findings-report.ts';
import { EXIT } from '../terminal/failure.ts';
import { type Progress, progressOn } from '../terminal/progress.ts';
import type { CommonOptions } from './job-options.ts';

export interface ConvertOptions extends CommonOptions {
  readonly to: string;
  readonly format: WrittenFormat;
  /** Coordinate system of a single layer that does not state its own. */
  readonly crs?: string;
  /** Table of a GeoPackage that is to be taken as a single layer. */
  readonly table?: string;
}

export async function convert(project: string, options: ConvertOptions): Promise<number> {
  const progress = progressOn(process.stderr, options.quiet === true);
  progress.stage(`Converting ${project}`, 0.3);
  const report = await converted(project, options, progress).finally(progress.end);
  process.stdout.write(options.json ? `${JSON.stringify(report, null, 2)}\n` : inWords(project, report, options));
  return report.files.length > 0 ? EXIT.done : EXIT.dataStops;
}

/** A single layer when both names say so, or a table is named; else a project. */
function converted(from: string, options: ConvertOptions, progress: Progress): Promise<ConvertReport> {
  const { to, format, crs, table } = options;
  if (table === undefined && !isSingleLayer(from, to))
    return convertProject(from, to, { format, writer: nowWriting() });
  let told = 0;
  const onCount = (count: number): void => {
    if (count - told < TOLD_EVERY) return;
    told = count;
    progress.stage(`Converting ${from}: ${count.toLocaleString('en')} features`, 0.5);
  };
  return convertLayer(from, to, {
    onCount,
    ...(crs === undefined ? {} : { crs }),
    ...(table === undefined ? {} : { table }),
  });
}

/** The records of a new GeoPackage file come in by this command, and no person is named. */
function nowWriting(): Writer {
  return { author: 'crownfall convert', at: new Date().toISOString() };
}

const TOLD_EVERY = 100_000;

/** Of a GeoPackage, which may hold a project, the other file decides; a project goes into one or into a folder. */
function isSingleLayer(from: string, to: string): boolean {
  if (isGeoPackage(from)) return writtenFormat(to) !== null;
  const isLayerFile = /\.\w+$/.test(from) && !/(?:^|[\\/])project\.json$/i.test(from);
  return isLayerFile && (writtenFormat(to) !== null || isGeoPackage(to));
}

const isGeoPackage = (path: string): boolean => /\.gpkg$/i.test(path);

function inWords(project: string, { files, findings }: ConvertReport, { to }: ConvertOptions): string {
  const told = findings.length > 0 ? `${findingsReport(project, findings, { all: false })}\n\n` : '';
  return `${told}${files.length > 0 ? `Written to ${to}: ${files.join(', ')}` : 'Nothing was written.'}\n`;
}
