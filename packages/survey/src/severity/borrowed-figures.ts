/** The figure of a tree that nobody rated: its host group's mean, with the group's spread. */
import type { Settings } from '../settings.ts';
import { commonestOpenCause, groupMean, type Member } from './host-groups.ts';
import type { SeverityGroup, TreeSeverity } from './tree-severity.ts';
import type { VisitGate } from './visit-gate.ts';

/** What a tree without a figure gets, by whether its gate is known. */
export interface Borrowed {
  readonly undiagnosed: Omit<TreeSeverity, 'treeId'>;
  diagnosed(gate: VisitGate): Omit<TreeSeverity, 'treeId'>;
}

/** For every group, what its trees without a figure of their own get. */
export function borrowedFigures(groups: ReadonlyMap<string, SeverityGroup>, settings: Settings): Map<string, Borrowed> {
  const greatestFactor = Math.max(...Object.values(settings.cause_factor));
  return new Map([...groups].map(([key, group]) => [key, borrowed(group, settings, greatestFactor)]));
}

const SHARES = {
  value: ({ share }: Member) => share,
  lo: ({ lo }: Member) => lo,
  hi: ({ hi }: Member) => hi,
};
const WEIGHTED = {
  value: ({ weightedSeverity }: Member) => weightedSeverity,
  lo: ({ weightedLo }: Member) => weightedLo,
  hi: ({ weightedHi }: Member) => weightedHi,
};

function borrowed(group: SeverityGroup, settings: Settings, greatestFactor: number): Borrowed {
  const { members } = group;
  const openMembers = members.filter((one) => one.open);
  const shares = figureMean(members);
  const weighted = groupMean(members, WEIGHTED, greatestFactor);
  const base = { raters: [], ratedOn: null, group: group.group } as const;
  const undiagnosed = {
    ...base,
    ...shares,
    cause: commonestOpenCause(members),
    gateShare: members.length === 0 ? 0 : openMembers.length / members.length,
    weightedSeverity: weighted?.mean ?? 0,
    weightedLo: weighted?.lo ?? 0,
    weightedHi: weighted?.hi ?? 0,
  };
  const ofOpen = openMembers.length > 0 ? figureMean(openMembers) : shares;
  const diagnosed = (gate: VisitGate): Omit<TreeSeverity, 'treeId'> => {
    const figure = gate.open ? ofOpen : shares;
    const factor = gate.open ? settings.cause_factor[gate.cause] : 0;
    return {
      ...base,
      ...figure,
      cause: gate.cause,
      gateShare: gate.open ? 1 : 0,
      weightedSeverity: factor * figure.share,
      weightedLo: factor * figure.lo,
      weightedHi: figure.from === 'none' ? 0 : factor * figure.hi,
    };
  };
  return { undiagnosed, diagnosed };
}

function figureMean(members: readonly Member[]): Pick<TreeSeverity, 'share' | 'lo' | 'hi' | 'from'> {
  const mean = groupMean(members, SHARES, 1);
  if (mean === undefined) return { share: 0, lo: 0, hi: 1, from: 'none' };
  return { share: mean.mean, lo: mean.lo, hi: mean.hi, from: 'group' };
}
