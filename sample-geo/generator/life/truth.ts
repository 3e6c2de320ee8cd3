/**
 * The truth behind the invented records: which crown fouls, by what, how much of it is browned, how strongly it stains.
 * Raters, quadrats and the aerial picture are all drawn from it, so that a reckoning can be held against it.
 */
import { randomFor } from '../random.ts';
import { gap, type Point } from '../town/loop.ts';
import { distanceToRing, isInside } from '../town/shapes.ts';
import type { TownTree } from '../town/trees.ts';

/** k of the dose d = k · w · s. */
export const TRUE_DOSE_COEFFICIENT = 0.9;
/** w by cause, as in the default settings, so that the truth is reachable. */
export const TRUE_CAUSE_FACTOR = { frass: 1, honeydew: 0.8, fruit: 0.6, leaf_litter: 0.4, none: 0 } as const;
/** Share of the dose by distance beyond the drip line. */
export const TRUE_RINGS = [
  { toM: 0.5, share: 0.5 },
  { toM: 1, share: 0.25 },
] as const;

/** Percentage points a rater adds, and the spread about it. Only R3 reads high; nobody in the town knows it. */
export const RATERS = {
  R1: { biasPct: 0, sdPct: 4 },
  R2: { biasPct: -2, sdPct: 5 },
  R3: { biasPct: 8, sdPct: 6 },
} as const;
export type Rater = keyof typeof RATERS;

/** Where the galls began; they thin out within some 150 m. */
const FOCI: readonly { readonly at: Point; readonly reachM: number }[] = [
  { at: [405, 290], reachM: 130 },
  { at: [300, 92], reachM: 115 },
  { at: [620, 112], reachM: 70 },
];

export interface TreeTruth {
  readonly tree: TownTree;
  readonly cause: keyof typeof TRUE_CAUSE_FACTOR;
  readonly galls: 'none' | 'light' | 'moderate' | 'heavy';
  /** Share of the crown browned, this season and the one before. */
  readonly browned: number;
  readonly brownedBefore: number;
  readonly defoliated: number;
}

export function truthOf(trees: readonly TownTree[]): readonly TreeTruth[] {
  const random = randomFor('truth');
  return trees.map((tree) => {
    const near = Math.max(...FOCI.map(({ at, reachM }) => nearness(gap(at, tree.at) / reachM)));
    const olive = tree.host.fouls === 'frass';
    const fouls = random.chance(olive ? 0.12 + 0.76 * near : tree.host.foulingShare);
    const cause = fouls ? tree.host.fouls : 'none';
    const level = olive ? 0.14 + 0.46 * near : 0.2;
    const fouled = clamp(random.normal(level, 0.1), 0.03, 0.92);
    // A clean crown may still be brown, from drought or salt: it drops nothing that stains.
    const dry = random.chance(0.14) ? random.between(0.12, 0.5) : random.between(0, 0.05);
    const browned = cause === 'none' ? dry : fouled;
    const before = clamp(browned * random.between(0.55, 0.95) + random.normal(0, 0.04), 0, 0.9);
    const galls = cause !== 'frass' ? 'none' : browned > 0.45 ? 'heavy' : browned > 0.22 ? 'moderate' : 'light';
    const defoliated = clamp(browned * random.between(0.1, 0.5) + random.normal(0, 0.03), 0, 0.8);
    return { tree, cause, galls, browned, brownedBefore: before, defoliated };
  });
}

/** The dose that falls on a point from all crowns. */
export function doseAt(point: Point, near: readonly TreeTruth[]): number {
  let dose = 0;
  for (const { tree, cause, browned } of near) {
    const full = TRUE_DOSE_COEFFICIENT * TRUE_CAUSE_FACTOR[cause] * browned;
    if (full > 0 && gap(tree.middle, point) < tree.host.spreadM[0] * 1.6 + 2) dose += full * shareAt(tree, point);
  }
  return dose;
}

function shareAt(tree: TownTree, point: Point): number {
  if (isInside(tree.outline, point)) return 1;
  const distance = distanceToRing(tree.outline, point);
  return TRUE_RINGS.find((ring) => distance <= ring.toM)?.share ?? 0;
}

function nearness(relative: number): number {
  return relative >= 1.6 ? 0 : (1 - (relative / 1.6) ** 2) ** 2;
}

export function clamp(value: number, lo: number, hi: number): number {
  return Math.min(hi, Math.max(lo, value));
}
