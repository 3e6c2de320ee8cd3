/**
 * Severities that follow their records: what a tree's ratings say is reckoned anew only when they change, and a group's means
 * only when one of its members does. Whatever stayed the same is the same object as before.
 */
import { isIsoDay } from '../reading/date-text.ts';
import type { Survey, Tree } from '../records.ts';
import type { Settings } from '../settings.ts';
import { type Borrowed, borrowedFigures } from './borrowed-figures.ts';
import { byCode } from './code-order.ts';
import { hostGroups, hostKey, withMember } from './host-groups.ts';
import { type OwnSeverity, ownSeverity } from './own-severity.ts';
import { RatingsByTree } from './ratings-by-tree.ts';
import { severityFindings } from './severity-findings.ts';
import type { SeverityGroup, SeverityReading, TreeSeverity } from './tree-severity.ts';

/** What the severities are read from. */
type Records = Pick<Survey, 'trees' | 'ratings' | 'season'>;

/** What is known of one tree, and what it came from. */
interface Entry {
  readonly own: OwnSeverity;
  readonly group: string;
  /** Whose means it borrowed; undefined for a rated one. */
  readonly from: Borrowed | undefined;
  readonly severity: TreeSeverity;
}

/** What was read last; entries by position among the trees. */
interface Read {
  readonly trees: readonly Tree[];
  readonly entries: readonly Entry[];
  readonly groups: ReadonlyMap<string, SeverityGroup>;
  readonly borrowing: ReadonlyMap<string, Borrowed>;
  readonly reading: SeverityReading;
}

/** With more trees of other ratings their groups are put together anew, which is quicker than one by one. */
const MANY = 50;

export class SeverityBook {
  readonly #settings: Settings;
  readonly #hostKeys = new Map<string | undefined, string>();
  readonly #ratings = new RatingsByTree();
  #last: Read | null = null;

  constructor(settings: Settings) {
    this.#settings = settings;
  }

  /** Severity of every tree on the day `asOf`; see `severityOfTrees`. */
  read(records: Records, asOf: string): SeverityReading {
    if (!isIsoDay(asOf)) throw new RangeError(`asOf: expected a day as YYYY-MM-DD, got ${asOf}`);
    const last = this.#last;
    const changed = this.#ratings.become(records, asOf);
    if (last === null) this.#last = this.#begin(records.trees, new Map());
    else if (changed.size > MANY || !sameHosts(last.trees, records.trees))
      this.#last = this.#begin(records.trees, knownTrees(last, changed));
    else if (changed.size > 0) this.#last = this.#follow(last, records.trees, changed);
    else this.#last = { ...last, trees: records.trees };
    return this.#last.reading;
  }

  /** The severity that a tree would have if it stood so, by the records read last. */
  of(tree: Tree): TreeSeverity {
    return this.#entry(tree, this.#own(tree.treeId), this.#last?.borrowing ?? new Map()).severity;
  }

  /** All groups anew; `known`: of trees whose ratings are those of the last reading. */
  #begin(trees: readonly Tree[], known: ReadonlyMap<string, Entry>): Read {
    const own = trees.map(({ treeId }) => known.get(treeId)?.own ?? this.#own(treeId));
    const groups = hostGroups(
      trees
        .map((tree, at) => ({ tree, group: this.#keyOf(tree), member: own[at].member }))
        .sort((a, b) => byCode(a.tree.treeId, b.tree.treeId)),
    );
    const borrowing = borrowedFigures(groups, this.#settings);
    const entries = trees.map((tree, at) => {
      const entry = known.get(tree.treeId);
      return entry?.own.member && entry.group === this.#keyOf(tree) ? entry : this.#entry(tree, own[at], borrowing);
    });
    return { trees, entries, groups, borrowing, reading: readingOf(entries, groups) };
  }

  /** The same trees, ratings of some `changed`. */
  #follow(last: Read, trees: readonly Tree[], changed: ReadonlySet<string>): Read {
    const groups = new Map(last.groups);
    const own = last.entries.map((entry, at) => {
      const { treeId } = trees[at];
      if (!changed.has(treeId)) return entry.own;
      const now = this.#own(treeId);
      const group = groups.get(entry.group) as SeverityGroup;
      groups.set(entry.group, withMember(group, treeId, now.member));
      return now;
    });
    const moved = new Map([...groups].filter(([key, group]) => last.groups.get(key) !== group));
    const borrowing = new Map([...last.borrowing, ...borrowedFigures(moved, this.#settings)]);
    const entries = last.entries.map((entry, at) => {
      const lender = entry.from && borrowing.get(entry.group);
      return own[at] === entry.own && lender === entry.from ? entry : this.#entry(trees[at], own[at], borrowing);
    });
    return { trees, entries, groups, borrowing, reading: readingOf(entries, groups) };
  }

  #own(treeId: string): OwnSeverity {
    return ownSeverity(treeId, this.#ratings.of(treeId), this.#settings);
  }

  #entry(tree: Tree, own: OwnSeverity, borrowing: ReadonlyMap<string, Borrowed>): Entry {
    const group = this.#keyOf(tree);
    const from = own.member ? undefined : (borrowing.get(group) ?? this.#withoutGroup(tree, group));
    return { own, group, from, severity: severityFrom(own, tree, { group, from }) };
  }

  /** What a tree borrows whose host no other tree has. */
  #withoutGroup(tree: Tree, group: string): Borrowed {
    const alone = hostGroups([{ tree, group, member: undefined }]);
    return borrowedFigures(alone, this.#settings).get(group) as Borrowed;
  }

  #keyOf({ host }: Tree): string {
    let key = this.#hostKeys.get(host);
    if (key === undefined) {
      key = hostKey(host);
      this.#hostKeys.set(host, key);
    }
    return key;
  }
}

function knownTrees({ trees, entries }: Read, changed: ReadonlySet<string>): ReadonlyMap<string, Entry> {
  const known = new Map<string, Entry>();
  entries.forEach((entry, at) => {
    const { treeId } = trees[at];
    if (!changed.has(treeId)) known.set(treeId, entry);
  });
  return known;
}

function readingOf(entries: readonly Entry[], groups: ReadonlyMap<string, SeverityGroup>): SeverityReading {
  const trees = entries.map(({ severity }) => severity);
  const findings = severityFindings((at) => entries[at].own.gate, groups, trees);
  return { trees, groups: [...groups.values()], findings };
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

/** The same trees in the same order, of the same hosts. */
function sameHosts(a: readonly Tree[], b: readonly Tree[]): boolean {
  return (
    a.length === b.length &&
    a.every((tree, i) => tree === b[i] || (tree.treeId === b[i].treeId && tree.host === b[i].host))
  );
}
