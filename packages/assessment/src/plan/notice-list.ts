/** Whom to tell before a treatment: the user's addresses within the user's distance of a treated crown. */
import type { LonLatGeometry } from '@crownfall/geometry';
import type { ActionOffer, Notice } from '@crownfall/priority';
import { NearFeatures } from './near-features.ts';
import type { OfferBook } from './offers-of.ts';

/** An address as a point, or a parcel. */
export interface Address {
  readonly address: string;
  readonly geometry: LonLatGeometry;
}

/** One row for each block and address, with the distance to the nearest treated crown, m; by block, nearest first. */
export function noticeList(
  { reckoned, scene }: OfferBook,
  treated: readonly ActionOffer[],
  addresses: readonly Address[],
): Notice[] {
  const { ground } = reckoned.stages;
  const reachM = reckoned.settings.plan.notice_m;
  if (reachM === null || addresses.length === 0) return [];
  const near = new NearFeatures(
    ground,
    addresses.map(({ geometry }) => geometry),
  );
  const blockOf = new Map(ground.blocks.map(({ blockId }, block) => [blockId, block]));
  return treated.flatMap(({ blockId }) => {
    const least = new Map<number, number>();
    for (const zone of scene.treated[blockOf.get(blockId) ?? -1])
      for (const { index, distanceM } of near.within(zone, reachM))
        least.set(index, Math.min(distanceM, least.get(index) ?? Number.POSITIVE_INFINITY));
    return [...least]
      .sort(([a, nearA], [b, nearB]) => nearA - nearB || a - b)
      .map(([index, distanceM]) => ({ blockId, address: addresses[index].address, distanceM }));
  });
}
