/** Reckons, plans, compares, and writes the report. */
import { isStopped } from '@crownfall/assessment';
import type { PaperName } from '@crownfall/sheets';
import { installedFonts } from '@crownfall/sheets/node';
import { fittedReport } from '@crownfall/sheets/report';
import type { Language } from '@crownfall/survey';
import { reportStopped } from '../../reports/stopped-report.ts';
import { EXIT } from '../../terminal/failure.ts';
import { progressOn } from '../../terminal/progress.ts';
import { writeContent } from './content-file.ts';
import { followUp, type InputOptions, reportInput, type SeasonWish } from './report-input.ts';

export interface ReportCommandOptions extends InputOptions, SeasonWish {
  readonly out: string;
  readonly language: Language;
  readonly paper: PaperName;
  readonly units?: 'metric' | 'us';
}

export async function report(project: string, options: ReportCommandOptions): Promise<number> {
  const progress = progressOn(process.stderr, options.quiet === true);
  try {
    const { title, outcome } = await reportInput(project, options, progress);
    if (isStopped(outcome)) {
      progress.end();
      return reportStopped(title, outcome.findings, options);
    }
    progress.stage('Comparing two days', 0.7);
    const season = await followUp(outcome.project, options);
    progress.stage(`Writing ${options.out}`, 0.85);
    const { language, units, paper } = options;
    const fonts = await installedFonts();
    const input = { ...outcome, ...(season === null ? {} : { season }) };
    const content = fittedReport(input, { language, ...(units === undefined ? {} : { units }) }, { paper, fonts });
    const { asOf } = outcome.assessment.run;
    const day = asOf ?? `${outcome.assessment.season}-01-01`;
    const pages = await writeContent(options.out, content, { paper, fonts, day });
    progress.end();
    const told = {
      out: options.out,
      pages,
      plan: outcome.plan === undefined ? 'none' : outcome.plan.feasible ? 'made' : 'impossible',
      follow_up: season === null ? null : [season.before, season.after],
    };
    process.stdout.write(options.json ? `${JSON.stringify(told, null, 2)}\n` : `${toldText(told)}\n`);
    return EXIT.done;
  } finally {
    progress.end();
  }
}

interface Told {
  readonly out: string;
  readonly pages: number | null;
  readonly plan: string;
  readonly follow_up: readonly string[] | null;
}

function toldText({ out, pages, plan, follow_up }: Told): string {
  const plans = {
    none: 'No plan: it needs a price list (plan.prices in the settings).',
    made: 'With the plan.',
    impossible: 'No plan meets all limits; the report names those that clash.',
  };
  return [
    `Report written to ${out}${pages === null ? '' : `, ${pages} pages`}.`,
    plans[plan as keyof typeof plans],
    follow_up === null ? 'No follow-up: no earlier year was rated.' : `Follow-up from ${follow_up.join(' to ')}.`,
  ].join('\n');
}
