import type { LonLatGeometry } from '@crownfall/geometry';
import { degree } from '../round.ts';
import { geometryToJson, type RoundCoordinate } from './geometry-to-json.ts';

/** A feature to write. Properties are written in their own order; `undefined` is not written, NaN as null. */
export interface OutFeature {
  readonly geometry: LonLatGeometry;
  readonly properties: Readonly<Record<string, unknown>>;
}

export interface WriteGeoJsonOptions {
  /** `sequence`: one feature a line and nothing else (newline-delimited). */
  readonly as?: 'collection' | 'sequence';
  /** By default 9 decimals. */
  readonly round?: RoundCoordinate;
}

/**
 * Features as the text of a GeoJSON file by RFC 7946, in pieces, one feature a line: rings closed and wound as it asks, no
 * `crs` member, 9 decimals of a degree (0.1 mm). The same features give the same bytes on every machine. No features give
 * an empty FeatureCollection.
 *
 * @example [...writeGeoJson([])].join('') // '{"type":"FeatureCollection","features":[\n]}\n'
 */
export function* writeGeoJson(features: Iterable<OutFeature>, options: WriteGeoJsonOptions = {}): Generator<string> {
  const round = options.round ?? degree;
  const collection = options.as !== 'sequence';
  if (collection) yield '{"type":"FeatureCollection","features":[';
  let first = true;
  for (const { geometry, properties } of features) {
    const line = JSON.stringify({ type: 'Feature', properties, geometry: geometryToJson(geometry, round) });
    if (!collection) yield `${line}\n`;
    else yield first ? `\n${line}` : `,\n${line}`;
    first = false;
  }
  if (collection) yield '\n]}\n';
}
