/** FlatGeobuf (specification 3.0.0) from front to back: header, index passed over, features one by one. */
import { ByteBuffer } from 'flatbuffers';
import { Feature } from 'flatgeobuf/lib/mjs/flat-geobuf/feature.js';
import { parseProperties } from 'flatgeobuf/lib/mjs/generic/feature.js';
import { fromGeometry } from 'flatgeobuf/lib/mjs/geojson/geometry.js';
import { fromByteBuffer, type HeaderMeta } from 'flatgeobuf/lib/mjs/header-meta.js';
import type { FeatureTaker } from '../../geojson/feature-taker.ts';
import type { LayerSource } from '../../layer-reading.ts';
import { type ByteQueue, byteQueue } from '../byte-queue.ts';
import { problemOf, tellDamage } from '../damage.ts';
import { plainProperties } from '../plain-value.ts';

/** The specification asks readers to refuse headers beyond 10 MB; a feature of half that is no crown either. */
const LARGEST_HEADER = 10 << 20;
const LARGEST_FEATURE = 64 << 20;
/** Bytes of one node of the index: four doubles and an offset. */
const NODE_BYTES = 40;
const MAGIC_BYTES = 8;

/** Hands over all features; a damaged file gives those before the damage. Altitudes are dropped, the index is not used. */
export async function takeFlatGeobuf(source: LayerSource, taker: FeatureTaker): Promise<void> {
  const queue = byteQueue(source.bytes);
  try {
    await queue.take(MAGIC_BYTES);
    const header = fromByteBuffer(buffer(await sized(queue, LARGEST_HEADER)));
    taker.statedCrs(crsOf(header));
    await queue.skip(indexBytes(header));
    for (let bytes = await sized(queue, LARGEST_FEATURE); bytes; bytes = await sized(queue, LARGEST_FEATURE)) {
      const feature = Feature.getSizePrefixedRootAsFeature(buffer(bytes));
      const shape = feature.geometry();
      const geometry = shape === null ? null : fromGeometry(shape, header.geometryType);
      const properties = plainProperties(parseProperties(feature, header.columns), taker);
      taker.addFeature({ type: 'Feature', properties, geometry });
      await taker.ready();
    }
  } catch (error) {
    tellDamage(taker, 'FlatGeobuf', `byte ${queue.at()}: ${problemOf(error)}`);
  }
}

/** The next part with the four bytes of its length before it, as the buffers want it; null at the end. */
async function sized(queue: ByteQueue, largest: number): Promise<Uint8Array | null> {
  const prefix = await queue.take(4);
  if (prefix === null) return null;
  const length = new DataView(prefix.buffer, prefix.byteOffset).getUint32(0, true);
  if (length > largest) throw new RangeError(`a part of ${length} bytes; at most ${largest} are possible`);
  const body = (await queue.take(length)) ?? new Uint8Array(0);
  const whole = new Uint8Array(4 + length);
  whole.set(prefix);
  whole.set(body, 4);
  return whole;
}

function buffer(bytes: Uint8Array | null): ByteBuffer {
  if (bytes === null) throw new RangeError('it ends before its header');
  return new ByteBuffer(bytes);
}

function crsOf({ crs }: HeaderMeta): string | null {
  if (crs === null) return null;
  if (crs.code > 0) return `${crs.org || 'EPSG'}:${crs.code}`;
  return crs.code_string || crs.wkt || null;
}

/** Bytes of the packed R-tree: levels of nodes, each `indexNodeSize` times smaller, down to one root. */
function indexBytes({ featuresCount, indexNodeSize }: HeaderMeta): number {
  const count = Number(featuresCount);
  if (indexNodeSize < 2 || !(count > 0)) return 0;
  let nodes = count;
  for (let level = count; level > 1; ) {
    level = Math.ceil(level / indexNodeSize);
    nodes += level;
  }
  return (count === 1 ? 2 : nodes) * NODE_BYTES;
}
