/** FlatGeobuf (specification 3.0.0), without an index: features in their own order, written as they come. */
import { Builder } from 'flatbuffers';
import { magicbytes } from 'flatgeobuf/lib/mjs/constants.js';
import { Column } from 'flatgeobuf/lib/mjs/flat-geobuf/column.js';
import { ColumnType as Type } from 'flatgeobuf/lib/mjs/flat-geobuf/column-type.js';
import { Crs } from 'flatgeobuf/lib/mjs/flat-geobuf/crs.js';
import { Feature } from 'flatgeobuf/lib/mjs/flat-geobuf/feature.js';
import { GeometryType } from 'flatgeobuf/lib/mjs/flat-geobuf/geometry-type.js';
import { Header } from 'flatgeobuf/lib/mjs/flat-geobuf/header.js';
import { buildGeometry } from 'flatgeobuf/lib/mjs/generic/geometry.js';
import { parseGeometry } from 'flatgeobuf/lib/mjs/geojson/geometry.js';
import { geometryToJson, type JsonGeometry, type RoundCoordinate } from '../../geojson/geometry-to-json.ts';
import type { OutFeature } from '../../geojson/write-geojson.ts';
import { type ColumnType, type LayerProfile, type ProfiledColumn, valueAs } from '../layer-profile.ts';

const FLATGEOBUF_TYPES: Readonly<Record<ColumnType, Type>> = {
  boolean: Type.Bool,
  integer: Type.Int,
  'wide-integer': Type.Long,
  number: Type.Double,
  text: Type.String,
  json: Type.Json,
};

/**
 * Features as the bytes of a FlatGeobuf file, in pieces: EPSG:4326 with longitude first, one geometry type where the layer
 * has one (single parts become multi when some feature has several), columns typed by the profile.
 */
export async function* writeFlatGeobuf(
  batches: AsyncIterable<Iterable<OutFeature>>,
  profile: LayerProfile,
  options: { readonly name: string; readonly round: RoundCoordinate },
): AsyncGenerator<Uint8Array> {
  const type = geometryType(profile);
  yield magicbytes.slice();
  yield headerBytes(profile, type, options.name);
  for await (const batch of batches) {
    for (const { geometry, properties } of batch) {
      yield featureBytes(asType(geometryToJson(geometry, options.round), type), properties, profile.columns);
    }
  }
}

function geometryType({ kinds, multi }: LayerProfile): GeometryType {
  if (kinds.size !== 1) return GeometryType.Unknown;
  const [kind] = kinds;
  if (kind === 'point') return multi ? GeometryType.MultiPoint : GeometryType.Point;
  if (kind === 'line') return multi ? GeometryType.MultiLineString : GeometryType.LineString;
  return multi ? GeometryType.MultiPolygon : GeometryType.Polygon;
}

/** A geometry whose parts were lost on the way may be single in a layer of multi ones. */
function asType(geometry: JsonGeometry, type: GeometryType): JsonGeometry {
  const wanted = GeometryType[type];
  if (geometry === null || geometry.type === wanted || type === GeometryType.Unknown) return geometry;
  return { type: wanted, coordinates: [geometry.coordinates] };
}

function headerBytes(profile: LayerProfile, type: GeometryType, name: string): Uint8Array {
  const builder = new Builder();
  const columns = Header.createColumnsVector(
    builder,
    profile.columns.map((column) => {
      const columnName = builder.createString(column.name);
      Column.startColumn(builder);
      Column.addName(builder, columnName);
      Column.addType(builder, FLATGEOBUF_TYPES[column.type]);
      return Column.endColumn(builder);
    }),
  );
  const organisation = builder.createString('EPSG');
  Crs.startCrs(builder);
  Crs.addOrg(builder, organisation);
  Crs.addCode(builder, 4326);
  const crs = Crs.endCrs(builder);
  const envelope = profile.box && Header.createEnvelopeVector(builder, [...profile.box]);
  const layerName = builder.createString(name);
  Header.startHeader(builder);
  Header.addName(builder, layerName);
  if (envelope !== null) Header.addEnvelope(builder, envelope);
  Header.addGeometryType(builder, type);
  Header.addColumns(builder, columns);
  Header.addFeaturesCount(builder, BigInt(profile.count));
  Header.addIndexNodeSize(builder, 0);
  Header.addCrs(builder, crs);
  builder.finishSizePrefixed(Header.endHeader(builder));
  return builder.asUint8Array();
}

function featureBytes(
  geometry: JsonGeometry,
  properties: OutFeature['properties'],
  columns: readonly ProfiledColumn[],
): Uint8Array {
  const builder = new Builder();
  const values = propertyBytes(properties, columns);
  const propertiesAt = values.length > 0 ? Feature.createPropertiesVector(builder, values) : null;
  const geometryAt = geometry && buildGeometry(builder, parsedGeometry(geometry));
  Feature.startFeature(builder);
  if (geometryAt !== null) Feature.addGeometry(builder, geometryAt);
  if (propertiesAt !== null) Feature.addProperties(builder, propertiesAt);
  builder.finishSizePrefixed(Feature.endFeature(builder));
  return builder.asUint8Array();
}

/** The library leaves out where the only line of a multi-line ends, which other readers need. */
function parsedGeometry(geometry: NonNullable<JsonGeometry>): ReturnType<typeof parseGeometry> {
  const parsed = parseGeometry(geometry as Parameters<typeof parseGeometry>[0]);
  const ends = parsed.ends ?? (geometry.type === 'MultiLineString' ? [parsed.xy.length / 2] : undefined);
  return { ...parsed, ends };
}

/** Column number (two bytes) and value of each field that has one; texts with their length before them. */
function propertyBytes(properties: OutFeature['properties'], columns: readonly ProfiledColumn[]): Uint8Array {
  const parts: Uint8Array[] = [];
  columns.forEach(({ name, type }, c) => {
    const value = valueAs(type, properties[name]);
    if (value === null) return;
    const bytes = valueBytes(type, value);
    const part = new Uint8Array(2 + bytes.length);
    new DataView(part.buffer).setUint16(0, c, true);
    part.set(bytes, 2);
    parts.push(part);
  });
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

function valueBytes(type: ColumnType, value: unknown): Uint8Array {
  if (type === 'text' || type === 'json') {
    const text = new TextEncoder().encode(type === 'json' ? JSON.stringify(value) : String(value));
    const bytes = new Uint8Array(4 + text.length);
    new DataView(bytes.buffer).setUint32(0, text.length, true);
    bytes.set(text, 4);
    return bytes;
  }
  const bytes = new Uint8Array(type === 'boolean' ? 1 : type === 'integer' ? 4 : 8);
  const view = new DataView(bytes.buffer);
  if (type === 'boolean') view.setUint8(0, value ? 1 : 0);
  else if (type === 'integer') view.setInt32(0, Number(value), true);
  else if (type === 'wide-integer') view.setBigInt64(0, BigInt(value as number), true);
  else view.setFloat64(0, Number(value), true);
  return bytes;
}
