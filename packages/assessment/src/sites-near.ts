/** Which sensitive sites lie near a block's stain. */
import type { BlameColumns } from '@crownfall/stain';
import type { Site } from '@crownfall/survey';
import type { Ground } from './ground/ground.ts';
import { distanceTo } from './region-lookup.ts';

/**
 * Number of sites by block. A site counts for a block when it lies within `reachM` of the outline of a crown that stains the
 * block's pavement; the stain lies under that outline or in its drift rings. Each site counts once for a block. The cost
 * follows the number of crowns near sites.
 */
export function sitesByBlock(ground: Ground, sites: readonly Site[], blame: BlameColumns, reachM: number): Int32Array {
  const count = new Int32Array(ground.blocks.length);
  const sitesOfZone = new Map<number, number[]>();
  sites.forEach((site, i) => {
    for (const zone of crownsWithin(ground, site, reachM)) {
      const list = sitesOfZone.get(zone);
      if (list) list.push(i);
      else sitesOfZone.set(zone, [i]);
    }
  });
  const seen = new Set<number>();
  for (let row = 0; row < blame.zone.length; row++) {
    const block = blame.block[row];
    if (block < 0) continue;
    for (const site of sitesOfZone.get(blame.zone[row]) ?? []) {
      const pair = block * sites.length + site;
      if (seen.has(pair)) continue;
      seen.add(pair);
      count[block]++;
    }
  }
  return count;
}

function crownsWithin({ near, crowns }: Ground, site: Site, reachM: number): number[] {
  const [x, y] = near.forward(Float64Array.of(site.at.lon, site.at.lat));
  const candidates = near.crownBoxes?.search(x - reachM, y - reachM, x + reachM, y + reachM) ?? [];
  return candidates.filter((zone) => {
    const { geometry } = crowns[zone];
    if (geometry.kind !== 'area') return false;
    return (
      distanceTo(
        geometry.polygons.flatMap((rings) => rings.map(near.forward)),
        x,
        y,
      ) <= reachM
    );
  });
}
