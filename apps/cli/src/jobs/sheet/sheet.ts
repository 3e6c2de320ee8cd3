/** Reckons a project, lays out visit sheets, writes them as one PDF. */
import { basename, dirname, resolve } from 'node:path';
import { type Assessment, isStopped, treatmentReasons } from '@crownfall/assessment';
import { writeFiles } from '@crownfall/exchange/node';
import { groundWanted, visitBook } from '@crownfall/sheets';
import { installedFonts } from '@crownfall/sheets/node';
import { writePdf } from '@crownfall/sheets/pdf';
import { describeFinding, type Language, nearestWord, readSurvey } from '@crownfall/survey';
import { reportStopped } from '../../reports/stopped-report.ts';
import { EXIT } from '../../terminal/failure.ts';
import { progressOn } from '../../terminal/progress.ts';
import { ownVersion } from '../../versions.ts';
import type { CommonOptions } from '../job-options.ts';
import { reckonedProject } from '../reckoned-project.ts';
import { type GroundPictures, groundPictures } from './ground-pictures.ts';

export interface SheetOptions extends CommonOptions {
  readonly block?: readonly string[];
  readonly top?: number;
  readonly out: string;
  readonly paper: 'letter' | 'a4';
  readonly language: Language;
  readonly units?: 'metric' | 'us';
  readonly link?: string;
  readonly imagery?: true;
  readonly from?: { readonly lon: number; readonly lat: number };
  readonly to?: { readonly lon: number; readonly lat: number };
  readonly draws: number;
  readonly seed: number;
}

export async function sheet(project: string, options: SheetOptions): Promise<number> {
  if (options.block === undefined && options.top === undefined)
    throw new RangeError('sheet: expected --block with ids of blocks, or --top with how many, got neither');
  const progress = progressOn(process.stderr, options.quiet === true);
  try {
    const { input, outcome, job } = await reckonedProject(project, progress, { ...options, workers: 1 });
    if (isStopped(outcome) || job === null) {
      progress.end();
      return reportStopped(input.title || project, outcome.findings, options);
    }
    progress.stage('Laying out sheets', 0.93);
    const blockIds = blocksAsked(outcome, options);
    const fonts = await installedFonts();
    const { link } = options;
    const pictures = options.imagery
      ? await groundPictures(project, input, wantedOf(outcome, blockIds, options))
      : null;
    if (pictures !== null) reportPictures(pictures, options);
    const book = visitBook(
      outcome,
      readSurvey(input).survey,
      {
        ...options,
        blockIds,
        createdAt: `${outcome.run.asOf ?? `${outcome.season}-01-01`}T00:00:00Z`,
        version: ownVersion(),
        reasonsOf: treatmentReasons(job),
        ...(pictures === null ? {} : { imageryOf: (id) => pictures.byBlock.get(id) }),
        ...(link === undefined ? {} : { linkOf: (id) => link.replaceAll('{block}', encodeURIComponent(id)) }),
      },
      fonts,
    );
    progress.stage(`Writing ${options.out}`, 0.97);
    const file = resolve(options.out);
    await writeFiles(dirname(file), [{ name: basename(file), text: [await writePdf(book, fonts)] }]);
    progress.end();
    const told = { out: options.out, pages: book.pages.length, blocks: blockIds };
    process.stdout.write(options.json ? `${JSON.stringify(told, null, 2)}\n` : `${toldText(told)}\n`);
    return EXIT.done;
  } finally {
    progress.end();
  }
}

function wantedOf(outcome: Assessment, blockIds: readonly string[], { paper }: SheetOptions) {
  return new Map(blockIds.map((id) => [id, groundWanted(outcome, id, paper)]));
}

/** A map without its picture is still a map; that it lacks it is told. */
function reportPictures({ byBlock, wanted, findings }: GroundPictures, { language, quiet }: SheetOptions): void {
  if (quiet) return;
  for (const finding of findings) process.stderr.write(`${describeFinding(finding, language).what}\n`);
  const lacking = wanted.filter((id) => !byBlock.has(id));
  if (lacking.length > 0) process.stderr.write(`No aerial picture lies below ${lacking.join(', ')}.\n`);
}

function blocksAsked({ blocks }: Assessment, { block, top }: SheetOptions): readonly string[] {
  const known = blocks.map(({ blockId }) => blockId);
  if (block === undefined) return known.slice(0, top);
  for (const id of block) {
    if (known.includes(id)) continue;
    const near = nearestWord(id, known);
    const hint = near === undefined ? '' : `; did you mean ${near}?`;
    throw new RangeError(`sheet: expected ids of blocks (${known.join(', ')}), got ${id}${hint}`);
  }
  return block;
}

function toldText({ out, pages, blocks }: { out: string; pages: number; blocks: readonly string[] }): string {
  const sheets = blocks.length === 1 ? `Sheet of block ${blocks[0]}` : `Sheets of ${blocks.length} blocks`;
  return `${sheets}: ${pages} ${pages === 1 ? 'page' : 'pages'} in ${out}. Print at 100 %.`;
}
