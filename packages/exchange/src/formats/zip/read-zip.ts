/** Archives that hold one layer: a zipped shapefile, or a KMZ. */
import { gather, oneChunk } from '../../byte-stream.ts';
import type { FeatureTaker } from '../../geojson/feature-taker.ts';
import type { LayerSource } from '../../layer-reading.ts';
import { problemOf, tellDamage, tellRefusal } from '../damage.ts';
import { takeShapefile } from '../shapefile/read-shapefile.ts';
import { takeKml } from '../xml/read-kml.ts';
import { RefusedZip, type ZipEntry, zipEntries } from './zip-entries.ts';

/** The packed archive is held in memory: its directory stands at its end. */
const LARGEST_ARCHIVE = 256 << 20;

/** Hands over the one layer of an archive. Several shapefiles in it are told, and none is taken: which one is meant? */
export async function takeZip(source: LayerSource, taker: FeatureTaker): Promise<void> {
  try {
    const { head, complete, all } = await gather(source.bytes, LARGEST_ARCHIVE);
    if (!complete) {
      for await (const _ of all);
      throw new RefusedZip('it is larger than 256 MB packed');
    }
    await takeLayer(zipEntries(head), source, taker);
  } catch (error) {
    if (error instanceof RefusedZip) tellRefusal(taker, 'zip', problemOf(error));
    else tellDamage(taker, 'zip', problemOf(error));
  }
}

async function takeLayer(entries: readonly ZipEntry[], source: LayerSource, taker: FeatureTaker): Promise<void> {
  const named = (extension: string) =>
    entries.filter(({ name }) => name.toLowerCase().endsWith(extension) && !/(?:^|\/)(?:\.|__macosx)/i.test(name));
  const shapes = named('.shp');
  if (shapes.length > 1) {
    const names = shapes.map(({ name }) => name).join(', ');
    return tellDamage(taker, 'zip', `it holds several layers (${names}); unpack it and give one of them`);
  }
  const [shape] = shapes;
  if (shape) {
    const stem = shape.name.slice(0, -4).toLowerCase();
    const beside = async (extension: string) => {
      const found = entries.find(({ name }) => name.toLowerCase() === `${stem}.${extension}`);
      return found ? oneChunk(found.unpack()) : null;
    };
    return takeShapefile({ ...source, bytes: oneChunk(shape.unpack()), beside }, taker);
  }
  // A KMZ may part its placemarks over several documents that its first one links to.
  const documents = named('.kml');
  for (const document of documents) await takeKml({ ...source, bytes: oneChunk(document.unpack()) }, taker);
  if (documents.length === 0) tellDamage(taker, 'zip', 'it holds no .shp and no .kml file');
}
