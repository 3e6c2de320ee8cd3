/** The outline of a crown as one row records it: an area, or a trunk with spreads or radii. */
import type { CrownShape, LonLat } from '@crownfall/geometry';
import type { Settings } from '../settings.ts';
import { isMissing, readNumber } from './number-text.ts';
import { hasGeometry, middleOf } from './positions.ts';
import { limitsText, type RowReader, within } from './row-reader.ts';

/**
 * Reads a crown's shape; without one the row is spoiled. An area is taken before any spread beside it; at a point, radii
 * before two diameters before one spread.
 */
export function crownShapeOf(row: RowReader<'crowns'>, settings: Settings): CrownShape | undefined {
  if (!hasGeometry(row, ['area', 'point'])) return undefined;
  const { geometry, properties } = row.feature;
  if (geometry.kind === 'area') return { from: 'polygon', polygons: geometry.polygons };
  if (geometry.kind !== 'point' || geometry.points.length !== 2) {
    row.spoil('geometry-unexpected', { got: 'points', expected: 'point, area' });
    return undefined;
  }
  const at = middleOf(geometry);
  const given = (field: string): boolean => !isMissing(properties[field]);
  if (given('radii_m')) return radiiShape(row, at, settings.spread_max_m);
  if (given('spread_a_m') && given('spread_b_m')) return diametersShape(row, at, settings.spread_max_m);
  if (given('spread_m')) {
    const spreadM = row.number('spread_m', 'needed', settings.spread_max_m);
    return spreadM === undefined ? undefined : { from: 'spread', at, spreadM };
  }
  row.spoil('crown-without-size', {}, 'spread_m');
  return undefined;
}

function diametersShape(row: RowReader<'crowns'>, at: LonLat, maximum: number): CrownShape | undefined {
  const aM = row.number('spread_a_m', 'needed', maximum);
  const bM = row.number('spread_b_m', 'needed', maximum);
  if (aM === undefined || bM === undefined) return undefined;
  const bearingDeg = row.number('bearing_deg');
  if (bearingDeg === undefined && aM !== bM) {
    row.tally('field-missing', 'note/assumed', { read_as: 0 }, 'bearing_deg');
  }
  return { from: 'diameters', at, aM, bM, bearingDeg: bearingDeg ?? 0 };
}

function radiiShape(row: RowReader<'crowns'>, at: LonLat, maximum: number): CrownShape | undefined {
  const parts = radiiParts(row.feature.properties.radii_m);
  const radiiM: number[] = [];
  for (const part of parts) {
    const reading = readNumber(part, 'm');
    if (reading === 'missing' || reading === 'unreadable') {
      row.spoil('field-not-a-number', { got: String(part), unit: 'm' }, 'radii_m');
      return undefined;
    }
    const limits = { minimum: 0, maximum };
    if (!within(reading.value, limits)) {
      row.spoil('value-out-of-range', { got: reading.value, expected: limitsText(limits, 'm') }, 'radii_m');
      return undefined;
    }
    radiiM.push(reading.value);
  }
  if (radiiM.length < 3) {
    row.spoil('outline-radii-too-few', { got: radiiM.length }, 'radii_m');
    return undefined;
  }
  if (radiiM.every((radius) => radius === 0)) {
    row.spoil('outline-zero-size', { got: 0 }, 'radii_m');
    return undefined;
  }
  return { from: 'radii', at, radiiM };
}

/** A list as an array, as JSON text `[4.1, 3.8]`, or as text parted by semicolons, blanks, or (last) commas. */
function radiiParts(raw: unknown): readonly unknown[] {
  if (Array.isArray(raw)) return raw;
  const bare = String(raw)
    .trim()
    .replace(/^\[|\]$/g, '')
    .trim();
  if (bare.includes(';')) return bare.replace(/;$/, '').split(';');
  const parts = bare.split(/,?\s+/);
  return parts.length > 1 ? parts : bare.split(',');
}
