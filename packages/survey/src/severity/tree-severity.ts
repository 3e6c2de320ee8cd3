/**
 * What is known of a tree's damage on a given day: the figure, its interval, where it comes from, and whether a staining
 * cause is present on evidence. The model's g, w and s come from here.
 */
import type { Finding } from '@crownfall/geometry';
import type { Cause } from '../records.ts';

/** One tree's damage, shares 0–1. One entry per tree of the survey, in the survey's order. */
export interface TreeSeverity {
  readonly treeId: string;
  /** s: share of the crown affected, point estimate; 0 when `from` is `none`. */
  readonly share: number;
  readonly lo: number;
  readonly hi: number;
  /** `rating`: this tree was rated this season. `group`: the mean of its host's rated trees. `none`: neither exists. */
  readonly from: 'rating' | 'group' | 'none';
  /** The cause stated; for an unrated tree the commonest open cause of its group, else `unknown`. */
  readonly cause: Cause;
  /** g: 1 or 0 for a diagnosed tree; for one that nobody diagnosed the share of open gates in its group. */
  readonly gateShare: number;
  /** Point estimate of g·w·s with `settings.cause_factor`; for an unrated tree the group's mean of it. The dose is k times this. */
  readonly weightedSeverity: number;
  readonly weightedLo: number;
  readonly weightedHi: number;
  /** Those whose ratings were averaged, in alphabetical order of code points; empty for an unrated tree. */
  readonly raters: readonly string[];
  /** Date of the newest rating that counted. */
  readonly ratedOn: string | null;
  /** Key of the group in `SeverityReading.groups`. */
  readonly group: string;
}

/** The rated trees of one host, from which its unrated trees borrow. */
export interface SeverityGroup {
  readonly group: string;
  /** As first written in the survey; `null` when the host is not stated. */
  readonly host: string | null;
  readonly trees: number;
  readonly rated: number;
  /** The rated members' own figures, by tree id: what a random draw for an unrated tree picks from. */
  readonly members: readonly {
    readonly treeId: string;
    readonly share: number;
    readonly lo: number;
    readonly hi: number;
    readonly weightedSeverity: number;
    readonly weightedLo: number;
    readonly weightedHi: number;
    readonly open: boolean;
    readonly cause: Cause;
  }[];
}

export interface SeverityReading {
  readonly trees: readonly TreeSeverity[];
  readonly groups: readonly SeverityGroup[];
  readonly findings: readonly Finding[];
}
