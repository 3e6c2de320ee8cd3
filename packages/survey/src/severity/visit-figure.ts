/** The figure of a visit: each rater's own mean, then the mean of the raters. */
import { withoutBias } from '../raters/rater-reading.ts';
import type { Rating } from '../records.ts';
import type { Settings } from '../settings.ts';
import type { RaterDay } from './newest-visit.ts';

export interface Figure {
  readonly share: number;
  readonly lo: number;
  readonly hi: number;
}

/**
 * The share that one rating gives, by `severity_from`: browned, defoliated, or the greater of both (limit by limit; the one
 * that is there when the other is not). `undefined` when the rating lacks it.
 */
export function figureOf(rating: Rating, from: Settings['severity_from']): Figure | undefined {
  const { browned, defoliated } = rating;
  if (from === 'browned') return browned;
  if (from === 'defoliated') return defoliated;
  if (browned === undefined || defoliated === undefined) return browned ?? defoliated;
  return {
    share: Math.max(browned.share, defoliated.share),
    lo: Math.max(browned.lo, defoliated.lo),
    hi: Math.max(browned.hi, defoliated.hi),
  };
}

/** Mean of the raters of a visit, known biases taken off, limits averaged too; `undefined` for no raters. */
export function visitFigure(
  days: readonly RaterDay[],
  { severity_from: from, raters }: Pick<Settings, 'severity_from' | 'raters'>,
): Figure | undefined {
  const ofRaters = days.flatMap((day) => {
    const own = day.ratings.flatMap((rating) => figureOf(rating, from) ?? []);
    const figure = meanFigure(own);
    return figure === undefined ? [] : withoutBias(figure, day.rater, raters);
  });
  return meanFigure(ofRaters);
}

/** Mean of figures, limit by limit; summed in order of size, so that the order given does not show in the last digit. */
function meanFigure(figures: readonly Figure[]): Figure | undefined {
  if (figures.length === 0) return undefined;
  const mean = (values: number[]): number =>
    values.sort((a, b) => a - b).reduce((sum, v) => sum + v, 0) / values.length;
  return {
    share: mean(figures.map((figure) => figure.share)),
    lo: mean(figures.map((figure) => figure.lo)),
    hi: mean(figures.map((figure) => figure.hi)),
  };
}
