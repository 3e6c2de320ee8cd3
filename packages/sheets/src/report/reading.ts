/** What every section of a report needs: what is told, in which language and units. */
import type { Assessment, SeasonReview } from '@crownfall/assessment';
import type { Criterion, Language, Survey } from '@crownfall/survey';
import type { Units } from '../quantities.ts';
import type { AnyPlan } from './any-plan.ts';
import { EN, type Words } from './words/en.ts';
import { ES } from './words/es.ts';

/** How far one weight must move before another block comes among the first; null: no weight on that side does. */
interface WeightShift {
  readonly criterion: Criterion;
  readonly weight: number;
  readonly down: { readonly weight: number; readonly rival: string } | null;
  readonly up: { readonly weight: number; readonly rival: string } | null;
}

/** What a report is made from. */
export interface ReportInput {
  readonly assessment: Assessment;
  /** Water and streets, drawn on the maps. */
  readonly records?: Pick<Survey, 'water' | 'streets'>;
  /** The season's plan, or why there is none. */
  readonly plan?: AnyPlan;
  /** For the first blocks that the settings name. */
  readonly shifts?: readonly WeightShift[];
  /** The follow-up between two days. */
  readonly season?: SeasonReview;
  /** Of the run that made the assessment. */
  readonly run?: {
    readonly program: string;
    readonly inputs: readonly { readonly file: string; readonly sha256: string }[];
  };
}

export interface Reading extends ReportInput {
  readonly language: Language;
  readonly units: Units;
  readonly words: Words;
}

export const REPORT_WORDS: Readonly<Record<Language, Words>> = { en: EN, es: ES };
