/** Groups of trees of one host, from whose rated members the unrated ones borrow. */
import { CAUSES, type Cause, type Tree } from '../records.ts';
import { byCode } from './code-order.ts';
import type { SeverityGroup } from './tree-severity.ts';

export type Member = SeverityGroup['members'][number];

/** Mean of a group with a spread: the limits of the even distribution that has the group's mean and deviation. */
export interface GroupMean {
  readonly mean: number;
  readonly lo: number;
  readonly hi: number;
}

/** One spelling for one host: case, blanks and the hybrid sign do not matter. Empty when the host is not stated. */
export function hostKey(tree: Tree): string {
  const spelled = (tree.host ?? '').normalize('NFC').toLowerCase().replace(/×/g, ' x ');
  return spelled.trim().replace(/\s+/g, ' ');
}

/**
 * Mean and spread of members' values with intervals. Variance = variance between the members (n − 1) plus the mean variance
 * within their intervals, width²/12; limits = mean ∓ √3 · deviation, kept between 0 and `most`. One member tells nothing of
 * the spread: limits 0 and `most`. `undefined` for no members.
 */
export function groupMean(
  values: readonly { readonly value: number; readonly lo: number; readonly hi: number }[],
  most: number,
): GroupMean | undefined {
  const n = values.length;
  if (n === 0) return undefined;
  const mean = values.reduce((sum, one) => sum + one.value, 0) / n;
  if (n === 1) return { mean, lo: 0, hi: most };
  const between = values.reduce((sum, one) => sum + (one.value - mean) ** 2, 0) / (n - 1);
  const within = values.reduce((sum, one) => sum + (one.hi - one.lo) ** 2 / 12, 0) / n;
  const half = Math.sqrt(3 * (between + within));
  return { mean, lo: Math.max(0, mean - half), hi: Math.min(most, mean + half) };
}

/** The commonest cause among members with an open gate; the first in `CAUSES` wins a tie; `unknown` when none is open. */
export function commonestOpenCause(members: readonly Member[]): Cause {
  let best: Cause = 'unknown';
  let most = 0;
  for (const cause of CAUSES) {
    const count = members.filter((member) => member.open && member.cause === cause).length;
    if (count > most) {
      best = cause;
      most = count;
    }
  }
  return best;
}

/** Groups in the order of their keys, members in the order of the trees. */
export function hostGroups(
  trees: readonly Tree[],
  memberOf: (treeId: string) => Member | undefined,
  keyOf: (tree: Tree) => string,
): Map<string, SeverityGroup> {
  const groups = new Map<string, { host: string | null; trees: number; members: Member[] }>();
  for (const tree of trees) {
    const key = keyOf(tree);
    let group = groups.get(key);
    if (group === undefined) {
      group = { host: null, trees: 0, members: [] };
      groups.set(key, group);
    }
    group.trees++;
    if (tree.host !== undefined && (group.host === null || byCode(tree.host, group.host) < 0)) group.host = tree.host;
    const member = memberOf(tree.treeId);
    if (member !== undefined) group.members.push(member);
  }
  const sorted = [...groups.entries()].sort(([a], [b]) => byCode(a, b));
  return new Map(sorted.map(([key, group]) => [key, { group: key, ...group, rated: group.members.length }]));
}
