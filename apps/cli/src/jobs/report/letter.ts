/** Reckons, plans, and writes the letter about one block. */
import { isStopped } from '@crownfall/assessment';
import type { PaperName } from '@crownfall/sheets';
import { installedFonts } from '@crownfall/sheets/node';
import { letterContent } from '@crownfall/sheets/report';
import type { Language } from '@crownfall/survey';
import { reportStopped } from '../../reports/stopped-report.ts';
import { EXIT } from '../../terminal/failure.ts';
import { progressOn } from '../../terminal/progress.ts';
import { writeContent } from './content-file.ts';
import { type InputOptions, reportInput } from './report-input.ts';

export interface LetterCommandOptions extends InputOptions {
  readonly block: string;
  readonly ask: readonly string[];
  readonly out: string;
  readonly to?: string;
  readonly about?: string;
  readonly language: Language;
  readonly paper: PaperName;
  readonly units?: 'metric' | 'us';
}

export async function letter(project: string, options: LetterCommandOptions): Promise<number> {
  const progress = progressOn(process.stderr, options.quiet === true);
  try {
    const { title, outcome } = await reportInput(project, options, progress);
    if (isStopped(outcome)) {
      progress.end();
      return reportStopped(title, outcome.findings, options);
    }
    const { block, ask, to, about, language, units, paper } = options;
    const content = letterContent(outcome, {
      blockId: block,
      language,
      ask,
      ...(units === undefined ? {} : { units }),
      ...(to === undefined ? {} : { to }),
      ...(about === undefined ? {} : { about }),
    });
    progress.stage(`Writing ${options.out}`, 0.9);
    const fonts = await installedFonts();
    const { run, season } = outcome.assessment;
    const pages = await writeContent(options.out, content, { paper, fonts, day: run.asOf ?? `${season}-01-01` });
    progress.end();
    const told = { out: options.out, block, pages };
    process.stdout.write(
      options.json
        ? `${JSON.stringify(told, null, 2)}\n`
        : `Letter about block ${block} written to ${options.out}. Read it before you send it.\n`,
    );
    return EXIT.done;
  } finally {
    progress.end();
  }
}
