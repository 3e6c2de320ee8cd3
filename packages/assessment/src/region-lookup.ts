/** Which of many regions holds a point, and which comes nearest: a packed box index with exact tests behind it. */
import type { Region } from '@crownfall/geometry';
import Flatbush from 'flatbush';

/** Least and greatest coordinates of a region: `[minX, minY, maxX, maxY]`; infinite and turned round when it is empty. */
export function boundsOf(region: Region): [number, number, number, number] {
  const bounds: [number, number, number, number] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (const ring of region) {
    for (let i = 0; i < ring.length; i += 2) {
      if (ring[i] < bounds[0]) bounds[0] = ring[i];
      if (ring[i] > bounds[2]) bounds[2] = ring[i];
      if (ring[i + 1] < bounds[1]) bounds[1] = ring[i + 1];
      if (ring[i + 1] > bounds[3]) bounds[3] = ring[i + 1];
    }
  }
  return bounds;
}

/** An index over regions in the plane; building is n log n, a question touches only what its box meets. */
export class RegionLookup {
  readonly #regions: readonly Region[];
  readonly #index: Flatbush | null;

  constructor(regions: readonly Region[]) {
    this.#regions = regions;
    this.#index = regions.length > 0 ? new Flatbush(regions.length) : null;
    for (const region of regions) this.#index?.add(...boundsOf(region));
    this.#index?.finish();
  }

  /** The first listed region that holds the point, −1 when none does (the overlay gives shared ground to the first, too). */
  holding(x: number, y: number): number {
    let first = -1;
    for (const i of this.#index?.search(x, y, x, y) ?? []) {
      if ((first < 0 || i < first) && holdsPoint(this.#regions[i], x, y)) first = i;
    }
    return first;
  }

  /** The regions within `reachM` of the point with their distances (0 inside), in ascending order of index. */
  within(x: number, y: number, reachM: number): { readonly region: number; readonly distanceM: number }[] {
    const found = this.#index?.search(x - reachM, y - reachM, x + reachM, y + reachM) ?? [];
    return found
      .sort((a, b) => a - b)
      .map((region) => ({ region, distanceM: distanceTo(this.#regions[region], x, y) }))
      .filter(({ distanceM }) => distanceM <= reachM);
  }

  /** The region that holds the point, else the nearest within `reachM` (the first listed of equals), else −1. */
  holdingOrNearest(x: number, y: number, reachM: number): number {
    const holding = this.holding(x, y);
    if (holding >= 0) return holding;
    const near = this.within(x, y, reachM);
    return near.reduce((best, at) => (at.distanceM < best.distanceM ? at : best), { region: -1, distanceM: Infinity })
      .region;
  }
}

/** True when the point lies in the region by the non-zero winding rule. Source: Sunday D (2001), winding number by edges. */
export function holdsPoint(region: Region, x: number, y: number): boolean {
  let winding = 0;
  for (const ring of region) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const up = ring[j + 1] <= y && ring[i + 1] > y;
      const down = ring[j + 1] > y && ring[i + 1] <= y;
      if (!up && !down) continue;
      const left = (ring[i] - ring[j]) * (y - ring[j + 1]) - (x - ring[j]) * (ring[i + 1] - ring[j + 1]);
      if (up && left > 0) winding++;
      if (down && left < 0) winding--;
    }
  }
  return winding !== 0;
}

/** Distance from a point to a region, m; 0 inside, infinite when the region is empty. */
export function distanceTo(region: Region, x: number, y: number): number {
  if (holdsPoint(region, x, y)) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const ring of region) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const dx = ring[i] - ring[j];
      const dy = ring[i + 1] - ring[j + 1];
      const along = ((x - ring[j]) * dx + (y - ring[j + 1]) * dy) / (dx * dx + dy * dy || 1);
      const t = Math.min(1, Math.max(0, along));
      least = Math.min(least, Math.hypot(ring[j] + t * dx - x, ring[j + 1] + t * dy - y));
    }
  }
  return least;
}
