/** GeoParquet 1.0 and 1.1 (OGC 24-013), row group by row group. */
import { finding } from '@crownfall/survey';
import { type AsyncBuffer, type FileMetaData, parquetMetadataAsync, parquetReadObjects } from 'hyparquet';
import { wkbToGeojson } from 'hyparquet/src/wkb.js';
import { compressors } from 'hyparquet-compressors';
import { gather } from '../../byte-stream.ts';
import type { FeatureTaker } from '../../geojson/feature-taker.ts';
import type { LayerSource, RandomAccess } from '../../layer-reading.ts';
import { problemOf, tellDamage, tellRefusal } from '../damage.ts';
import { plainProperties } from '../plain-value.ts';
import { checkPages } from './check-pages.ts';
import { type GeoMetadata, geometryFromNative, isReadableEncoding, readGeoMetadata } from './geo-metadata.ts';

/** A file that comes only as a stream is held in memory, since its directory stands at its end. */
const LARGEST_HELD = 256 << 20;
/** A row group is held unpacked while its rows are handed over; writers rarely make them larger than 128 MB. */
const LARGEST_ROW_GROUP = 1 << 30;
const LARGEST_SWELLING = 1000;

/**
 * Hands over all rows; memory holds one row group. The box column of the file is no field. Bytes that are no geometry
 * give a row without one, and a finding. A damaged file gives the row groups before the damage.
 */
export async function takeGeoParquet(source: LayerSource, taker: FeatureTaker): Promise<void> {
  const file = source.file ?? (await heldFile(source));
  if (file === null) return tellRefusal(taker, 'GeoParquet', 'it is larger than 256 MB and comes as a stream only');
  try {
    const metadata = await parquetMetadataAsync(asyncBuffer(file));
    const geo = readGeoMetadata(metadata.key_value_metadata?.find(({ key }) => key === 'geo')?.value);
    if (!isReadableEncoding(geo.encoding)) throw new RangeError(`its encoding "${geo.encoding}" is not known`);
    const swollen = swollenRowGroup(metadata, file.byteLength);
    if (swollen !== null) return tellRefusal(taker, 'GeoParquet', swollen);
    taker.statedCrs(geo.crs);
    await takeRowGroups(file, metadata, geo, taker);
  } catch (error) {
    tellDamage(taker, 'GeoParquet', problemOf(error));
  }
}

async function takeRowGroups(
  access: RandomAccess,
  metadata: FileMetaData,
  geo: GeoMetadata,
  taker: FeatureTaker,
): Promise<void> {
  const columns = rootColumns(metadata).filter((name) => name !== geo.boxColumn);
  // Geometry stays packed until its row is handed over: unpacked, a row group would take ten times the memory.
  const parsers = { geometryFromBytes: asIs, geographyFromBytes: asIs };
  const file = asyncBuffer(access);
  let rowStart = 0;
  for (const group of metadata.row_groups) {
    await checkPages(access, group);
    const rowEnd = rowStart + Number(group.num_rows);
    const rows = await parquetReadObjects({ file, metadata, columns, rowStart, rowEnd, compressors, parsers });
    for (const [i, row] of rows.entries()) {
      const { [geo.column]: shape, ...values } = row;
      const geometry = geo.encoding === 'WKB' ? wkbGeometry(shape) : geometryFromNative(geo.encoding, shape);
      if (geometry === UNREADABLE) tellUnreadable(taker, rowStart + i + 1);
      const properties = plainProperties(values, taker);
      taker.addFeature({ type: 'Feature', properties, geometry: geometry === UNREADABLE ? null : (geometry ?? null) });
      await taker.ready();
    }
    rowStart = rowEnd;
  }
}

const asIs = (bytes: Uint8Array): Uint8Array => bytes;

const UNREADABLE = 'unreadable';

function wkbGeometry(bytes: Uint8Array | null | undefined): unknown {
  if (bytes === undefined || bytes === null) return null;
  try {
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    return wkbToGeojson({ view, offset: 0 });
  } catch {
    return UNREADABLE;
  }
}

function tellUnreadable(taker: FeatureTaker, row: number): void {
  const problem = 'its geometry is not well-known binary';
  taker.findings.add(
    finding('geojson-invalid', 'warning/left_out', { ...taker.place, feature: `#${row}` }, { problem }),
  );
}

/** The names of the columns at the root of the schema, nested ones included. */
function rootColumns({ schema }: FileMetaData): string[] {
  const names: string[] = [];
  let at = 1;
  const passOver = (): void => {
    const children = schema[at++]?.num_children ?? 0;
    for (let i = 0; i < children; i++) passOver();
  };
  while (at < schema.length) {
    names.push(schema[at].name);
    passOver();
  }
  return names;
}

function swollenRowGroup({ row_groups }: FileMetaData, fileBytes: number): string | null {
  for (const { columns } of row_groups) {
    const bytes = columns.reduce((sum, { meta_data }) => sum + Number(meta_data?.total_uncompressed_size ?? 0), 0);
    if (bytes > LARGEST_ROW_GROUP) return `a row group of it unpacks to ${Math.round(bytes / 1e6)} MB`;
    if (bytes > fileBytes * LARGEST_SWELLING) return 'a row group of it unpacks to more than a thousand times the file';
  }
  return null;
}

function asyncBuffer(file: RandomAccess): AsyncBuffer {
  return {
    byteLength: file.byteLength,
    async slice(start, end = file.byteLength) {
      const bytes = await file.slice(start < 0 ? file.byteLength + start : start, end);
      const whole = bytes.byteLength === bytes.buffer.byteLength;
      // A buffer of Node's own may be a part of a larger one, and its `slice` copies nothing.
      return (whole ? bytes : Uint8Array.from(bytes)).buffer as ArrayBuffer;
    },
  };
}

async function heldFile(source: LayerSource): Promise<RandomAccess | null> {
  const { head, complete } = await gather(source.bytes, LARGEST_HELD);
  if (!complete) return null;
  return { byteLength: head.length, slice: async (start, end) => head.subarray(start, end) };
}
