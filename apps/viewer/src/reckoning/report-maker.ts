/** The report on what is seen, as a page or as a PDF, made in the worker. Its layout and its letters are loaded when first wanted. */
import { assess, isStopped, reviewSeason } from '@crownfall/assessment';
import { type NoPlan, type WorkPlan, weightShiftToChangeTop } from '@crownfall/priority';
import { type ProjectInput, readSurvey } from '@crownfall/survey';
import type { Units } from '../language/quantities.ts';
import type { Language } from '../state/app-state.ts';

export interface ReportWish {
  readonly as: 'html' | 'pdf';
  readonly language: Language;
  readonly units: Units;
  /** Null: none was made. */
  readonly plan: WorkPlan | NoPlan | null;
  /** ISO instant. */
  readonly createdAt: string;
}

/** As the command line draws by default. */
const DRAWS = 1000;
const SEED = 1;

/** `input`: the project with its edits and the weights in force. */
export async function makeReport(input: ProjectInput, wish: ReportWish): Promise<Blob> {
  const { fittedReport, reportContent, reportHtml, reportPages } = await import('@crownfall/sheets/report');
  const assessment = assess(input, { draws: DRAWS, seed: SEED });
  if (isStopped(assessment)) throw new Error('The project has errors that stop the job.');
  const { language, units, plan, createdAt } = wish;
  const season = seasonOf(input);
  const about = {
    assessment,
    shifts: weightShiftToChangeTop(assessment.blocks, assessment.run.settings.priority.top_n),
    records: readSurvey(input).survey,
    ...(plan && { plan }),
    ...(season && { season }),
  };
  const paper = units === 'us' ? 'letter' : 'a4';
  if (wish.as === 'html') {
    const html = reportHtml(reportContent(about, { language, units }), { paper });
    return new Blob([html], { type: 'text/html' });
  }
  const [{ writePdf }, { letters }] = await Promise.all([import('@crownfall/sheets/pdf'), import('./letters.ts')]);
  const fonts = await letters();
  const content = fittedReport(about, { language, units }, { paper, fonts });
  const bytes = await writePdf(reportPages(content, { paper, fonts, createdAt }), fonts);
  return new Blob([bytes as BlobPart], { type: 'application/pdf' });
}

/** Null without ratings of an earlier year. */
function seasonOf(input: ProjectInput) {
  try {
    const review = reviewSeason(input);
    return isStopped(review) ? null : review;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
