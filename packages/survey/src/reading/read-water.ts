/** Water, drains and wells: what insecticides are kept away from. */
import type { RawLayer } from '../project-input.ts';
import type { WaterFeature } from '../records.ts';
import type { LayerReading } from './layer-reader.ts';
import { readLayer } from './layer-reader.ts';
import { isMissing } from './number-text.ts';
import { hasGeometry } from './positions.ts';

/** Reads the water features; without a known kind a feature is `water`, so that the caution stands. */
export function readWater(layer: RawLayer | undefined): LayerReading<WaterFeature> {
  return readLayer('water', layer, (row) => {
    if (!hasGeometry(row, ['point', 'line', 'area'])) return undefined;
    if (isMissing(row.feature.properties.kind))
      row.tally('field-missing', 'note/assumed', { read_as: 'water' }, 'kind');
    const kind = row.word<WaterFeature['kind']>('kind', 'water', true) ?? 'water';
    return { kind, geometry: row.feature.geometry, extra: row.extra() };
  });
}
