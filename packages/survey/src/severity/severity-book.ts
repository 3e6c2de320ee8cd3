/**
 * Severities that follow their records: what a tree's ratings say is reckoned anew only when they change, and a group's means
 * only when one of its members does. Whatever stayed the same is the same object as before.
 */
import { isIsoDay } from '../reading/date-text.ts';
import type { Rating, Survey, Tree } from '../records.ts';
import type { Settings } from '../settings.ts';
import { type Borrowed, borrowedFigures } from './borrowed-figures.ts';
import { byCode } from './code-order.ts';
import { hostGroups, hostKey, type Member } from './host-groups.ts';
import { type OwnSeverity, ownSeverity } from './own-severity.ts';
import { severityFindings } from './severity-findings.ts';
import type { SeverityGroup, SeverityReading, TreeSeverity } from './tree-severity.ts';

/** What the severities are read from. */
type Records = Pick<Survey, 'trees' | 'ratings' | 'season'>;

/** What is known of one tree, and what it came from. */
interface Entry {
  readonly ratings: readonly Rating[];
  readonly own: OwnSeverity;
  readonly group: string;
  /** Whose means it borrowed; undefined for a rated one. */
  readonly from: Borrowed | undefined;
  readonly severity: TreeSeverity;
}

const NONE: readonly Rating[] = [];

export class SeverityBook {
  readonly #settings: Settings;
  readonly #entries = new Map<string, Entry>();
  readonly #hostKeys = new Map<string | undefined, string>();
  #groups: ReadonlyMap<string, SeverityGroup> = new Map();
  #borrowing: ReadonlyMap<string, Borrowed> = new Map();
  #counted: { readonly of: Records; readonly asOf: string; readonly byTree: Map<string, Rating[]> } | null = null;
  #inOrder: readonly Tree[] = [];

  constructor(settings: Settings) {
    this.#settings = settings;
  }

  /** Severity of every tree on the day `asOf`; see `severityOfTrees`. */
  read(records: Records, asOf: string): SeverityReading {
    if (!isIsoDay(asOf)) throw new RangeError(`asOf: expected a day as YYYY-MM-DD, got ${asOf}`);
    const byTree = this.#ratingsThatCount(records, asOf);
    const own = (treeId: string): OwnSeverity => {
      const ratings = byTree.get(treeId) ?? NONE;
      const known = this.#entries.get(treeId);
      return known && isSame(known.ratings, ratings) ? known.own : ownSeverity(treeId, ratings, this.#settings);
    };
    const owns = new Map(records.trees.map(({ treeId }) => [treeId, own(treeId)]));
    this.#regroup(records.trees, (treeId) => owns.get(treeId)?.member);
    const trees = records.trees.map((tree) =>
      this.#severity(tree, byTree.get(tree.treeId) ?? NONE, owns.get(tree.treeId) as OwnSeverity),
    );
    const groups = [...this.#groups.values()];
    return { trees, groups, findings: severityFindings((treeId) => owns.get(treeId)?.gate, this.#groups, trees) };
  }

  /** The severity that a tree would have if it stood so, by the records read last. */
  of(tree: Tree): TreeSeverity {
    const ratings = this.#counted?.byTree.get(tree.treeId) ?? NONE;
    const known = this.#entries.get(tree.treeId);
    const own = known && isSame(known.ratings, ratings) ? known.own : ownSeverity(tree.treeId, ratings, this.#settings);
    return severityFrom(own, tree, { group: this.#keyOf(tree), from: this.#lender(tree) });
  }

  #ratingsThatCount(of: Records, asOf: string): Map<string, Rating[]> {
    const known = this.#counted;
    if (known && known.of.ratings === of.ratings && known.of.season === of.season && known.asOf === asOf)
      return known.byTree;
    const byTree = ratingsByTree(of, asOf);
    this.#counted = { of, asOf, byTree };
    return byTree;
  }

  #regroup(trees: readonly Tree[], memberOf: (treeId: string) => Member | undefined): void {
    this.#inOrder = inOrderOfIds(trees, this.#inOrder);
    const fresh = hostGroups(this.#inOrder, memberOf, (tree) => this.#keyOf(tree));
    const before = this.#groups;
    this.#groups = new Map([...fresh].map(([key, group]) => [key, isSameGroup(before.get(key), group) ?? group]));
    const changed = [...this.#groups].filter(([key, group]) => before.get(key) !== group);
    const means = borrowedFigures(new Map(changed), this.#settings);
    this.#borrowing = new Map(
      [...this.#groups.keys()].map((key) => [key, means.get(key) ?? (this.#borrowing.get(key) as Borrowed)]),
    );
  }

  #severity(tree: Tree, ratings: readonly Rating[], own: OwnSeverity): TreeSeverity {
    const group = this.#keyOf(tree);
    const from = own.member ? undefined : this.#lender(tree);
    const known = this.#entries.get(tree.treeId);
    if (known && known.own === own && known.group === group && known.from === from) return known.severity;
    const severity = severityFrom(own, tree, { group, from });
    this.#entries.set(tree.treeId, { ratings, own, group, from, severity });
    return severity;
  }

  /** The means of the tree's host, or those of a host without ratings. */
  #lender(tree: Tree): Borrowed {
    const key = this.#keyOf(tree);
    const known = this.#borrowing.get(key);
    if (known) return known;
    const alone = hostGroups(
      [tree],
      () => undefined,
      () => key,
    );
    return borrowedFigures(alone, this.#settings).get(key) as Borrowed;
  }

  #keyOf(tree: Tree): string {
    let key = this.#hostKeys.get(tree.host);
    if (key === undefined) {
      key = hostKey(tree);
      this.#hostKeys.set(tree.host, key);
    }
    return key;
  }
}

function severityFrom(
  { member, raters, ratedOn, gate }: OwnSeverity,
  { treeId }: Tree,
  { group, from }: { readonly group: string; readonly from: Borrowed | undefined },
): TreeSeverity {
  if (member === undefined) {
    if (from === undefined) throw new RangeError(`expected a group for ${treeId}, got none`);
    return { treeId, ...(gate === undefined ? from.undiagnosed : from.diagnosed(gate)) };
  }
  return {
    treeId,
    share: member.share,
    lo: member.lo,
    hi: member.hi,
    from: 'rating',
    cause: member.cause,
    gateShare: member.open ? 1 : 0,
    weightedSeverity: member.weightedSeverity,
    weightedLo: member.weightedLo,
    weightedHi: member.weightedHi,
    raters,
    ratedOn,
    group,
  };
}

function ratingsByTree({ season: year, ratings }: Records, asOf: string): Map<string, Rating[]> {
  const season = `${year}-`;
  const byTree = new Map<string, Rating[]>();
  for (const rating of ratings) {
    if (!rating.ratedOn.startsWith(season) || rating.ratedOn > asOf) continue;
    const known = byTree.get(rating.treeId);
    if (known === undefined) byTree.set(rating.treeId, [rating]);
    else known.push(rating);
  }
  return byTree;
}

function isSame<T>(a: readonly T[], b: readonly T[]): boolean {
  return a === b || (a.length === b.length && a.every((each, i) => each === b[i]));
}

/** The group as it was, when it is the same; else undefined. */
function isSameGroup(before: SeverityGroup | undefined, after: SeverityGroup): SeverityGroup | undefined {
  const same =
    before !== undefined &&
    before.host === after.host &&
    before.trees === after.trees &&
    isSame(before.members, after.members);
  return same ? before : undefined;
}

/** Trees in the order of their ids; `before`, what this answered last, saves the sorting when no tree came or went. */
function inOrderOfIds(trees: readonly Tree[], before: readonly Tree[]): readonly Tree[] {
  if (before.length !== trees.length) return [...trees].sort((a, b) => byCode(a.treeId, b.treeId));
  const now = new Map(trees.map((tree) => [tree.treeId, tree]));
  const same = before.map(({ treeId }) => now.get(treeId));
  return same.every((tree) => tree !== undefined) ? same : inOrderOfIds(trees, []);
}
