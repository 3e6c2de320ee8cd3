/**
 * From ratings to one figure per tree, with what it rests on (docs/methods/severity.md). Ratings know no geometry; the dose
 * is reckoned where these figures meet the crowns.
 */
import { isIsoDay } from '../reading/date-text.ts';
import type { Rating, Survey, Tree } from '../records.ts';
import type { Settings } from '../settings.ts';
import { type Borrowed, borrowedFigures } from './borrowed-figures.ts';
import { hostGroups, hostKey, type Member } from './host-groups.ts';
import { newestDay, newestVisit, type RaterDay } from './newest-visit.ts';
import { gateOf } from './rating-gate.ts';
import { severityFindings } from './severity-findings.ts';
import type { SeverityReading, TreeSeverity } from './tree-severity.ts';
import { type Figure, figureOf, visitFigure } from './visit-figure.ts';
import { type VisitGate, visitGate } from './visit-gate.ts';

/** What a tree's own ratings say. */
interface OwnRatings {
  readonly figure: Figure | undefined;
  readonly figureDays: readonly RaterDay[];
  readonly gate: VisitGate | undefined;
}

/**
 * Severity of every tree on the day `asOf` (ISO), in the survey's order. The newest visit of the season's year counts: its
 * raters are averaged, intervals too; the newest stated diagnosis sets the gate. A tree without a figure takes the mean of
 * its host's rated trees with their spread; when the host has none, its figure is `none` and it adds nothing. Independent of
 * the order of the ratings. Throws RangeError when `asOf` is not a day.
 * @example severityOfTrees(survey, DEFAULT_SETTINGS, '2026-06-30').trees[0].weightedSeverity // 0.4
 */
export function severityOfTrees(survey: Survey, settings: Settings, asOf: string): SeverityReading {
  if (!isIsoDay(asOf)) throw new RangeError(`asOf: expected a day as YYYY-MM-DD, got ${asOf}`);
  const ratings = ratingsByTree(survey, asOf);
  const own = new Map<string, OwnRatings>();
  const members = new Map<string, Member>();
  const gates = new Map<string, VisitGate>();
  for (const { treeId } of survey.trees) {
    const said = ownRatings(ratings.get(treeId) ?? [], settings);
    own.set(treeId, said);
    if (said.gate !== undefined) gates.set(treeId, said.gate);
    if (said.figure !== undefined) members.set(treeId, memberOf(treeId, said.figure, said.gate, settings));
  }
  const groups = hostGroups(survey.trees, members);
  const borrowing = borrowedFigures(groups, settings);
  const trees = survey.trees.map((tree) => {
    const member = members.get(tree.treeId);
    const days = own.get(tree.treeId)?.figureDays ?? [];
    if (member !== undefined) return ratedSeverity(member, days, hostKey(tree));
    return unratedSeverity(tree, gates.get(tree.treeId), borrowing);
  });
  return { trees, groups: [...groups.values()], findings: severityFindings(gates, groups, trees) };
}

function ratingsByTree(survey: Survey, asOf: string): Map<string, Rating[]> {
  const season = `${survey.season}-`;
  const byTree = new Map<string, Rating[]>();
  for (const rating of survey.ratings) {
    if (!rating.ratedOn.startsWith(season) || rating.ratedOn > asOf) continue;
    const known = byTree.get(rating.treeId);
    if (known === undefined) byTree.set(rating.treeId, [rating]);
    else known.push(rating);
  }
  return byTree;
}

function ownRatings(ratings: readonly Rating[], settings: Settings): OwnRatings {
  const { severity_from: from, visit_window_days: windowDays } = settings;
  const withFigure = ratings.filter((rating) => figureOf(rating, from) !== undefined);
  const withDiagnosis = ratings.filter((rating) => gateOf(rating) !== 'unstated');
  const figureDays = newestVisit(withFigure, windowDays);
  const figure = visitFigure(figureDays, settings);
  return { figure, figureDays, gate: visitGate(newestVisit(withDiagnosis, windowDays)) };
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

function ratedSeverity(member: Member, days: readonly RaterDay[], group: string): TreeSeverity {
  return {
    treeId: member.treeId,
    share: member.share,
    lo: member.lo,
    hi: member.hi,
    from: 'rating',
    cause: member.cause,
    gateShare: member.open ? 1 : 0,
    weightedSeverity: member.weightedSeverity,
    weightedLo: member.weightedLo,
    weightedHi: member.weightedHi,
    raters: days.map((day) => day.rater),
    ratedOn: newestDay(days),
    group,
  };
}

function unratedSeverity(tree: Tree, gate: VisitGate | undefined, borrowing: ReadonlyMap<string, Borrowed>) {
  const borrowed = borrowing.get(hostKey(tree));
  if (borrowed === undefined) throw new RangeError(`expected a group for host ${tree.host}, got none`);
  return { treeId: tree.treeId, ...(gate === undefined ? borrowed.undiagnosed : borrowed.diagnosed(gate)) };
}
