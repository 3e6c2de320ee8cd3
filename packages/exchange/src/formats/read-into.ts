import { finding } from '@crownfall/survey';
import { gather } from '../byte-stream.ts';
import { readCsv } from '../csv/read-csv.ts';
import type { FeatureTaker } from '../geojson/feature-taker.ts';
import { ONE_STRING_BYTES, takeGeoJson } from '../geojson/read-geojson.ts';
import { type LayerReading, type LayerSource, placeOf } from '../layer-reading.ts';
import { type LayerFormat, layerFormat, READABLE_FORMATS } from '../project/layer-format.ts';
import { takeFlatGeobuf } from './flatgeobuf/read-flatgeobuf.ts';
import { takeShapefile } from './shapefile/read-shapefile.ts';

const SNIFFED_BYTES = 4096;

/** Hands all features of a file to whoever takes them; what is wrong with the file goes to the taker's findings. */
type TakeFormat = (source: LayerSource, taker: FeatureTaker) => Promise<void>;

/** Readers of rarer formats are loaded when one is met: a page should not carry them from the start. */
const TAKERS: Readonly<Record<Exclude<LayerFormat, 'csv' | 'geojson' | 'geojsonl' | 'geopackage'>, TakeFormat>> = {
  shapefile: takeShapefile,
  flatgeobuf: takeFlatGeobuf,
  geoparquet: async (...met) => (await import('./geoparquet/read-geoparquet.ts')).takeGeoParquet(...met),
  kml: async (...met) => (await import('./xml/read-kml.ts')).takeKml(...met),
  gpx: async (...met) => (await import('./xml/read-gpx.ts')).takeGpx(...met),
  zip: async (...met) => (await import('./zip/read-zip.ts')).takeZip(...met),
};

/**
 * Reads a layer in whichever format it is into a taker. Delimited text comes back as a whole instead, since its columns
 * are judged as wholes; so does nothing but a finding for a format that cannot be read. The stream is always read to its
 * end, so that its owner may count and hash it.
 */
export async function readInto(
  source: LayerSource,
  taker: FeatureTaker,
  oneStringBytes = ONE_STRING_BYTES,
): Promise<LayerReading | null> {
  const { head, all } = await gather(source.bytes, SNIFFED_BYTES);
  const again = { ...source, bytes: all };
  const format = layerFormat(source.entry.path, head);
  if (format === 'csv') return readCsv(again);
  const known = format !== null && (format !== 'geopackage' || source.takeGeoPackage !== undefined);
  if (format === 'geojson' || format === 'geojsonl') await takeGeoJson(again, taker, oneStringBytes);
  else if (format === 'geopackage') await source.takeGeoPackage?.(source, taker);
  else if (format !== null) await TAKERS[format](again, taker);
  for await (const _ of all);
  if (known) return null;
  const got = /\.([^./\\]+)$/.exec(source.entry.path)?.[1] ?? 'binary';
  const facts = { got, valid: READABLE_FORMATS };
  return { layer: null, findings: [finding('format-unknown', 'error/stops', placeOf(source), facts)] };
}
