import { writeCsv } from '../csv/write-csv.ts';
import { geometryToJson, type RoundCoordinate } from '../geojson/geometry-to-json.ts';
import { type OutFeature, writeGeoJson } from '../geojson/write-geojson.ts';
import type { WrittenFormat } from '../project/layer-format.ts';
import { writeFlatGeobuf } from './flatgeobuf/write-flatgeobuf.ts';
import type { LayerProfile } from './layer-profile.ts';

/** A file in pieces, texts to be written as UTF-8. */
export type FilePieces = Iterable<string | Uint8Array> | AsyncIterable<string | Uint8Array>;

type Batches = AsyncIterable<Iterable<OutFeature>>;

/** Which formats must know all columns before the first feature; the others are written in one pass. */
export const NEEDS_PROFILE: ReadonlySet<WrittenFormat> = new Set(['csv', 'flatgeobuf', 'geoparquet']);

/**
 * Features as a file of the wanted format, piece by piece as they come; nothing of them is kept but, for GeoParquet, one
 * row group. In delimited text single points become `lon` and `lat`, any other geometry GeoJSON text in a column
 * `geometry`.
 */
export function writeLayer(
  format: WrittenFormat,
  batches: Batches,
  options: { readonly profile: LayerProfile; readonly name: string; readonly round: RoundCoordinate },
): AsyncIterable<string | Uint8Array> {
  const { profile, round } = options;
  if (format === 'flatgeobuf') return writeFlatGeobuf(batches, profile, options);
  if (format === 'geoparquet') return geoParquet(batches, profile, round);
  if (format === 'csv') return tableText(batches, profile, round);
  return documentText(batches, format === 'geojsonl' ? 'sequence' : 'collection', round);
}

/** The writer is loaded when it is wanted, like the readers of rarer formats. */
async function* geoParquet(batches: Batches, profile: LayerProfile, round: RoundCoordinate) {
  const { writeGeoParquet } = await import('./geoparquet/write-geoparquet.ts');
  yield* writeGeoParquet(batches, profile, round);
}

async function* documentText(batches: Batches, as: 'sequence' | 'collection', round: RoundCoordinate) {
  if (as === 'collection') yield '{"type":"FeatureCollection","features":[\n';
  let first = true;
  for await (const batch of batches) {
    for (const line of writeGeoJson(batch, { as: 'sequence', round })) {
      if (as === 'sequence') yield line;
      else yield first ? line.trimEnd() : `,\n${line.trimEnd()}`;
      first = false;
    }
  }
  if (as === 'collection') yield first ? ']}\n' : '\n]}\n';
}

async function* tableText(batches: Batches, profile: LayerProfile, round: RoundCoordinate) {
  const names = profile.columns.map(({ name }) => name);
  const places = placeColumns(profile);
  const header = [...places, ...names.filter((name) => !places.includes(name))];
  yield* writeCsv(header, []);
  for await (const batch of batches) {
    let rows = '';
    for (const { geometry, properties } of batch) {
      const json = geometryToJson(geometry, round);
      const point = json?.type === 'Point' ? (json.coordinates as [number, number]) : [undefined, undefined];
      const place = places[0] === 'geometry' ? { geometry: json } : { lon: point[0], lat: point[1] };
      for (const row of withoutHeader(writeCsv(header, [{ ...properties, ...place }]))) rows += row;
    }
    yield rows;
  }
}

function placeColumns({ kinds, multi }: LayerProfile): string[] {
  if (kinds.size === 0) return [];
  return kinds.size === 1 && kinds.has('point') && !multi ? ['lon', 'lat'] : ['geometry'];
}

function* withoutHeader(rows: Generator<string>): Generator<string> {
  rows.next();
  yield* rows;
}
