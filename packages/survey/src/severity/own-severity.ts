/** What a tree's own ratings say of it. */
import type { Rating } from '../records.ts';
import type { Settings } from '../settings.ts';
import type { Member } from './host-groups.ts';
import { newestDay, newestVisit } from './newest-visit.ts';
import { gateOf } from './rating-gate.ts';
import { type Figure, figureOf, visitFigure } from './visit-figure.ts';
import { type VisitGate, visitGate } from './visit-gate.ts';

export interface OwnSeverity {
  /** Its figure as a member of its group; undefined when no rating has one. */
  readonly member: Member | undefined;
  /** Those whose ratings made the figure. */
  readonly raters: readonly string[];
  readonly ratedOn: string | null;
  /** The newest stated diagnosis. */
  readonly gate: VisitGate | undefined;
}

const NOTHING: OwnSeverity = { member: undefined, raters: [], ratedOn: null, gate: undefined };

/** From the ratings of one tree that count on a day. The same without ratings is the same object. */
export function ownSeverity(treeId: string, ratings: readonly Rating[], settings: Settings): OwnSeverity {
  if (ratings.length === 0) return NOTHING;
  const { severity_from: from, visit_window_days: windowDays } = settings;
  const withFigure = ratings.filter((rating) => figureOf(rating, from) !== undefined);
  const withDiagnosis = ratings.filter((rating) => gateOf(rating) !== 'unstated');
  const days = newestVisit(withFigure, windowDays);
  const figure = visitFigure(days, settings);
  const gate = visitGate(newestVisit(withDiagnosis, windowDays));
  if (figure === undefined) return { ...NOTHING, gate };
  const member = memberOf(treeId, figure, gate, settings);
  return { member, raters: days.map(({ rater }) => rater), ratedOn: newestDay(days), gate };
}

function memberOf(treeId: string, figure: Figure, gate: VisitGate | undefined, settings: Settings): Member {
  const open = gate?.open ?? false;
  const cause = gate?.cause ?? 'unknown';
  const factor = open ? settings.cause_factor[cause] : 0;
  return {
    treeId,
    share: figure.share,
    lo: figure.lo,
    hi: figure.hi,
    weightedSeverity: factor * figure.share,
    weightedLo: factor * figure.lo,
    weightedHi: factor * figure.hi,
    open,
    cause,
  };
}
