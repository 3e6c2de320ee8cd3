/** Who rated which tree on its newest visit: what agreement is judged by. */
import { isIsoDay } from '../reading/date-text.ts';
import type { Rating, SeverityInterval, Survey } from '../records.ts';
import type { Settings } from '../settings.ts';
import { newestVisit } from '../severity/newest-visit.ts';
import { figureOf } from '../severity/visit-figure.ts';

/** One rater's figure of one tree, as it was read, no bias taken off. */
export interface RaterReading {
  readonly rater: string;
  readonly ratedOn: string;
  /** 0–1, with the limits of its class. */
  readonly figure: Pick<SeverityInterval, 'share' | 'lo' | 'hi'>;
  /** `percent`, or the name of a class scale; `mixed` when several rows of one day used several. */
  readonly scale: string;
}

export interface RatedVisit {
  readonly treeId: string;
  readonly host: string | null;
  readonly readings: readonly RaterReading[];
}

/**
 * The newest visit of each tree that was rated in the season up to the day `asOf` (ISO; RangeError otherwise), trees in the
 * survey's order, raters by name. The same visits that severities are reckoned from.
 */
export function ratedVisits(
  survey: Pick<Survey, 'trees' | 'ratings' | 'season'>,
  settings: Pick<Settings, 'severity_from' | 'visit_window_days'>,
  asOf: string,
): RatedVisit[] {
  if (!isIsoDay(asOf)) throw new RangeError(`asOf: expected a day as YYYY-MM-DD, got ${asOf}`);
  const byTree = new Map<string, Rating[]>();
  for (const rating of survey.ratings) {
    if (!rating.ratedOn.startsWith(`${survey.season}-`) || rating.ratedOn > asOf) continue;
    if (figureOf(rating, settings.severity_from) === undefined) continue;
    byTree.set(rating.treeId, [...(byTree.get(rating.treeId) ?? []), rating]);
  }
  return survey.trees.flatMap(({ treeId, host }): RatedVisit[] => {
    const ratings = byTree.get(treeId);
    if (ratings === undefined) return [];
    const readings = newestVisit(ratings, settings.visit_window_days).map((day): RaterReading => {
      const figures = day.ratings.flatMap((rating) => figureOf(rating, settings.severity_from) ?? []);
      const mean = (of: (figure: (typeof figures)[number]) => number) =>
        figures.reduce((sum, figure) => sum + of(figure), 0) / figures.length;
      const scales = new Set(day.ratings.flatMap((rating) => scaleOf(rating, settings.severity_from)));
      return {
        rater: day.rater,
        ratedOn: day.ratedOn,
        figure: { share: mean((one) => one.share), lo: mean((one) => one.lo), hi: mean((one) => one.hi) },
        scale: scales.size === 1 ? [...scales][0] : 'mixed',
      };
    });
    return [{ treeId, host: host ?? null, readings }];
  });
}

function scaleOf({ browned, defoliated }: Rating, from: Settings['severity_from']): string[] {
  const used = from === 'browned' ? [browned] : from === 'defoliated' ? [defoliated] : [browned, defoliated];
  return used.flatMap((figure) => figure?.scale ?? []);
}
