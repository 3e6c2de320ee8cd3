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

/** Counts the positions of a layer, batch by batch, and judges whether they can be longitude and latitude. */
export interface LonLatJudge {
  add(features: readonly RawFeature[]): void;
  /** See `judgeLonLat`. */
  verdict(place: Place): Finding | null;
}

/**
 * Judges numbers that are taken for longitude and latitude. Most outside ±180 and ±90: they are projected and the file
 * does not say how (`crs-missing`, stops), or, when all of them would fit the other way round, latitude stands first
 * (`lonlat-maybe-swapped`, stops). Few outside: `null`; each such feature is told by the survey.
 */
export function judgeLonLat(features: readonly RawFeature[], place: Place): Finding | null {
  const judge = lonLatJudge();
  judge.add(features);
  return judge.verdict(place);
}

/** A judge who has seen nothing. */
export function lonLatJudge(): LonLatJudge {
  let finite = 0;
  let outside = 0;
  let insideWhenSwapped = 0;
  let first: readonly [number, number] | null = null;

  function count(flat: Float64Array): void {
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

  return {
    add(features) {
      for (const { geometry } of features) for (const flat of coordinateArrays(geometry)) count(flat);
    },
    verdict(place) {
      if (first === null || outside * 2 <= finite) return null;
      const got = `${first[0]}, ${first[1]}`;
      if (insideWhenSwapped === finite) return finding('lonlat-maybe-swapped', 'error/stops', place, { got });
      return finding('crs-missing', 'error/stops', place, {});
    },
  };
}
