/** What reports and letters are made from: a reckoned project with ranges, its plan, its follow-up. */
import {
  drawWorkOf,
  expectDraws,
  finishedAssessment,
  isStopped,
  planWork,
  type Reckoned,
  reckonProject,
  reviewSeason,
  type SeasonReview,
  type Stopped,
} from '@crownfall/assessment';
import { readProject } from '@crownfall/exchange/node';
import { weightShiftToChangeTop } from '@crownfall/priority';
import type { ReportInput } from '@crownfall/sheets/report';
import { type ProjectInput, readSurvey } from '@crownfall/survey';
import type { Progress } from '../../terminal/progress.ts';
import { ownVersion } from '../../versions.ts';
import { drawRanges } from '../draw-ranges.ts';
import type { CommonOptions } from '../job-options.ts';
import { planOptions } from '../plan.ts';
import { readGroups } from '../season.ts';

export interface InputOptions extends CommonOptions {
  readonly draws: number;
  readonly seed: number;
  /** False: left out. */
  readonly plan: boolean;
  readonly budget?: number;
  readonly crewDays?: number;
  readonly temperatures?: string;
  readonly addresses?: string;
}

export interface SeasonWish {
  readonly season: boolean;
  readonly before?: string;
  readonly after?: string;
  readonly treated?: string;
}

export interface Gathered {
  readonly title: string;
  readonly outcome: (ReportInput & { readonly project: ProjectInput }) | Stopped;
}

/** Random draws of a plan or a follow-up: each is a reckoning of its own, and more change little. */
const MOST_PLAN_DRAWS = 200;
const MOST_SEASON_DRAWS = 500;

/** Reads, reckons and plans. A plan is made only when there are prices: without them nothing could be done. */
export async function reportInput(project: string, options: InputOptions, progress: Progress): Promise<Gathered> {
  expectDraws(options.draws);
  progress.stage(`Reading ${project}`, 0);
  const input = await readProject(project);
  progress.stage('Reckoning stained pavement', 0.1);
  const reckoned = reckonProject(input);
  const title = input.title || project;
  if (isStopped(reckoned)) return { title, outcome: reckoned };
  const { draws, seed } = options;
  if (draws > 0) progress.stage('Drawing ranges', 0.3);
  const drawn = draws > 0 ? await drawRanges(drawWorkOf(reckoned, seed), { draws, seed, workers: 1 }) : undefined;
  const assessment = finishedAssessment(reckoned, { seed, drawn });
  const plan = await planOf(project, reckoned, options, progress);
  return {
    title,
    outcome: {
      project: input,
      assessment,
      shifts: weightShiftToChangeTop(assessment.blocks, reckoned.settings.priority.top_n),
      records: readSurvey(input).survey,
      run: {
        program: `crownfall ${ownVersion()}`,
        inputs: input.sources.map(({ file, sha256 }) => ({ file, sha256 })),
      },
      ...(plan === null ? {} : { plan }),
    },
  };
}

async function planOf(
  project: string,
  reckoned: Reckoned,
  options: InputOptions,
  progress: Progress,
): Promise<ReturnType<typeof planWork> | null> {
  if (!options.plan || reckoned.settings.plan.prices.length === 0) return null;
  progress.stage('Choosing what to do', 0.5);
  const draws = Math.min(options.draws, MOST_PLAN_DRAWS);
  return planWork(reckoned, await planOptions(project, reckoned, { ...options, draws, seconds: 20, rows: 1 }));
}

/** The follow-up that is asked for, or the one from the newest earlier year; null when no earlier year was rated. */
export async function followUp(
  input: ProjectInput,
  wish: SeasonWish & Pick<InputOptions, 'draws' | 'seed'>,
): Promise<SeasonReview | null> {
  const { season, before, after, treated, seed } = wish;
  if (!season || (before === undefined && !ratedEarlier(input))) return null;
  const review = reviewSeason(input, {
    ...(before === undefined ? {} : { before }),
    ...(after === undefined ? {} : { after }),
    ...(treated === undefined ? {} : await readGroups(treated)),
    draws: Math.min(wish.draws, MOST_SEASON_DRAWS),
    seed,
  });
  return isStopped(review) ? null : review;
}

function ratedEarlier(input: ProjectInput): boolean {
  const years = new Set(readSurvey(input).survey.ratings.map(({ ratedOn }) => ratedOn.slice(0, 4)));
  return years.size > 1;
}
