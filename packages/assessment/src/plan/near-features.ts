/** Which features come near a crown, and how near: outline to outline, in the equal-area plane. */
import { chainsOf, type LonLatGeometry, type Region } from '@crownfall/geometry';
import Flatbush from 'flatbush';
import type { Ground } from '../ground/ground.ts';
import { boundsOf, distanceTo } from '../region-lookup.ts';

interface PlacedFeature {
  /** Closed outlines, empty for points and lines. */
  readonly region: Region;
  /** Points, lines and outlines as open chains of points. */
  readonly chains: readonly Float64Array[];
}

export interface NearFeature {
  /** Position in the list given. */
  readonly index: number;
  readonly distanceM: number;
}

/** Answers which features lie within a distance of a crown's outline. Features without a position are never near. */
export class NearFeatures {
  readonly #ground: Ground;
  readonly #features: readonly PlacedFeature[];
  readonly #index: Flatbush | null;

  constructor(ground: Ground, geometries: readonly LonLatGeometry[]) {
    this.#ground = ground;
    this.#features = geometries.map((geometry) => placed(geometry, ground.near.forward));
    this.#index = geometries.length > 0 ? new Flatbush(geometries.length) : null;
    for (const { chains } of this.#features) this.#index?.add(...boundsOf(chains as Region));
    this.#index?.finish();
  }

  /**
   * The features within `reachM` of the crown, nearest first; 0 m where they meet. Straight lines between vertices; the crown's
   * outline is as fine as the chord tolerance.
   */
  within(zone: number, reachM: number): NearFeature[] {
    const { geometry } = this.#ground.crowns[zone];
    if (geometry.kind !== 'area') return [];
    const crown = geometry.polygons.flatMap((rings) => rings.map(this.#ground.near.forward)) as Region;
    const [minX, minY, maxX, maxY] = boundsOf(crown);
    const found = this.#index?.search(minX - reachM, minY - reachM, maxX + reachM, maxY + reachM) ?? [];
    return found
      .map((index) => ({ index, distanceM: distanceBetween(crown, this.#features[index]) }))
      .filter(({ distanceM }) => distanceM <= reachM)
      .sort((a, b) => a.distanceM - b.distanceM || a.index - b.index);
  }
}

/** Least distance of two outlines: from the points of either to the edges of the other; 0 where they cross or one holds the other. */
function distanceBetween(crown: Region, { region, chains }: PlacedFeature): number {
  let least = Number.POSITIVE_INFINITY;
  for (const chain of chains)
    for (let i = 0; i < chain.length; i += 2) least = Math.min(least, distanceTo(crown, chain[i], chain[i + 1]));
  for (const ring of crown)
    for (let i = 0; i < ring.length; i += 2) {
      if (region.length > 0) least = Math.min(least, distanceTo(region, ring[i], ring[i + 1]));
      else for (const chain of chains) least = Math.min(least, distanceToChain(chain, ring[i], ring[i + 1]));
    }
  return least > 0 && crosses(crown, chains) ? 0 : least;
}

/** Distance from a point to an open chain of points. */
function distanceToChain(chain: Float64Array, x: number, y: number): number {
  let least = Math.hypot(chain[0] - x, chain[1] - y);
  for (let i = 2; i < chain.length; i += 2) {
    const [ax, ay] = [chain[i - 2], chain[i - 1]];
    const [dx, dy] = [chain[i] - ax, chain[i + 1] - ay];
    const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(ax + t * dx - x, ay + t * dy - y));
  }
  return least;
}

/** True when an edge of a chain crosses an edge of the crown: a line may pass between the vertices of both. */
function crosses(crown: Region, chains: readonly Float64Array[]): boolean {
  return chains.some((chain) => {
    for (let i = 2; i < chain.length; i += 2)
      for (const ring of crown)
        for (let k = 0, j = ring.length - 2; k < ring.length; j = k, k += 2) {
          const a = [chain[i - 2], chain[i - 1], chain[i], chain[i + 1]] as const;
          const b = [ring[j], ring[j + 1], ring[k], ring[k + 1]] as const;
          if (sides(a, b) < 0 && sides(b, a) < 0) return true;
        }
    return false;
  });
}

type Edge = readonly [number, number, number, number];

/** Negative when the ends of `b` lie on opposite sides of the line through `a`. */
function sides([ax, ay, bx, by]: Edge, [cx, cy, dx, dy]: Edge): number {
  return ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax)) * ((bx - ax) * (dy - ay) - (by - ay) * (dx - ax));
}

function placed(geometry: LonLatGeometry, forward: Ground['near']['forward']): PlacedFeature {
  const region = geometry.kind === 'area' ? geometry.polygons.flatMap((polygon) => polygon.map(forward)) : [];
  return { region: region as Region, chains: chainsOf(geometry, forward) };
}
