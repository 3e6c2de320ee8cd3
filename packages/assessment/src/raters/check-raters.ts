/** The rater check: agreement of raters on trees that several rated, and how far each reads off. */
import type { Finding } from '@crownfall/geometry';
import { type Defined, type IntraclassResult, intraclassCorrelation, undefinedBecause } from '@crownfall/statistics';
import { asOfDay, type ProjectInput, ratedVisits, readSurvey, type Settings, scalesOf } from '@crownfall/survey';
import type { Stopped } from '../assess.ts';
import {
  biasesAgainstKnown,
  biasesAgainstMean,
  keptReadings,
  type RaterBias,
  type TrainingReading,
} from './rater-bias.ts';
import { type RaterPair, raterPairs } from './rater-pair.ts';

export interface RaterCheck {
  readonly title: string;
  readonly season: number;
  readonly asOf: string;
  /** Every rater of the season, by name, with the number of trees rated on their newest visits. */
  readonly raters: readonly { readonly rater: string; readonly trees: number }[];
  readonly treesRated: number;
  readonly treesRatedBySeveral: number;
  readonly pairs: readonly RaterPair[];
  /** Reliability over the trees that every rater rated. */
  readonly together: { readonly trees: number; readonly reliability: Defined<IntraclassResult> };
  readonly biases: readonly RaterBias[];
  readonly biasesAgainst: 'known-answers' | 'mean-of-raters';
  /** What to keep with the project, by rater: biases that are defined, with what the check could not see in their errors. */
  readonly keep: Settings['raters'];
  readonly findings: readonly Finding[];
}

/**
 * Checks the raters of a project on the newest visits of the season. With `training` (answers that are known) biases are held
 * against those, else against the raters' mean. Biases already stored are not taken off first: the check sees raw readings.
 */
export function checkRaters(input: ProjectInput, training?: readonly TrainingReading[]): RaterCheck | Stopped {
  const { survey, settings, findings } = readSurvey(input);
  if (findings.some(({ effect }) => effect === 'stops')) return { stopped: true, findings };
  const asOf = asOfDay(survey, settings);
  const visits = ratedVisits(survey, settings, asOf);
  const names = [...new Set(visits.flatMap(({ readings }) => readings.map(({ rater }) => rater)))].sort();
  const byAll = visits.filter(({ readings }) => readings.length === names.length);
  const biases = training ? biasesAgainstKnown(training) : biasesAgainstMean(visits);
  const table = byAll.map(({ readings }) => readings.map(({ figure }) => 100 * figure.share));
  return {
    title: survey.title,
    season: survey.season,
    asOf,
    raters: names.map((rater) => ({
      rater,
      trees: visits.filter(({ readings }) => readings.some((one) => one.rater === rater)).length,
    })),
    treesRated: visits.length,
    treesRatedBySeveral: visits.filter(({ readings }) => readings.length > 1).length,
    pairs: raterPairs(visits, scalesOf(settings)),
    together: {
      trees: byAll.length,
      reliability: names.length < 2 ? undefinedBecause('one-rater') : intraclassCorrelation(table),
    },
    biases,
    biasesAgainst: training ? 'known-answers' : 'mean-of-raters',
    keep: keptReadings(biases, training ? 0 : settings.uncertainty.rater_bias_sd_pct),
    findings,
  };
}
