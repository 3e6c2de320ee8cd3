/** How each tree's severity is drawn, laid out as plain arrays so that it can be sent to a worker. */
import { type Settings, type SeverityReading, strayAt, type TreeSeverity } from '@crownfall/survey';
import type { DrawStream } from './draw-stream.ts';

/** Ways in which a tree's severity is drawn. */
const HOW = { silent: 0, rated: 1, donor: 2, donorShare: 3, even: 4 } as const;

/** Trees in the order of the survey. */
export interface SeverityPlan {
  readonly how: Uint8Array;
  readonly lo: Float64Array;
  readonly hi: Float64Array;
  /** w of a tree whose gate is open; of one drawn evenly, the greatest possible g·w·s over that of s. */
  readonly factor: Float64Array;
  /** Scatter of the raters' mean at half severity, as a share. */
  readonly errorSd: Float64Array;
  /** Raters of each tree in compressed rows. */
  readonly raterStart: Int32Array;
  readonly rater: Int32Array;
  /** Standard deviation of each rater's unknown bias at half severity, as a share. */
  readonly biasSd: Float64Array;
  /** Pool from which an unrated tree's donor is picked, −1 for none. */
  readonly poolOf: Int32Array;
  readonly poolStart: Int32Array;
  /** Donors as tree positions. */
  readonly pool: Int32Array;
}

/** What one draw says of the trees: g·w·s, s, and whether the gate is open. */
export interface DrawnSeverities {
  readonly weighted: Float64Array;
  readonly share: Float64Array;
  readonly open: Uint8Array;
}

/**
 * The plan: rated crowns with an open gate are drawn from their interval and their raters' errors; an unrated crown takes the
 * drawn figure of a random rated one of its host, gate included; one that was diagnosed but not rated takes the share of a random
 * fouling one; where only one tree of the host was rated, the figure is even over all that is possible. A shut gate stays shut.
 */
export function severityPlan(
  { trees, groups }: Pick<SeverityReading, 'trees' | 'groups'>,
  settings: Pick<Settings, 'uncertainty' | 'raters' | 'cause_factor'>,
): SeverityPlan {
  const raters = [...new Set(trees.flatMap((tree) => tree.raters))].sort();
  const raterIndex = new Map(raters.map((rater, i) => [rater, i]));
  const positions = new Map(trees.map(({ treeId }, i) => [treeId, i]));
  const pools = new Pools(groups, positions);
  const raterStart = new Int32Array(trees.length + 1);
  trees.forEach((tree, i) => {
    raterStart[i + 1] = raterStart[i] + tree.raters.length;
  });
  const column = (of: (tree: TreeSeverity) => number) => Float64Array.from(trees, of);
  const how = Uint8Array.from(trees, (tree) => howDrawn(tree, pools, settings.cause_factor[tree.cause]));
  return {
    how,
    lo: column((tree) => (tree.from === 'rating' ? tree.lo : tree.weightedLo)),
    hi: column((tree) => (tree.from === 'rating' ? tree.hi : tree.weightedHi)),
    factor: column((tree) => settings.cause_factor[tree.cause]),
    errorSd: column((tree) => errorOfMean(tree, settings)),
    raterStart,
    rater: Int32Array.from(
      trees.flatMap((tree) => tree.raters),
      (rater) => raterIndex.get(rater) as number,
    ),
    biasSd: Float64Array.from(raters, (rater) => biasSdOf(rater, settings)),
    poolOf: Int32Array.from(trees, (tree, i) => poolOf(tree, how[i], pools)),
    ...pools.columns(),
  };
}

/** Draws all severities of one draw into `out`; `resampled` is scratch of the length of `plan.pool`. */
export function drawSeverities(
  plan: SeverityPlan,
  stream: DrawStream,
  out: DrawnSeverities,
  resampled: Int32Array,
): void {
  const bias = plan.biasSd.map((sd) => sd * stream.normal());
  for (let tree = 0; tree < plan.how.length; tree++) {
    if (plan.how[tree] === HOW.rated) drawRated(plan, tree, { stream, bias, out });
  }
  // Donors are themselves resampled first, so that a small group's mean is as unsure as it should be (approximate Bayesian
  // bootstrap: Rubin, Schenker 1986, J. Am. Stat. Assoc. 81:366–374).
  for (let pool = 0; pool + 1 < plan.poolStart.length; pool++) {
    const start = plan.poolStart[pool];
    const size = plan.poolStart[pool + 1] - start;
    for (let i = 0; i < size; i++) resampled[start + i] = plan.pool[start + stream.wholeBelow(size)];
  }
  for (let tree = 0; tree < plan.how.length; tree++) {
    if (plan.how[tree] > HOW.rated) drawUnrated(plan, tree, { stream, out, resampled });
  }
}

interface Drawing {
  readonly stream: DrawStream;
  readonly out: DrawnSeverities;
}

function drawRated(plan: SeverityPlan, tree: number, { stream, bias, out }: Drawing & { bias: Float64Array }): void {
  const start = plan.raterStart[tree];
  const end = plan.raterStart[tree + 1];
  let off = 0;
  for (let i = start; i < end; i++) off += bias[plan.rater[i]];
  if (end > start) off /= end - start;
  if (plan.errorSd[tree] > 0) off += plan.errorSd[tree] * stream.normal();
  const width = plan.hi[tree] - plan.lo[tree];
  const read = width > 0 ? plan.lo[tree] + width * stream.uniform() : plan.lo[tree];
  const share = Math.min(1, Math.max(0, read - off * strayAt(read)));
  out.share[tree] = share;
  out.weighted[tree] = plan.factor[tree] * share;
  out.open[tree] = 1;
}

function drawUnrated(
  plan: SeverityPlan,
  tree: number,
  { stream, out, resampled }: Drawing & { resampled: Int32Array },
): void {
  if (plan.how[tree] === HOW.even) {
    const u = stream.uniform();
    out.weighted[tree] = plan.lo[tree] + (plan.hi[tree] - plan.lo[tree]) * u;
    out.share[tree] = u;
    out.open[tree] = 1;
    return;
  }
  const pool = plan.poolOf[tree];
  const start = plan.poolStart[pool];
  const donor = resampled[start + stream.wholeBelow(plan.poolStart[pool + 1] - start)];
  out.share[tree] = out.share[donor];
  out.open[tree] = plan.how[tree] === HOW.donor ? out.open[donor] : 1;
  out.weighted[tree] = plan.how[tree] === HOW.donor ? out.weighted[donor] : plan.factor[tree] * out.share[donor];
}

function howDrawn(tree: TreeSeverity, pools: Pools, factor: number): number {
  if (tree.from === 'none' || tree.weightedHi === 0) return HOW.silent;
  if (tree.from === 'rating') return tree.gateShare === 1 ? HOW.rated : HOW.silent;
  // A tree that was diagnosed keeps its own gate and cause and borrows the share alone.
  const diagnosed = tree.gateShare === 1 && tree.weightedSeverity === factor * tree.share;
  if (pools.size(tree.group, diagnosed ? 'open' : 'all') < 2) return HOW.even;
  return diagnosed ? HOW.donorShare : HOW.donor;
}

function poolOf({ group }: TreeSeverity, how: number, pools: Pools): number {
  if (how === HOW.donor) return pools.index(group, 'all');
  return how === HOW.donorShare ? pools.index(group, 'open') : -1;
}

function errorOfMean({ raters }: TreeSeverity, settings: Pick<Settings, 'uncertainty' | 'raters'>): number {
  const variances = raters.map((rater) => (errorSdOf(rater, settings) / 100) ** 2);
  const sum = variances.reduce((total, variance) => total + variance, 0);
  return raters.length === 0 ? 0 : Math.sqrt(sum) / raters.length;
}

function errorSdOf(rater: string, { uncertainty, raters }: Pick<Settings, 'uncertainty' | 'raters'>): number {
  return Object.hasOwn(raters, rater) ? raters[rater].error_sd_pct : uncertainty.rater_error_sd_pct;
}

function biasSdOf(rater: string, { uncertainty, raters }: Pick<Settings, 'uncertainty' | 'raters'>): number {
  return (Object.hasOwn(raters, rater) ? raters[rater].bias_se_pct : uncertainty.rater_bias_sd_pct) / 100;
}

/** Donors by group: all rated members, and those with an open gate. */
class Pools {
  readonly #index = new Map<string, number>();
  readonly #members: number[][] = [];

  constructor(groups: SeverityReading['groups'], positions: ReadonlyMap<string, number>) {
    for (const { group, members, trees, rated } of groups) {
      // Without unrated trees nobody borrows.
      const kept = trees > rated ? members : [];
      const placed = (of: typeof members) => of.flatMap(({ treeId }) => positions.get(treeId) ?? []);
      this.#index.set(`all ${group}`, this.#members.push(placed(kept)) - 1);
      this.#index.set(`open ${group}`, this.#members.push(placed(kept.filter(({ open }) => open))) - 1);
    }
  }

  index(group: string, which: 'all' | 'open'): number {
    const index = this.#index.get(`${which} ${group}`);
    if (index === undefined) throw new RangeError(`expected a group, got ${group}`);
    return index;
  }

  size(group: string, which: 'all' | 'open'): number {
    return this.#members[this.index(group, which)].length;
  }

  columns(): Pick<SeverityPlan, 'poolStart' | 'pool'> {
    const poolStart = new Int32Array(this.#members.length + 1);
    this.#members.forEach((members, i) => {
      poolStart[i + 1] = poolStart[i] + members.length;
    });
    return { poolStart, pool: Int32Array.from(this.#members.flat()) };
  }
}
