/** Records as rows: what a row holds, and the statements that read, add, change and delete one. */
import type { LonLatGeometry } from '@crownfall/geometry';
import type { LayerName } from '@crownfall/survey';
import { geometryBlob, readGeometryBlob } from '../../store/geopackage/geometry-blob.ts';
import { columnValue, contractFields } from '../../store/layer-fields.ts';
import type { Properties, StoredRecord } from '../../store/project-store.ts';
import { quoted } from './schema-sql.ts';
import type { Query, Row } from './sql-session.ts';

/** What to select for `recordOf` to read. */
export const RECORD_COLUMNS = "record_id, version, coalesce(unfit, ST_AsBinary(geom, 'NDR')) AS wkb, properties";

export const tableOf = (layer: LayerName): string => `crownfall.${quoted(layer)}`;

export function recordOf(layer: LayerName, row: Row): StoredRecord {
  return {
    layer,
    recordId: row.record_id as number,
    version: row.version as number,
    geometry: geometryOfWkb(row.wkb as Uint8Array | null),
    properties: row.properties as Properties,
  };
}

/** One record, locked against other writers when it is about to be changed. */
export async function findRecord(query: Query, layer: LayerName, recordId: number): Promise<StoredRecord | null> {
  const [row] = await query(`SELECT ${RECORD_COLUMNS} FROM ${tableOf(layer)} WHERE record_id = $1`, [recordId]);
  return row === undefined ? null : recordOf(layer, row);
}

/** Adds a record, under its old number when it is brought back. */
export async function insertRecord(
  query: Query,
  layer: LayerName,
  { geometry, properties }: Pick<StoredRecord, 'geometry' | 'properties'>,
  recordId?: number,
): Promise<StoredRecord> {
  const { names, values } = columnsOf(layer, geometry, properties);
  const number = recordId === undefined ? [] : [recordId];
  const columns = [...names.map(quoted), ...(recordId === undefined ? [] : ['record_id'])];
  const places = [...names.map((name, i) => place(name, i + 1)), ...number.map(() => `$${names.length + 1}`)];
  const [row] = await query(
    `INSERT INTO ${tableOf(layer)} (${columns.join(', ')}) VALUES (${places.join(', ')}) RETURNING ${RECORD_COLUMNS}`,
    [...values, ...number],
  );
  return recordOf(layer, row);
}

/** Puts values in place of a record's. */
export async function replaceRecord(
  query: Query,
  { layer, recordId, geometry, properties }: Omit<StoredRecord, 'version'>,
): Promise<StoredRecord> {
  const { names, values } = columnsOf(layer, geometry, properties);
  const sets = names.map((name, i) => `${quoted(name)} = ${place(name, i + 1)}`);
  const [row] = await query(
    `UPDATE ${tableOf(layer)} SET ${sets.join(', ')} WHERE record_id = $${names.length + 1} RETURNING ${RECORD_COLUMNS}`,
    [...values, recordId],
  );
  return recordOf(layer, row);
}

export async function deleteRecord(query: Query, layer: LayerName, recordId: number): Promise<void> {
  await query(`DELETE FROM ${tableOf(layer)} WHERE record_id = $1`, [recordId]);
}

/** Values of a row by column. A geometry that PostGIS refuses is kept as it is in a column of its own. */
export function columnsOf(
  layer: LayerName,
  geometry: LonLatGeometry,
  properties: Properties,
): { readonly names: readonly string[]; readonly values: readonly unknown[] } {
  const fields = contractFields(layer);
  const wkb = wkbOf(geometry);
  const fits = fitsPostgis(geometry);
  return {
    names: ['geom', 'unfit', 'properties', ...fields.map(({ name }) => name)],
    values: [
      fits ? wkb : null,
      fits ? null : wkb,
      JSON.stringify(properties),
      ...fields.map(({ name, type }) => columnValue(properties[name], type) ?? null),
    ],
  };
}

/** How a value of this column is given to a statement. */
const place = (name: string, number: number): string =>
  name === 'geom' ? `ST_GeomFromWKB($${number}::bytea, 4326)` : `$${number}`;

const NO_GEOMETRY: LonLatGeometry = { kind: 'none' };

/** Well-known binary, little-endian; null for no geometry. A GeoPackage blob is the same behind a header. */
function wkbOf(geometry: LonLatGeometry): Buffer | null {
  const blob = geometryBlob(geometry);
  if (blob === null) return null;
  const header = ((blob[3] >> 1) & 7) === 0 ? 8 : 40;
  return Buffer.from(blob.subarray(header));
}

export function geometryOfWkb(wkb: Uint8Array | null): LonLatGeometry {
  if (wkb === null) return NO_GEOMETRY;
  return readGeometryBlob(Buffer.concat([BLOB_HEADER, wkb])).geometry;
}

/** `GP`, version 0, little-endian without envelope, EPSG:4326. */
const BLOB_HEADER = Buffer.from('47500001e6100000', 'hex');

/** PostGIS wants two positions of a line, three of an open ring, and numbers. */
function fitsPostgis(geometry: LonLatGeometry): boolean {
  const fits = (flat: Float64Array, least: number): boolean => flat.length >= 2 * least && flat.every(Number.isFinite);
  if (geometry.kind === 'point') return geometry.points.every(Number.isFinite);
  if (geometry.kind === 'line') return geometry.lines.every((line) => fits(line, 2));
  return geometry.kind === 'none' || geometry.polygons.every((rings) => rings.every((ring) => fits(ring, 3)));
}

/** A state of the journal: hexadecimal WKB and properties. */
export interface JournalState {
  readonly geometry: string | null;
  readonly properties: Properties;
}

export const geometryOfHex = (hex: string | null): LonLatGeometry =>
  geometryOfWkb(hex === null ? null : Buffer.from(hex, 'hex'));

export const hexOf = (geometry: LonLatGeometry): string | null => wkbOf(geometry)?.toString('hex') ?? null;
