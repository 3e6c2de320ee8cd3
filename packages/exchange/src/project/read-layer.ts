import { findingSink } from '../finding-sink.ts';
import { readInto } from '../formats/read-into.ts';
import { featureCollector } from '../geojson/feature-collector.ts';
import type { LayerReading, LayerSource } from '../layer-reading.ts';

/**
 * Reads one layer in whichever format it is. The stream is always read to its end. A format that cannot be read gives no
 * layer and a finding that lists those that can.
 */
export async function readLayer(source: LayerSource): Promise<LayerReading> {
  const collector = featureCollector(source, findingSink());
  const table = await readInto(source, collector);
  return table ?? collector.finish();
}
