/** Visit sheets of what is seen, as a PDF, made in the worker. Their layout and letters are loaded when first wanted. */
import { assessReckoned, isStopped, reckonProject, treatmentReasons } from '@crownfall/assessment';
import { type PaperName, visitBook } from '@crownfall/sheets';
import { writePdf } from '@crownfall/sheets/pdf';
import { type ProjectInput, readSurvey } from '@crownfall/survey';
import type { Units } from '../language/quantities.ts';
import type { Language } from '../state/app-state.ts';
import { letters } from './letters.ts';

export interface SheetWish {
  /** More than one make a book in walking order. */
  readonly blockIds: readonly string[];
  readonly paper: PaperName;
  readonly language: Language;
  readonly units: Units;
  /** Opens a block on a phone, its id added at the end; null prints no code. */
  readonly link: string | null;
}

/** As the command line draws by default. */
const DRAWS = 1000;
const SEED = 1;

/** `input`: the project with its edits and the weights in force. */
export async function makeSheets(input: ProjectInput, { link, ...wish }: SheetWish): Promise<Blob> {
  const job = reckonProject(input);
  if (isStopped(job)) throw new Error('The project has errors that stop the job.');
  const assessment = assessReckoned(job, { draws: DRAWS, seed: SEED });
  const fonts = await letters();
  const { asOf } = assessment.run;
  const book = visitBook(
    assessment,
    readSurvey(input).survey,
    {
      ...wish,
      createdAt: `${asOf ?? `${assessment.season}-01-01`}T00:00:00Z`,
      version: import.meta.env.CROWNFALL_VERSION,
      reasonsOf: treatmentReasons(job),
      ...(link === null ? {} : { linkOf: (id) => link + encodeURIComponent(id) }),
    },
    fonts,
  );
  return new Blob([(await writePdf(book, fonts)) as BlobPart], { type: 'application/pdf' });
}
