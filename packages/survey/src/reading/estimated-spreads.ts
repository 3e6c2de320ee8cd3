/** Crowns whose size was not measured but reckoned from their trunks, as taking in an inventory marks them. */
import type { Finding } from '@crownfall/geometry';
import { finding } from '../findings/finding-codes.ts';
import type { RawLayer } from '../project-input.ts';
import type { Tree } from '../records.ts';
import type { Settings } from '../settings.ts';

const UNSTATED = 'the trunk';

/**
 * A note per basis of estimation (`spread_basis`) with the count of its crowns and the mean standard deviation of their
 * spread in per cent, twice that of the outline. A crown that was drawn since counts no more.
 * @example estimatedSpreads(trees, layer, settings)[0].facts // { count: 212, basis: '34 measured Acer trees of this project', sd_pct: 19 }
 */
export function estimatedSpreads(trees: readonly Tree[], { file }: RawLayer, { uncertainty }: Settings): Finding[] {
  const shares = new Map<string, number[]>();
  for (const { crown, extra, outlineSdM = uncertainty.outline_sd_m } of trees) {
    if (crown.from !== 'spread' || extra.spread_from !== 'estimated') continue;
    const { spread_basis } = extra;
    const basis = typeof spread_basis === 'string' && spread_basis !== '' ? spread_basis : UNSTATED;
    const share = (200 * outlineSdM) / crown.spreadM;
    const its = shares.get(basis);
    if (its) its.push(share);
    else shares.set(basis, [share]);
  }
  return [...shares].map(([basis, its]) => {
    const sd_pct = Math.round(its.reduce((sum, share) => sum + share, 0) / its.length);
    return finding('spread-estimated', 'note/assumed', { layer: 'crowns', file }, { count: its.length, basis, sd_pct });
  });
}
