/** The town's trees by host and block, with how many are rated and how much they vary. */
import type { TreeSeverity } from '@crownfall/survey';
import type { Ground } from '../ground/ground.ts';
import type { Stain } from '../stain-stage.ts';

export interface RatingStratum {
  readonly host: string | null;
  /** null: trees that stand in no block. */
  readonly blockId: string | null;
  /** Zones of the ground. */
  readonly unrated: readonly number[];
  readonly rated: readonly number[];
  /** Standard deviation of g·s among its trees, 0–1, and what it was taken from. */
  readonly standardDeviation: number;
  readonly from: 'stratum' | 'host' | 'town' | 'assumed';
  /** The same over all rated trees of its host, between blocks too; else the town's, else the assumed one. */
  readonly hostDeviation: number;
}

/** Fewest rated trees whose scatter is trusted. */
const LEAST_RATED = 3;
/** (A) Scatter of g·s where nobody rated anything: about that of half the trees fouling at half severity. */
const ASSUMED_SD = 0.25;

/** Strata by host, then block, in the order of the ground; scatter from the stratum, else its host, else the town. */
export function ratingStrata(ground: Ground, { severities }: Pick<Stain, 'severities'>): RatingStratum[] {
  const groups = new Map<string, number[]>();
  severities.forEach(({ group }, zone) => {
    const key = JSON.stringify([group, ground.crowns[zone].block]);
    groups.set(key, [...(groups.get(key) ?? []), zone]);
  });
  const rated = (zones: readonly number[]) => zones.filter((zone) => severities[zone].from === 'rating');
  const ofHost = new Map<string, number[]>();
  severities.forEach(({ group }, zone) => {
    ofHost.set(group, [...(ofHost.get(group) ?? []), zone]);
  });
  const town = scatter(rated([...severities.keys()]), severities);
  const hostScatter = new Map([...ofHost].map(([host, zones]) => [host, scatter(rated(zones), severities)]));
  return [...groups].map(([key, zones]): RatingStratum => {
    const [group, block] = JSON.parse(key) as [string, number];
    const own = scatter(rated(zones), severities);
    const host = hostScatter.get(group) ?? null;
    const [standardDeviation, from] =
      own !== null
        ? ([own, 'stratum'] as const)
        : host !== null
          ? ([host, 'host'] as const)
          : town !== null
            ? ([town, 'town'] as const)
            : ([ASSUMED_SD, 'assumed'] as const);
    return {
      host: ground.crowns[zones[0]].tree.host ?? null,
      blockId: block < 0 ? null : ground.blocks[block].blockId,
      unrated: zones.filter((zone) => severities[zone].from !== 'rating'),
      rated: rated(zones),
      standardDeviation,
      from,
      hostDeviation: host ?? town ?? ASSUMED_SD,
    };
  });
}

/** Standard deviation (n − 1) of g·s; null below three rated trees. */
function scatter(zones: readonly number[], severities: readonly TreeSeverity[]): number | null {
  if (zones.length < LEAST_RATED) return null;
  const values = zones.map((zone) => severities[zone].gateShare * severities[zone].share);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
