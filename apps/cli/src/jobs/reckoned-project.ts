/** Reads and reckons a project, telling the progress; the part that `check` and `reckon` share. */
import { performance } from 'node:perf_hooks';
import {
  type Assessment,
  drawWorkOf,
  expectDraws,
  finishedAssessment,
  isStopped,
  type Placed,
  placeProject,
  type Reckoned as ReckonedJob,
  reckonPlaced,
  type Stage,
  type Stopped,
  sceneOf,
} from '@crownfall/assessment';
import { readProject } from '@crownfall/exchange/node';
import type { OverlayLedger } from '@crownfall/geometry';
import type { ProjectInput } from '@crownfall/survey';
import type { Progress } from '../terminal/progress.ts';
import { type DrawOptions, drawRanges } from './draw-ranges.ts';
import { overlayLedger } from './overlay/overlay-ledger.ts';
import { fingerprintOf, readTiles } from './overlay/tile-file.ts';

export interface Reckoned {
  readonly input: ProjectInput;
  readonly outcome: Assessment | Stopped;
  /** What the outcome was gathered from, for a job that asks more; null when the data stopped it. */
  readonly job: ReckonedJob | null;
  /** Seconds by stage. */
  readonly timings: Readonly<Record<string, number>>;
}

/** What each stage is called on the screen, and the share of a typical run's time at which it begins. */
const STAGES: Readonly<Record<Stage, { readonly words: string; readonly from: number }>> = {
  survey: { words: 'Checking the records', from: 0.25 },
  crowns: { words: 'Drawing crowns and their drift', from: 0.35 },
  pavement: { words: 'Drawing the pavement', from: 0.45 },
  blocks: { words: 'Drawing the blocks', from: 0.5 },
  overlay: { words: 'Laying crowns over pavement', from: 0.55 },
  stain: { words: 'Reckoning stained pavement', from: 0.8 },
  rank: { words: 'Ranking the blocks', from: 0.84 },
  draws: { words: 'Drawing ranges', from: 0.85 },
  results: { words: 'Gathering results', from: 0.9 },
};

interface ReckoningOptions extends DrawOptions {
  /** Folder with all tiles of the overlay, reckoned before. */
  readonly tiles?: string;
}

/** No draws: ranges stay unknown. */
const NO_DRAWS: ReckoningOptions = { draws: 0, seed: 1, workers: 1 };

export async function reckonedProject(path: string, progress: Progress, options = NO_DRAWS): Promise<Reckoned> {
  expectDraws(options.draws);
  const clock = stageClock();
  clock.begin('read');
  progress.stage(`Reading ${path}`, 0);
  const input = await readProject(path);
  const begin = (stage: Stage, done: number): void => {
    if (done > 0) return;
    clock.begin(stage);
    progress.stage(STAGES[stage].words, STAGES[stage].from);
  };
  const placed = placeProject(input, begin);
  if (isStopped(placed)) return { input, outcome: placed, job: null, timings: clock.end() };
  const reckoned = reckonPlaced(placed, await overlayOf(placed, options), begin);
  if (isStopped(reckoned)) return { input, outcome: reckoned, job: null, timings: clock.end() };
  const { draws, seed } = options;
  if (draws > 0) begin('draws', 0);
  const drawn = draws > 0 ? await drawRanges(drawWorkOf(reckoned, seed), options) : undefined;
  const outcome = finishedAssessment(reckoned, { seed, drawn, progress: begin });
  return { input, outcome, job: reckoned, timings: clock.end() };
}

function overlayOf(placed: Placed, { tiles, workers }: ReckoningOptions): Promise<OverlayLedger> {
  return tiles === undefined ? overlayLedger(sceneOf(placed), workers) : readTiles(tiles, fingerprintOf(placed));
}

function stageClock(): { begin: (stage: string) => void; end: () => Record<string, number> } {
  const seconds: Record<string, number> = {};
  let running: { readonly stage: string; readonly since: number } | null = null;
  const stop = (): void => {
    if (running) seconds[running.stage] = (seconds[running.stage] ?? 0) + (performance.now() - running.since) / 1000;
  };
  return {
    begin: (stage) => {
      stop();
      running = { stage, since: performance.now() };
    },
    end: () => {
      stop();
      return seconds;
    },
  };
}
