/** The whole job in its order: survey, ground, stain, rank, draws, results. */
import { type CrownScene, type Finding, type OverlayLedger, reckonOverlay, sceneInput } from '@crownfall/geometry';
import { asOfDay, type ProjectInput, readSurvey, type Settings, type Survey } from '@crownfall/survey';
import { drawPart } from './draws/draw-part.ts';
import { type DrawWork, drawWork } from './draws/draw-work.ts';
import { type DrawnRanges, expectDraws, gatherDraws } from './draws/drawn-ranges.ts';
import { crownScene, groundOf, type PlacedGround, placeGround } from './ground/reckon-geometry.ts';
import { noProgress, type Progress } from './progress.ts';
import { rank } from './rank-stage.ts';
import type { Assessment } from './result.ts';
import { compose } from './results/compose.ts';
import type { Stages } from './results/stages.ts';
import { reckonStain } from './stain-stage.ts';

export interface AssessOptions {
  /** Random draws for the ranges: 0 (the default) leaves them null, else 100 to 60,000. RangeError otherwise. */
  readonly draws?: number;
  /** Whole number from 0; equal seeds give equal ranges. */
  readonly seed?: number;
  readonly progress?: Progress;
}

/** The data has errors that stop the job; nothing was reckoned. */
export interface Stopped {
  readonly stopped: true;
  readonly findings: readonly Finding[];
}

/** A job reckoned and ranked, its ranges not drawn yet. */
export interface Reckoned {
  readonly stages: Omit<Stages, 'drawn'>;
  readonly settings: Settings;
  readonly asOf: string;
}

/**
 * Assesses a project: from records to ranked blocks. Pure: the same input gives the same outcome, digit for digit. Bad data
 * never throws; it comes back as findings, and what they leave out is counted in `run.counts`. Time n log n in crowns and
 * pavement.
 *
 * Example: `const outcome = assess(input); if (!isStopped(outcome)) outcome.blocks[0].stainedM2.value` → 41.7 (m²).
 */
export function assess(input: ProjectInput, options: AssessOptions = {}): Assessment | Stopped {
  const { draws = 0, progress = noProgress } = options;
  expectDraws(draws);
  const reckoned = reckonProject(input, progress);
  return isStopped(reckoned) ? reckoned : assessReckoned(reckoned, options);
}

/** The rest of {@link assess}: draws and results of a reckoned job, for a caller who asks more of the job than its outcome. */
export function assessReckoned(reckoned: Reckoned, options: AssessOptions = {}): Assessment {
  const { draws = 0, seed = 1, progress = noProgress } = options;
  expectDraws(draws);
  progress('draws', 0, Math.max(1, draws));
  const drawn = draws > 0 ? drawnHere(drawWorkOf(reckoned, seed), draws, progress) : undefined;
  progress('draws', Math.max(1, draws), Math.max(1, draws));
  return finishedAssessment(reckoned, { seed, drawn, progress });
}

/** A job whose crowns, pavement and blocks are placed; only areas are missing. */
export interface Placed {
  readonly input: ProjectInput;
  readonly survey: Survey;
  readonly settings: Settings;
  readonly findings: readonly Finding[];
  readonly ground: PlacedGround;
}

/** All but the draws: for a caller who shares them out among workers with `drawWorkOf` and `drawPart`. */
export function reckonProject(input: ProjectInput, progress: Progress = noProgress): Reckoned | Stopped {
  const placed = placeProject(input, progress);
  if (isStopped(placed)) return placed;
  const overlay = reckonOverlay(sceneInput(sceneOf(placed)), (done, total) => progress('overlay', done, total));
  return reckonPlaced(placed, overlay, progress);
}

/** Everything before the overlay: for a caller who shares the overlay out with `overlayJob(sceneOf(placed))`. */
export function placeProject(input: ProjectInput, progress: Progress = noProgress): Placed | Stopped {
  progress('survey', 0, 1);
  const read = readSurvey(input);
  if (stops(read.findings)) return { stopped: true, findings: read.findings };
  progress('survey', 1, 1);
  return placedAsRead(input, read, progress);
}

/** What can be placed, whatever the findings. */
export function placedAsRead(
  input: ProjectInput,
  { survey, settings, findings }: ReturnType<typeof readSurvey>,
  progress: Progress,
): Placed {
  const ground = placeGround(survey, settings, progress);
  progress('overlay', 0, 1);
  return { input, survey, settings, findings, ground };
}

/** What the overlay of a placed job is reckoned from. */
export function sceneOf({ ground, settings }: Placed): CrownScene {
  return crownScene(ground, settings);
}

/** A placed job with the overlay of its scene: stained areas and ranks. */
export function reckonPlaced(
  { input, survey, settings, findings, ground: placed }: Placed,
  overlay: OverlayLedger,
  progress: Progress = noProgress,
): Reckoned | Stopped {
  const asOf = asOfDay(survey, settings);
  const ground = groundOf(placed, survey.trees, overlay);
  if (stops(ground.findings)) return { stopped: true, findings: [...findings, ...ground.findings] };
  progress('stain', 0, 1);
  const stain = reckonStain(ground, survey, settings, asOf);
  progress('stain', 1, 1);
  progress('rank', 0, 1);
  const ranking = rank(ground, stain, survey, settings, asOf);
  progress('rank', 1, 1);
  return { stages: { input, survey, ground, stain, ranking, findings }, settings, asOf };
}

/** The draws of a reckoned job as plain data. */
export function drawWorkOf({ stages, settings }: Reckoned, seed: number): DrawWork {
  return drawWork(stages.ground, stages.stain, stages.ranking, { settings, seed });
}

/** The outcome of a reckoned job with the ranges that were drawn for it, if any. */
export function finishedAssessment(
  { stages, settings, asOf }: Reckoned,
  { seed, drawn, progress = noProgress }: { seed: number; drawn?: DrawnRanges | undefined; progress?: Progress },
): Assessment {
  progress('results', 0, 1);
  const outcome = compose({ ...stages, drawn }, { settings, asOf, draws: drawn?.draws ?? 0, seed });
  progress('results', 1, 1);
  return outcome;
}

/** True when the job was stopped by errors in the data. */
export function isStopped(outcome: object): outcome is Stopped {
  return 'stopped' in outcome;
}

/** Draws between two calls of the progress. */
const STRIDE = 50;

function drawnHere(work: DrawWork, draws: number, progress: Progress): DrawnRanges {
  const part = drawPart(work, 0, draws, (done) => {
    if (done % STRIDE === 0 && done < draws) progress('draws', done, draws);
  });
  return gatherDraws(work, [part]);
}

function stops(findings: readonly Finding[]): boolean {
  return findings.some(({ effect }) => effect === 'stops');
}
