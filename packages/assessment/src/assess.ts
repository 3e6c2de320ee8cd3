/** The whole job in its order: survey, ground, stain, rank, results. */
import type { Finding } from '@crownfall/geometry';
import { asOfDay, type ProjectInput, readSurvey } from '@crownfall/survey';
import { reckonGeometry } from './ground/reckon-geometry.ts';
import { noProgress, type Progress } from './progress.ts';
import { rank } from './rank-stage.ts';
import type { Assessment } from './result.ts';
import { compose } from './results/compose.ts';
import { reckonStain } from './stain-stage.ts';

export interface AssessOptions {
  /** Seed of the random draws. Draws are not made yet: ranges stay null and the run says 0 draws. */
  readonly seed?: number;
  readonly progress?: Progress;
}

/** The data has errors that stop the job; nothing was reckoned. */
export interface Stopped {
  readonly stopped: true;
  readonly findings: readonly Finding[];
}

/**
 * Assesses a project: from records to ranked blocks. Pure: the same input gives the same outcome, digit for digit. Bad data
 * never throws; it comes back as findings, and what they leave out is counted in `run.counts`. Time n log n in crowns and
 * pavement.
 *
 * Example: `const outcome = assess(input); if (!isStopped(outcome)) outcome.blocks[0].stainedM2.value` → 41.7 (m²).
 */
export function assess(input: ProjectInput, options: AssessOptions = {}): Assessment | Stopped {
  const { seed = 1, progress = noProgress } = options;
  progress('survey', 0, 1);
  const { survey, settings, findings } = readSurvey(input);
  if (stops(findings)) return { stopped: true, findings };
  progress('survey', 1, 1);

  const asOf = asOfDay(survey, settings);
  const ground = reckonGeometry(survey, settings, progress);
  if (stops(ground.findings)) return { stopped: true, findings: [...findings, ...ground.findings] };
  progress('stain', 0, 1);
  const stain = reckonStain(ground, survey, settings, asOf);
  progress('stain', 1, 1);
  progress('rank', 0, 1);
  const ranking = rank(ground, stain, survey, settings, asOf);
  progress('rank', 1, 1);
  progress('results', 0, 1);
  const outcome = compose({ input, survey, ground, stain, ranking, findings }, { settings, asOf, draws: 0, seed });
  progress('results', 1, 1);
  return outcome;
}

/** True when the job was stopped by errors in the data. */
export function isStopped(outcome: object): outcome is Stopped {
  return 'stopped' in outcome;
}

function stops(findings: readonly Finding[]): boolean {
  return findings.some(({ effect }) => effect === 'stops');
}
