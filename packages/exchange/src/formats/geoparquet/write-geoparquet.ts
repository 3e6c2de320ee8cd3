/** GeoParquet 1.1.0 (OGC 24-013): well-known binary, boxes for lookups, row groups written as they fill. */
import type { SchemaElement } from 'hyparquet';
import { ByteWriter, ParquetWriter } from 'hyparquet-writer';
import { geometryToJson, type JsonGeometry, type RoundCoordinate } from '../../geojson/geometry-to-json.ts';
import type { OutFeature } from '../../geojson/write-geojson.ts';
import { type ColumnType, type LayerProfile, valueAs } from '../layer-profile.ts';
import { wellKnownBinary } from '../well-known-binary.ts';

/** A row group is closed at so many rows or bytes of geometry, whichever comes first: memory holds one. */
const ROW_GROUP_ROWS = 1 << 14;
const ROW_GROUP_BYTES = 16 << 20;

const PARQUET_TYPES: Readonly<Record<ColumnType, Pick<SchemaElement, 'type' | 'converted_type'>>> = {
  boolean: { type: 'BOOLEAN' },
  integer: { type: 'INT32' },
  'wide-integer': { type: 'INT64' },
  number: { type: 'DOUBLE' },
  text: { type: 'BYTE_ARRAY', converted_type: 'UTF8' },
  json: { type: 'BYTE_ARRAY', converted_type: 'JSON' },
};

type Box = { xmin: number; ymin: number; xmax: number; ymax: number };

/**
 * Features as the bytes of a GeoParquet file, in pieces: longitude and latitude (OGC:CRS84, so no `crs`), shells
 * counter-clockwise, snappy-packed, columns typed by the profile. A field named like the geometry column keeps its name;
 * the geometry column then takes another. No features give a valid, empty file.
 */
export async function* writeGeoParquet(
  batches: AsyncIterable<Iterable<OutFeature>>,
  profile: LayerProfile,
  round: RoundCoordinate,
): AsyncGenerator<Uint8Array> {
  const names = new Set(profile.columns.map(({ name }) => name));
  const geometryName = freeName('geometry', names);
  const boxName = freeName('bbox', names);
  const bytes = new ByteWriter();
  const metadata: { key: string; value?: string }[] = [];
  const schema = schemaOf(profile, geometryName, boxName);
  const writer = new ParquetWriter({ writer: bytes, schema, kvMetadata: metadata, createdBy: 'crownfall' });
  bytes.appendUint32(PAR1);
  const types = new Set<string>();
  let group = new RowGroup(profile);

  function flush(): Uint8Array {
    if (group.rows > 0) {
      const columnData = group.columnData(geometryName, boxName);
      void writer.write({ columnData, rowGroupSize: group.rows });
      group = new RowGroup(profile);
    }
    return taken(bytes);
  }

  for await (const batch of batches) {
    for (const { geometry, properties } of batch) {
      const json = geometryToJson(geometry, round);
      if (json) types.add(json.type);
      group.add(json, properties);
      if (group.rows >= ROW_GROUP_ROWS || group.bytes >= ROW_GROUP_BYTES) yield flush();
    }
  }
  yield flush();
  metadata.push({ key: 'geo', value: JSON.stringify(geoMetadata(geometryName, boxName, types, profile)) });
  void writer.finish();
  yield taken(bytes);
}

/** `PAR1`, little-endian, which opens and closes every Parquet file. */
const PAR1 = 0x31524150;

class RowGroup {
  rows = 0;
  bytes = 0;
  readonly #profile: LayerProfile;
  readonly #geometries: (Uint8Array | null)[] = [];
  readonly #boxes: (Box | null)[] = [];
  readonly #values: unknown[][];

  constructor(profile: LayerProfile) {
    this.#profile = profile;
    this.#values = profile.columns.map(() => []);
  }

  add(geometry: JsonGeometry, properties: Readonly<Record<string, unknown>>): void {
    const binary = wellKnownBinary(geometry);
    this.rows++;
    this.bytes += binary?.length ?? 0;
    this.#geometries.push(binary);
    this.#boxes.push(geometry && boxOf(geometry.coordinates));
    this.#profile.columns.forEach(({ name, type }, c) => {
      const value = valueAs(type, properties[name]);
      this.#values[c].push(type === 'wide-integer' && value !== null ? BigInt(value as number) : value);
    });
  }

  columnData(geometryName: string, boxName: string) {
    return [
      { name: geometryName, data: this.#geometries, statistics: false },
      { name: boxName, data: this.#boxes },
      ...this.#profile.columns.map(({ name }, c) => ({ name, data: this.#values[c] })),
    ];
  }
}

function schemaOf({ columns }: LayerProfile, geometryName: string, boxName: string): SchemaElement[] {
  return [
    { name: 'root', num_children: columns.length + 2 },
    { name: geometryName, type: 'BYTE_ARRAY', repetition_type: 'OPTIONAL' },
    { name: boxName, repetition_type: 'OPTIONAL', num_children: 4 },
    ...(['xmin', 'ymin', 'xmax', 'ymax'] as const).map(
      (name): SchemaElement => ({ name, type: 'DOUBLE', repetition_type: 'REQUIRED' }),
    ),
    ...columns.map(({ name, type }): SchemaElement => ({ name, ...PARQUET_TYPES[type], repetition_type: 'OPTIONAL' })),
  ];
}

function geoMetadata(geometryName: string, boxName: string, types: ReadonlySet<string>, { box }: LayerProfile): object {
  const covering = {
    bbox: Object.fromEntries(['xmin', 'ymin', 'xmax', 'ymax'].map((corner) => [corner, [boxName, corner]])),
  };
  const column = {
    encoding: 'WKB',
    geometry_types: [...types].sort(),
    orientation: 'counterclockwise',
    edges: 'planar',
    ...(box ? { bbox: box } : {}),
    covering,
  };
  return { version: '1.1.0', primary_column: geometryName, columns: { [geometryName]: column } };
}

function boxOf(coordinates: unknown): Box {
  const box = { xmin: Infinity, ymin: Infinity, xmax: -Infinity, ymax: -Infinity };
  const visit = (part: unknown): void => {
    if (!Array.isArray(part)) return;
    if (typeof part[0] !== 'number') {
      for (const inner of part) visit(inner);
      return;
    }
    box.xmin = Math.min(box.xmin, part[0]);
    box.ymin = Math.min(box.ymin, part[1]);
    box.xmax = Math.max(box.xmax, part[0]);
    box.ymax = Math.max(box.ymax, part[1]);
  };
  visit(coordinates);
  return box;
}

function freeName(name: string, taken: ReadonlySet<string>): string {
  let free = name;
  for (let n = 1; taken.has(free); n++) free = `${name}_${n}`;
  return free;
}

/** What the writer has gathered; its buffer starts anew, its count of the file's bytes goes on. */
function taken(writer: ByteWriter): Uint8Array {
  const piece = writer.getBytes().slice();
  writer.index = 0;
  return piece;
}
