import type { Finding, LonLatGeometry, Place } from '@crownfall/geometry';
import { finding, type RawFeature } from '@crownfall/survey';

/** All coordinate arrays of a geometry, each flat. */
export function coordinateArrays(geometry: LonLatGeometry): readonly Float64Array[] {
  if (geometry.kind === 'point') return [geometry.points];
  if (geometry.kind === 'line') return geometry.lines;
  return geometry.kind === 'area' ? geometry.polygons.flat() : [];
}

/** Converts all positions of the features in place, from the system of the file to longitude and latitude. */
export function convertPositions(features: readonly RawFeature[], toLonLat: (xy: Float64Array) => Float64Array): void {
  for (const { geometry } of features) {
    for (const flat of coordinateArrays(geometry)) flat.set(toLonLat(flat));
  }
}

/** How many positions of a layer could be longitude and latitude, and how many only the other way round. */
interface RangeCount {
  readonly finite: number;
  readonly outside: number;
  readonly insideWhenSwapped: number;
  /** The first position that is outside. */
  readonly first: readonly [number, number] | null;
}

/**
 * Judges numbers that are taken for longitude and latitude. Most outside ±180 and ±90: they are projected and the file
 * does not say how (`crs-missing`, stops), or, when all of them would fit the other way round, latitude stands first
 * (`lonlat-maybe-swapped`, stops). Few outside: `null`; each such feature is told by the survey.
 */
export function judgeLonLat(features: readonly RawFeature[], place: Place): Finding | null {
  const count = countRange(features);
  if (count.first === null || count.outside * 2 <= count.finite) return null;
  const got = `${count.first[0]}, ${count.first[1]}`;
  if (count.insideWhenSwapped === count.finite) {
    return finding('lonlat-maybe-swapped', 'error/stops', place, { got });
  }
  return finding('crs-missing', 'error/stops', place, {});
}

function countRange(features: readonly RawFeature[]): RangeCount {
  let finite = 0;
  let outside = 0;
  let insideWhenSwapped = 0;
  let first: readonly [number, number] | null = null;
  for (const { geometry } of features) {
    for (const flat of coordinateArrays(geometry)) {
      for (let i = 0; i < flat.length; i += 2) {
        const x = flat[i];
        const y = flat[i + 1];
        if (!Number.isFinite(x + y)) continue;
        finite++;
        if (Math.abs(x) <= 90 && Math.abs(y) <= 180) insideWhenSwapped++;
        if (Math.abs(x) <= 180 && Math.abs(y) <= 90) continue;
        outside++;
        first ??= [x, y];
      }
    }
  }
  return { finite, outside, insideWhenSwapped, first };
}
