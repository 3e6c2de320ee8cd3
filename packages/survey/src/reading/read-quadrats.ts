/** Quadrats: measured plots on the pavement. */
import type { LonLat, LonLatGeometry } from '@crownfall/geometry';
import type { RawLayer } from '../project-input.ts';
import type { Quadrat } from '../records.ts';
import { claimId, idRegister } from './claim-id.ts';
import { geometryHash } from './geometry-hash.ts';
import type { LayerReading } from './layer-reader.ts';
import { readLayer } from './layer-reader.ts';
import { isMissing } from './number-text.ts';
import { hasGeometry, middleOf, smallAreaM2 } from './positions.ts';
import { present } from './present-fields.ts';
import type { RowReader } from './row-reader.ts';

type Row = RowReader<'quadrats'>;

/** Reads the quadrats. A plot drawn as an area and without area_m2 takes the area of its outline. */
export function readQuadrats(layer: RawLayer | undefined): LayerReading<Quadrat> {
  const register = idRegister('quadrat', layer, 'quadrat_id');
  return readLayer('quadrats', layer, (row) => {
    const place = placeOf(row);
    const areaM2 = areaOf(row);
    const stainedPct = row.number('stained_pct', 'needed');
    const measuredOn = row.date('measured_on', 'needed');
    if (place === undefined || areaM2 === undefined || stainedPct === undefined || measuredOn === undefined) {
      return undefined;
    }
    const quadratId = claimId(row, register, 'quadrat_id', () => `${geometryHash(place.geometry)}-${measuredOn}`);
    if (quadratId === undefined) return undefined;
    const polygons = place.geometry.kind === 'area' ? place.geometry.polygons : undefined;
    return {
      quadratId,
      at: place.at,
      ...present({ polygons, by: row.text('by') }),
      areaM2,
      stainedShare: stainedPct / 100,
      measuredOn,
      extra: row.extra(),
    };
  });
}

function placeOf(row: Row): { at: LonLat; geometry: LonLatGeometry } | undefined {
  const { geometry } = row.feature;
  if (geometry.kind !== 'none') {
    return hasGeometry(row, ['point', 'area']) ? { at: middleOf(geometry), geometry } : undefined;
  }
  const lon = row.number('lon', 'needed');
  const lat = row.number('lat', 'needed');
  if (lon === undefined || lat === undefined) return undefined;
  return { at: { lon, lat }, geometry: { kind: 'point', points: Float64Array.of(lon, lat) } };
}

function areaOf(row: Row): number | undefined {
  const { geometry, properties } = row.feature;
  if (!isMissing(properties.area_m2) || geometry.kind !== 'area') return row.number('area_m2', 'needed');
  const areaM2 = smallAreaM2(geometry.polygons);
  if (areaM2 > 0) {
    row.find('area-from-outline', 'note/assumed', { area_m2: Number(areaM2.toPrecision(4)) }, 'area_m2');
    return areaM2;
  }
  row.spoil('ring-zero-area', {});
  return undefined;
}
