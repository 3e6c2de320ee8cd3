/** How far water, drains and wells lie from a crown. */
import type { WaterFeature } from '@crownfall/survey';
import type { Ground } from '../ground/ground.ts';
import { NearFeatures } from './near-features.ts';

type Kind = WaterFeature['kind'];
/** m; kinds that are not mapped are absent. */
export type NearestByKind = Readonly<Partial<Record<Kind, number>>>;

export interface NearWater {
  readonly feature: WaterFeature;
  readonly distanceM: number;
}

/** Each search looks so far, m, then farther. */
const REACHES_M = [50, 250, 1000, Number.POSITIVE_INFINITY];

interface MappedKind {
  readonly features: readonly WaterFeature[];
  readonly near: NearFeatures;
}

export class WaterDistances {
  readonly kinds: readonly Kind[];
  readonly #byKind: readonly MappedKind[];

  constructor(ground: Ground, water: readonly WaterFeature[]) {
    const mapped = water.filter(({ geometry }) => geometry.kind !== 'none');
    this.kinds = [...new Set(mapped.map(({ kind }) => kind))].sort();
    this.#byKind = this.kinds.map((kind) => {
      const features = mapped.filter((each) => each.kind === kind);
      return {
        features,
        near: new NearFeatures(
          ground,
          features.map(({ geometry }) => geometry),
        ),
      };
    });
  }

  /** Distance from the crown's outline to the nearest feature of each kind that is mapped, m; 0 where they meet. */
  of(zone: number): NearestByKind {
    return Object.fromEntries(this.nearest(zone).map(({ feature, distanceM }) => [feature.kind, distanceM]));
  }

  /** The nearest feature of each kind that is mapped. */
  nearest(zone: number): NearWater[] {
    return this.#byKind.flatMap(({ features, near }) => {
      for (const reachM of REACHES_M) {
        const [first] = near.within(zone, reachM);
        if (first) return [{ feature: features[first.index], distanceM: first.distanceM }];
      }
      return [];
    });
  }

  /** Every feature within `reachM` of the crown. */
  within(zone: number, reachM: number): WaterFeature[] {
    return this.#byKind.flatMap(({ features, near }) => near.within(zone, reachM).map(({ index }) => features[index]));
  }
}
