/**
 * Did the treatment work? Four formulas, each with an interval where its assumptions hold, and the reason where they do not.
 * What is compared is the mean of g·s: the affected share of the crown, counted where a staining cause is present.
 */
import {
  abbottEfficacy,
  type BootstrapResult,
  blockBootstrap,
  type Defined,
  hendersonTiltonEfficacy,
  percentileBootstrap,
  type ResampledStatistic,
  schneiderOrelliEfficacy,
  sunShepardEfficacy,
  type UndefinedReason,
} from '@crownfall/statistics';

export interface FollowedTree {
  readonly treeId: string;
  readonly group: 'treated' | 'untreated';
  /** −1: outside every block. */
  readonly block: number;
  /** g·s, 0–1. */
  readonly before: number;
  readonly after: number;
}

export interface GroupMeans {
  readonly trees: number;
  readonly before: number;
  readonly after: number;
  /** Share of the trees with a staining cause. */
  readonly affectedBefore: number;
  readonly affectedAfter: number;
}

export const EFFICACY_METHODS = ['henderson-tilton', 'abbott', 'sun-shepard', 'schneider-orelli'] as const;
export type EfficacyMethod = (typeof EFFICACY_METHODS)[number];

/** Why a formula gives no figure: a group is missing, an assumption fails, or the arithmetic has no answer. */
export type NoEfficacy =
  | 'no-treated'
  | 'no-untreated'
  | 'unlike-before'
  | 'untreated-grew'
  | 'treated-grew'
  | UndefinedReason;

export type EfficacyRow =
  | { readonly method: EfficacyMethod; readonly result: BootstrapResult }
  | { readonly method: EfficacyMethod; readonly because: NoEfficacy };

export interface Efficacy {
  readonly treated: GroupMeans;
  readonly untreated: GroupMeans;
  readonly rows: readonly EfficacyRow[];
  /** Whole blocks are drawn anew when each block has only treated or only untreated trees, else trees. */
  readonly resampled: 'trees' | 'blocks';
}

/** Means of one group over chosen positions (with repeats). */
interface Means {
  readonly treatedBefore: number;
  readonly treatedAfter: number;
  readonly controlBefore: number;
  readonly controlAfter: number;
}

/**
 * Efficacies of a treatment, shares (1: nothing left, 0: no effect, negative: worse than untreated), with 95 % percentile
 * intervals over resampled trees, or blocks where whole blocks were treated. Henderson–Tilton and Sun–Shepard allow groups
 * that differed before; Abbott does not, and is given only when the 95 % interval of the difference before holds 0;
 * Schneider-Orelli needs a decline in both groups. Seeded. docs/methods/season.md.
 */
export function efficacyOf(trees: readonly FollowedTree[], seed: number): Efficacy {
  const resampled = byWholeBlocks(trees) ? 'blocks' : 'trees';
  const groups = { treated: groupMeans(trees, 'treated'), untreated: groupMeans(trees, 'untreated') };
  const missing = groups.treated.trees === 0 ? 'no-treated' : groups.untreated.trees === 0 ? 'no-untreated' : null;
  const resample = (statistic: (means: Means) => Defined<number>): Defined<BootstrapResult> =>
    resampledEfficacy(trees, resampled, statistic, seed);
  const rows = EFFICACY_METHODS.map((method): EfficacyRow => {
    const because = missing ?? violated(method, groups, resample);
    if (because !== null) return { method, because };
    const result = resample((means) => formula(method, means));
    return result.defined ? { method, result: result.value } : { method, because: result.reason };
  });
  return { ...groups, rows, resampled };
}

function formula(method: EfficacyMethod, means: Means): Defined<number> {
  const { treatedBefore, treatedAfter, controlBefore, controlAfter } = means;
  if (method === 'henderson-tilton') return hendersonTiltonEfficacy(means);
  if (method === 'abbott') return abbottEfficacy(controlAfter, treatedAfter);
  if (treatedBefore === 0) return { defined: false, reason: 'zero-treated-before' };
  if (controlBefore === 0) return { defined: false, reason: 'zero-control-before' };
  const mortality = 1 - treatedAfter / treatedBefore;
  if (method === 'sun-shepard') return sunShepardEfficacy(mortality, controlAfter / controlBefore - 1);
  // In a resample a group may grow although it declined as a whole; a decline of 0 is the formula's own end.
  return schneiderOrelliEfficacy(Math.max(0, mortality), Math.max(0, 1 - controlAfter / controlBefore));
}

function violated(
  method: EfficacyMethod,
  { treated, untreated }: Pick<Efficacy, 'treated' | 'untreated'>,
  resample: (statistic: (means: Means) => Defined<number>) => Defined<BootstrapResult>,
): NoEfficacy | null {
  if (method === 'abbott') {
    const difference = resample((means) => ({ defined: true, value: means.treatedBefore - means.controlBefore }));
    if (!difference.defined) return difference.reason;
    const { lower, upper } = difference.value.interval;
    return lower <= 0 && upper >= 0 ? null : 'unlike-before';
  }
  if (method !== 'schneider-orelli') return null;
  if (untreated.after > untreated.before) return 'untreated-grew';
  return treated.after > treated.before ? 'treated-grew' : null;
}

function resampledEfficacy(
  trees: readonly FollowedTree[],
  by: Efficacy['resampled'],
  statistic: (means: Means) => Defined<number>,
  seed: number,
): Defined<BootstrapResult> {
  const strata = trees.map(({ group }) => (group === 'treated' ? 1 : 0));
  const ofPositions: ResampledStatistic = (positions) => statistic(meansAt(trees, positions));
  return by === 'trees'
    ? percentileBootstrap(trees.length, ofPositions, { seed, strata })
    : blockBootstrap(
        trees.map(({ block }) => block),
        ofPositions,
        { seed, strata },
      );
}

function meansAt(trees: readonly FollowedTree[], positions: Uint32Array): Means {
  const sums = { treated: [0, 0, 0], untreated: [0, 0, 0] };
  for (const position of positions) {
    const { group, before, after } = trees[position];
    sums[group][0] += 1;
    sums[group][1] += before;
    sums[group][2] += after;
  }
  const mean = ([count, before, after]: number[]) => (count === 0 ? [0, 0] : [before / count, after / count]);
  const [treatedBefore, treatedAfter] = mean(sums.treated);
  const [controlBefore, controlAfter] = mean(sums.untreated);
  return { treatedBefore, treatedAfter, controlBefore, controlAfter };
}

function groupMeans(trees: readonly FollowedTree[], group: FollowedTree['group']): GroupMeans {
  const own = trees.filter((tree) => tree.group === group);
  const mean = (of: (tree: FollowedTree) => number) =>
    own.length === 0 ? 0 : own.reduce((sum, tree) => sum + of(tree), 0) / own.length;
  return {
    trees: own.length,
    before: mean(({ before }) => before),
    after: mean(({ after }) => after),
    affectedBefore: mean(({ before }) => (before > 0 ? 1 : 0)),
    affectedAfter: mean(({ after }) => (after > 0 ? 1 : 0)),
  };
}

/** True when no block has trees of both groups and each group has at least two blocks. */
function byWholeBlocks(trees: readonly FollowedTree[]): boolean {
  const groups = new Map<number, FollowedTree['group']>();
  for (const { block, group } of trees) {
    if (block < 0 || (groups.get(block) ?? group) !== group) return false;
    groups.set(block, group);
  }
  const treated = [...groups.values()].filter((group) => group === 'treated').length;
  return treated >= 2 && groups.size - treated >= 2;
}
