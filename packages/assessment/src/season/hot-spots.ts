/** Where severe crowns gather. */
import {
  binaryWeights,
  type Defined,
  distanceNeighbours,
  type HotSpot,
  hotSpots,
  mapDefined,
} from '@crownfall/statistics';
import type { Ground } from '../ground/ground.ts';

export interface SpotTree {
  readonly treeId: string;
  /** Metres in the ground's plane. */
  readonly x: number;
  readonly y: number;
  /** g·s, 0–1. */
  readonly severity: number;
  readonly neighbours: number;
  readonly spot: HotSpot;
}

/** Expected share of false finds among the spots named (A). */
export const FALSE_DISCOVERY_RATE = 0.05;

/**
 * Hot and cold spots of g·s by Getis and Ord's Gᵢ* among the rated trees, each with those within `reachM` metres of its trunk,
 * corrected for many tests (Benjamini and Hochberg). Undefined as `hotSpots` of the statistics room: fewer than two rated
 * trees, or all alike.
 */
export function severitySpots(
  ground: Ground,
  rated: readonly { readonly zone: number; readonly severity: number }[],
  reachM: number,
): Defined<SpotTree[]> {
  const places = rated.map(({ zone }) => {
    const { lon, lat } = ground.crowns[zone].tree.at;
    return ground.near.forward(Float64Array.of(lon, lat));
  });
  const x = places.map(([east]) => east);
  const y = places.map(([, north]) => north);
  const neighbours = distanceNeighbours(x, y, reachM);
  const found = hotSpots(
    rated.map(({ severity }) => severity),
    binaryWeights(neighbours),
    FALSE_DISCOVERY_RATE,
  );
  return mapDefined(found, (spots) =>
    spots.map((spot, i) => ({
      treeId: ground.crowns[rated[i].zone].tree.treeId,
      x: x[i],
      y: y[i],
      severity: rated[i].severity,
      neighbours: neighbours[i].length,
      spot,
    })),
  );
}
