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
export function hostKey(host: string | undefined): string {
  const spelled = (host ?? '').normalize('NFC').toLowerCase().replace(/×/g, ' x ');
  return spelled.trim().replace(/\s+/g, ' ');
}

/**
 * Mean and spread of members' values with intervals. Variance = variance between the members (n − 1) plus the mean variance
 * within their intervals, width²/12; limits = mean ∓ √3 · deviation, kept between 0 and `most`. One member tells nothing of
 * the spread: limits 0 and `most`. `undefined` for no members.
 */
export function groupMean<T>(
  members: readonly T[],
  { value, lo, hi }: { readonly [part in 'value' | 'lo' | 'hi']: (member: T) => number },
  most: number,
): GroupMean | undefined {
  const n = members.length;
  if (n === 0) return undefined;
  const mean = members.reduce((sum, one) => sum + value(one), 0) / n;
  if (n === 1) return { mean, lo: 0, hi: most };
  const between = members.reduce((sum, one) => sum + (value(one) - mean) ** 2, 0) / (n - 1);
  const within = members.reduce((sum, one) => sum + (hi(one) - lo(one)) ** 2 / 12, 0) / n;
  const half = Math.sqrt(3 * (between + within));
  return { mean, lo: Math.max(0, mean - half), hi: Math.min(most, mean + half) };
}

/** The commonest cause among members with an open gate; the first in `CAUSES` wins a tie; `unknown` when none is open. */
export function commonestOpenCause(members: readonly Member[]): Cause {
  const count = new Map<Cause, number>();
  for (const { open, cause } of members) if (open) count.set(cause, (count.get(cause) ?? 0) + 1);
  const most = Math.max(0, ...count.values());
  return CAUSES.find((cause) => count.get(cause) === most) ?? 'unknown';
}

/** A tree with the key of its host, and its own figure if it has one. */
export interface GroupedTree {
  readonly tree: Tree;
  readonly group: string;
  readonly member: Member | undefined;
}

/** Groups in the order of their keys, members in the order of the trees. */
export function hostGroups(trees: readonly GroupedTree[]): Map<string, SeverityGroup> {
  const groups = new Map<string, { host: string | null; trees: number; members: Member[] }>();
  for (const { tree, group: key, member } of trees) {
    let group = groups.get(key);
    if (group === undefined) {
      group = { host: null, trees: 0, members: [] };
      groups.set(key, group);
    }
    group.trees++;
    if (tree.host !== undefined && (group.host === null || byCode(tree.host, group.host) < 0)) group.host = tree.host;
    if (member !== undefined) group.members.push(member);
  }
  const sorted = [...groups.entries()].sort(([a], [b]) => byCode(a, b));
  return new Map(sorted.map(([key, group]) => [key, { group: key, ...group, rated: group.members.length }]));
}

/** The group, in the order of ids, with another figure of one of its trees; undefined: it has none now. */
export function withMember(group: SeverityGroup, treeId: string, member: Member | undefined): SeverityGroup {
  const at = group.members.findIndex((one) => byCode(one.treeId, treeId) >= 0);
  const place = at < 0 ? group.members.length : at;
  const replaced = group.members[place]?.treeId === treeId ? 1 : 0;
  const members = group.members.toSpliced(place, replaced, ...(member ? [member] : []));
  return { ...group, rated: members.length, members };
}
