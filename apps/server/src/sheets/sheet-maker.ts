/** Visit sheets as PDF, made in the reckoning thread. Layout and letters are loaded with the first sheet. */
import { readFile } from 'node:fs/promises';
import { assessReckoned, isStopped, reckonProject, treatmentReasons } from '@crownfall/assessment';
import type { SheetFonts } from '@crownfall/sheets';
import { type Language, type ProjectInput, readSurvey } from '@crownfall/survey';
import { DRAWS, SEED } from '../figures/make-figures.ts';

/** Plain data: it travels to the thread. */
export interface SheetWish {
  readonly blockId: string;
  readonly paper: 'letter' | 'a4';
  readonly language: Language;
  /** Null: the project's own. */
  readonly units: 'metric' | 'us' | null;
  /** Opens the block on a phone; null prints no code. */
  readonly link: string | null;
}

/** What the thread answers: null when there is no such block, or the data stops the job. */
export interface MadeSheet {
  readonly pdf: Uint8Array | null;
}

/** A project reckoned once for all its sheets. */
export class SheetMaker {
  readonly #reckoned: ReturnType<typeof reckonedOf>;
  #fonts: Promise<SheetFonts> | null = null;

  constructor(input: ProjectInput) {
    this.#reckoned = reckonedOf(input);
  }

  /** The same bytes as `crownfall sheet` writes of the same project under the same options. */
  async sheet({ blockId, paper, language, units, link }: SheetWish): Promise<MadeSheet> {
    if (!this.#reckoned?.assessment.blocks.some((block) => block.blockId === blockId)) return { pdf: null };
    const { assessment, records, reasonsOf } = this.#reckoned;
    const [{ visitBook }, { writePdf }] = await Promise.all([
      import('@crownfall/sheets'),
      import('@crownfall/sheets/pdf'),
    ]);
    this.#fonts ??= import('@crownfall/sheets/node').then(({ installedFonts }) => installedFonts());
    const fonts = await this.#fonts;
    const options = {
      blockIds: [blockId],
      paper,
      language,
      ...(units === null ? {} : { units }),
      createdAt: `${assessment.run.asOf ?? `${assessment.season}-01-01`}T00:00:00Z`,
      version: await ownVersion(),
      reasonsOf,
      ...(link === null ? {} : { linkOf: () => link }),
    };
    return { pdf: await writePdf(visitBook(assessment, records, options, fonts), fonts) };
  }
}

function reckonedOf(input: ProjectInput) {
  const job = reckonProject(input);
  if (isStopped(job)) return null;
  const assessment = assessReckoned(job, { draws: DRAWS, seed: SEED });
  return { assessment, records: readSurvey(input).survey, reasonsOf: treatmentReasons(job) };
}

async function ownVersion(): Promise<string> {
  const text = await readFile(new URL('../../package.json', import.meta.url), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}
