/** Sensitive sites: schools, clinics, stops, tables in the open. */
import type { RawLayer } from '../project-input.ts';
import type { Site } from '../records.ts';
import { claimId, idRegister } from './claim-id.ts';
import { geometryHash } from './geometry-hash.ts';
import type { LayerReading } from './layer-reader.ts';
import { readLayer } from './layer-reader.ts';
import { hasGeometry, middleOf } from './positions.ts';

/** Reads the sites, each at its middle; an unknown kind is `other`. */
export function readSites(layer: RawLayer | undefined): LayerReading<Site> {
  const register = idRegister('site', layer, 'site_id');
  return readLayer('sites', layer, (row) => {
    if (!hasGeometry(row, ['point', 'area'])) return undefined;
    const siteId = claimId(row, register, 'site_id', () => geometryHash(row.feature.geometry));
    if (siteId === undefined) return undefined;
    const kind = row.word<Site['kind']>('kind', 'other', true) ?? 'other';
    return { siteId, kind, at: middleOf(row.feature.geometry), extra: row.extra() };
  });
}
