/** How far water, drains and wells lie from a crown. */
import type { WaterFeature } from '@crownfall/survey';
import type { Ground } from '../ground/ground.ts';
import { NearFeatures } from './near-features.ts';

type Kind = WaterFeature['kind'];
/** m; kinds that are not mapped are absent. */
export type NearestByKind = Readonly<Partial<Record<Kind, number>>>;

/** Each search looks so far, m, then farther. */
const REACHES_M = [50, 250, 1000, Number.POSITIVE_INFINITY];

export class WaterDistances {
  readonly kinds: readonly Kind[];
  readonly #byKind: ReadonlyMap<Kind, NearFeatures>;

  constructor(ground: Ground, water: readonly WaterFeature[]) {
    const mapped = water.filter(({ geometry }) => geometry.kind !== 'none');
    this.kinds = [...new Set(mapped.map(({ kind }) => kind))].sort();
    const of = (kind: Kind) => mapped.filter((each) => each.kind === kind).map(({ geometry }) => geometry);
    this.#byKind = new Map(this.kinds.map((kind) => [kind, new NearFeatures(ground, of(kind))]));
  }

  /** Distance from the crown's outline to the nearest feature of each kind that is mapped, m; 0 where they meet. */
  of(zone: number): NearestByKind {
    const nearest = [...this.#byKind].flatMap(([kind, features]) => {
      for (const reachM of REACHES_M) {
        const [first] = features.within(zone, reachM);
        if (first) return [[kind, first.distanceM] as const];
      }
      return [];
    });
    return Object.fromEntries(nearest);
  }
}
