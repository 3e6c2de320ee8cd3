/** Pavement: areas, or lines with a width. */
import type { RawLayer } from '../project-input.ts';
import type { FootTraffic, Pavement, PavementKind, PavementShape, Surface } from '../records.ts';
import type { Settings } from '../settings.ts';
import { claimId, idRegister } from './claim-id.ts';
import { fnv1a64, geometryHash } from './geometry-hash.ts';
import type { LayerReading } from './layer-reader.ts';
import { readLayer } from './layer-reader.ts';
import { isMissing } from './number-text.ts';
import { hasGeometry } from './positions.ts';
import { present } from './present-fields.ts';
import type { RowReader } from './row-reader.ts';

/**
 * Reads the pavement. An unknown kind is `other`; kinds are not guessed from like-sounding words. A line without a width
 * takes the default of its kind, told once per kind. A width that cannot be read leaves the line out.
 */
export function readPavement(layer: RawLayer | undefined, settings: Settings): LayerReading<Pavement> {
  const register = idRegister('pavement', layer, 'pavement_id');
  return readLayer('pavement', layer, (row) => {
    const kind = kindOf(row);
    const shape = shapeOf(row, kind, settings);
    if (shape === undefined) return undefined;
    const pavementId = claimId(row, register, 'pavement_id', () => shapeHash(row, shape));
    if (pavementId === undefined) return undefined;
    const surface = row.word<Surface>('surface', 'other', true) ?? 'other';
    const footTraffic = row.word<FootTraffic>('foot_traffic');
    return { pavementId, kind, surface, ...present({ footTraffic }), shape, extra: row.extra() };
  });
}

function kindOf(row: RowReader<'pavement'>): PavementKind {
  if (isMissing(row.feature.properties.kind)) row.tally('field-missing', 'note/assumed', { read_as: 'other' }, 'kind');
  return row.word<PavementKind>('kind', 'other', true) ?? 'other';
}

function shapeOf(row: RowReader<'pavement'>, kind: PavementKind, settings: Settings): PavementShape | undefined {
  if (!hasGeometry(row, ['area', 'line'])) return undefined;
  const { geometry, properties } = row.feature;
  if (geometry.kind === 'area') return { from: 'area', polygons: geometry.polygons };
  if (geometry.kind !== 'line') return undefined;
  const lines = geometry.lines.filter((line) => line.length >= 4);
  if (lines.length === 0) {
    row.spoil('line-too-short', {});
    return undefined;
  }
  if (isMissing(properties.width_m)) {
    const widthM = settings.default_width_m[kind];
    row.tally('width-defaulted', 'note/assumed', { kind, width_m: widthM }, 'width_m', kind);
    return { from: 'line', lines, widthM, widthFrom: 'default' };
  }
  const widthM = row.number('width_m', 'needed');
  return widthM === undefined ? undefined : { from: 'line', lines, widthM, widthFrom: 'given' };
}

/** Two lines along the same vertices with different widths are different pieces. */
function shapeHash(row: RowReader<'pavement'>, shape: PavementShape): string {
  const outline = geometryHash(row.feature.geometry);
  return shape.from === 'area' ? outline : fnv1a64(`${outline} ${shape.widthM}`);
}
