import { finding } from '@crownfall/survey';
import { gather } from '../byte-stream.ts';
import { readCsv } from '../csv/read-csv.ts';
import { readGeoJson } from '../geojson/read-geojson.ts';
import { type LayerReading, type LayerSource, placeOf } from '../layer-reading.ts';
import { layerFormat, READABLE_FORMATS } from './layer-format.ts';

const SNIFFED_BYTES = 4096;

/**
 * Reads one layer in whichever format it is. The stream is always read to its end. A format that cannot be read gives no
 * layer and a finding that lists those that can.
 */
export async function readLayer(source: LayerSource): Promise<LayerReading> {
  const { head, all } = await gather(source.bytes, SNIFFED_BYTES);
  const format = layerFormat(source.entry.path, head);
  if (format === 'csv') return readCsv({ ...source, bytes: all });
  if (format !== null) return readGeoJson({ ...source, bytes: all });
  for await (const _ of all);
  const got = /\.([^./\\]+)$/.exec(source.entry.path)?.[1] ?? 'binary';
  const facts = { got, valid: READABLE_FORMATS };
  return { layer: null, findings: [finding('format-unknown', 'error/stops', placeOf(source), facts)] };
}
