/** Which sensitive sites lie near a crown, and so near the stain of a block. */
import type { BlameColumns } from '@crownfall/stain';
import type { Site } from '@crownfall/survey';
import Flatbush from 'flatbush';
import type { GroundCrown, Nearness } from './ground/ground.ts';
import { distanceTo } from './region-lookup.ts';

type Outlined = Pick<GroundCrown, 'geometry' | 'box'>;

/** The sites within a distance of a crown's outline. Each outline is measured once, however often it is asked for. */
export class SitesNear {
  readonly #places: readonly (readonly [x: number, y: number])[];
  readonly #index: Flatbush | null;
  readonly #forward: Nearness['forward'];
  readonly #reachM: number;
  readonly #known = new WeakMap<GroundCrown['geometry'], readonly number[]>();

  constructor({ forward }: Nearness, sites: readonly Site[], reachM: number) {
    this.#forward = forward;
    this.#reachM = reachM;
    this.#places = sites.map(({ at }) => {
      const [x, y] = forward([at.lon, at.lat]);
      return [x, y];
    });
    this.#index = sites.length > 0 ? new Flatbush(sites.length) : null;
    for (const [x, y] of this.#places) this.#index?.add(x, y, x, y);
    this.#index?.finish();
  }

  get count(): number {
    return this.#places.length;
  }

  /** Positions of the sites; the outline is that of the results, out to longitude and latitude and back. */
  of({ geometry, box }: Outlined): readonly number[] {
    if (this.#index === null || geometry.kind !== 'area') return [];
    let near = this.#known.get(geometry);
    if (near === undefined) {
      near = this.#within(geometry.polygons.flat(), box);
      this.#known.set(geometry, near);
    }
    return near;
  }

  #within(outline: readonly Float64Array[], [minX, minY, maxX, maxY]: Outlined['box']): readonly number[] {
    const reachM = this.#reachM;
    const candidates = this.#index?.search(minX - reachM, minY - reachM, maxX + reachM, maxY + reachM) ?? [];
    if (candidates.length === 0) return candidates;
    const rings = outline.map((ring) => this.#forward(ring));
    return candidates.filter((site) => distanceTo(rings, ...this.#places[site]) <= reachM);
  }
}

/**
 * Number of sites by block. A site counts for a block when it lies within reach of the outline of a crown that stains the block's
 * pavement; the stain lies under that outline or in its drift rings. Each site counts once for a block.
 */
export function sitesByBlock(
  crowns: readonly Outlined[],
  blame: BlameColumns,
  blockCount: number,
  sites: SitesNear,
): Int32Array {
  const count = new Int32Array(blockCount);
  if (sites.count === 0) return count;
  const countedFor = new Int32Array(sites.count).fill(-1);
  // Rows come block by block.
  for (let row = 0; row < blame.zone.length; row++) {
    const block = blame.block[row];
    if (block < 0) continue;
    for (const site of sites.of(crowns[blame.zone[row]])) {
      if (countedFor[site] === block) continue;
      countedFor[site] = block;
      count[block]++;
    }
  }
  return count;
}
