/** Reckons, plans, compares, and writes the report. */
import { isStopped } from '@crownfall/assessment';
import type { PaperName } from '@crownfall/sheets';
import { installedFonts } from '@crownfall/sheets/node';
import { fittedReport, type ReportInput } from '@crownfall/sheets/report';
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
      plan: planState(outcome.plan, options),
      follow_up: season === null ? null : [season.before, season.after],
    };
    process.stdout.write(options.json ? `${JSON.stringify(told, null, 2)}\n` : `${toldText(told, options)}\n`);
    return EXIT.done;
  } finally {
    progress.end();
  }
}

function planState(plan: ReportInput['plan'], { plan: wanted }: ReportCommandOptions): keyof typeof PLANS {
  if (plan === undefined) return wanted ? 'none' : 'left_out';
  return plan.feasible ? 'made' : 'impossible';
}

const PLANS = {
  none: 'No plan: it needs a price list (plan.prices in the settings).',
  left_out: 'The plan was left out.',
  made: 'With the plan.',
  impossible: 'No plan meets all limits; the report names those that clash.',
};

interface Told {
  readonly out: string;
  readonly pages: number | null;
  readonly plan: keyof typeof PLANS;
  readonly follow_up: readonly string[] | null;
}

function toldText({ out, pages, plan, follow_up }: Told, { season }: ReportCommandOptions): string {
  const none = season ? 'No follow-up: no earlier year was rated.' : 'The follow-up was left out.';
  return [
    `Report written to ${out}${pages === null ? '' : `, ${pages} pages`}.`,
    PLANS[plan],
    follow_up === null ? none : `Follow-up from ${follow_up.join(' to ')}.`,
  ].join('\n');
}
