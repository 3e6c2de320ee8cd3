/**
 * A layer in any program's GeoPackage (OGC 12-128): one table of features or attributes, its positions in the system the
 * file states.
 */
import type { LonLatGeometry } from '@crownfall/geometry';
import { finding } from '@crownfall/survey';
import { tellDamage } from '../../formats/damage.ts';
import { plainProperties } from '../../formats/plain-value.ts';
import type { FeatureTaker } from '../../geojson/feature-taker.ts';
import type { LayerSource } from '../../layer-reading.ts';
import { readGeometryBlob } from '../../store/geopackage/geometry-blob.ts';
import { connect } from './connection.ts';
import { literal, quoted } from './sql-names.ts';
import type { Connection } from './sqlite-module.ts';
import { isDamage } from './sqlite-outage.ts';
import { isDamageOutage } from './store-refusals.ts';

interface Table {
  readonly name: string;
  readonly kind: 'features' | 'attributes';
  /** Null in a table of attributes. */
  readonly geometry: string | null;
  readonly crs: string | null;
}

/**
 * Hands over all features of the table that the entry names, else of the one named as the layer, else of the only one.
 * Numbers of rows (`fid`) are no fields; curves, and geometries of several kinds at once, are told and left out. A
 * damaged file gives the features before the damage. Throws an `Outage` when SQLite is not installed or the file locked.
 */
export async function takeGeoPackage(
  path: string,
  { entry, layer }: Pick<LayerSource, 'entry' | 'layer'>,
  taker: FeatureTaker,
): Promise<void> {
  let db: Connection | null = null;
  try {
    db = await connect(path, { readOnly: true });
    const tables = tablesOf(db);
    const table = chosen(tables, entry.table, layer);
    if (table === undefined) tellChoice(tables, entry.table, taker);
    else await takeTable(db, table, taker);
  } catch (error) {
    if (!isDamage(error) && !isDamageOutage(error) && !isForeign(error)) throw error;
    tellDamage(taker, 'GeoPackage', 'its pages do not fit together, or the tables that describe it are missing');
  } finally {
    db?.close();
  }
}

/** A table or column that every GeoPackage has is not there. */
function isForeign(error: unknown): boolean {
  return error instanceof Error && /^no such (table|column)/.test(error.message);
}

interface TableRow {
  readonly table_name: string;
  readonly data_type: Table['kind'];
  readonly column_name: string | null;
  readonly organization: string | null;
  readonly organization_coordsys_id: number | null;
  readonly definition: string | null;
}

function tablesOf(db: Connection): readonly Table[] {
  const sql =
    'SELECT c.table_name, c.data_type, g.column_name, s.organization, s.organization_coordsys_id, s.definition ' +
    'FROM gpkg_contents c LEFT JOIN gpkg_geometry_columns g ON g.table_name = c.table_name ' +
    'LEFT JOIN gpkg_spatial_ref_sys s ON s.srs_id = g.srs_id ' +
    "WHERE c.data_type IN ('features', 'attributes') ORDER BY c.table_name";
  return (db.prepare(sql).all() as TableRow[]).map((row) => ({
    name: row.table_name,
    kind: row.data_type,
    geometry: row.column_name,
    crs: crsOf(row),
  }));
}

/** By its authority where it has one; the systems 0 and -1 are undefined ones. */
function crsOf({ organization, organization_coordsys_id: code, definition }: TableRow): string | null {
  if (organization !== null && code !== null && code > 0 && organization.toUpperCase() !== 'NONE') {
    return `${organization.toUpperCase()}:${code}`;
  }
  return definition === null || definition === 'undefined' ? null : definition;
}

function chosen(tables: readonly Table[], wanted: string | undefined, layer: string | undefined): Table | undefined {
  if (wanted !== undefined) return tables.find(({ name }) => name === wanted);
  const named = tables.find(({ name }) => name === layer);
  const features = tables.filter(({ kind }) => kind === 'features');
  const only = tables.length === 1 ? tables : features;
  return named ?? (only.length === 1 ? only[0] : undefined);
}

function tellChoice(tables: readonly Table[], wanted: string | undefined, taker: FeatureTaker): void {
  const problem =
    wanted === undefined
      ? 'the GeoPackage has several tables; "table" says which'
      : `the GeoPackage has no table ${wanted}`;
  const expected = tables.map(({ name }) => name).join(', ') || 'a table of features';
  taker.findings.add(
    finding('project-invalid', 'error/stops', taker.place, { problem, expected, got: wanted ?? 'none' }),
  );
}

async function takeTable(db: Connection, table: Table, taker: FeatureTaker): Promise<void> {
  if (table.geometry !== null) taker.statedCrs(table.crs);
  const columns = db.pragma(`table_info(${literal(table.name)})`) as { name: string; type: string; pk: number }[];
  const numbering = columns.find(({ name, pk }) => pk > 0 && /^(ogc_)?fid$/i.test(name))?.name;
  const booleans = new Set(columns.filter(({ type }) => /^BOOLEAN$/i.test(type)).map(({ name }) => name));
  const fields = columns.map(({ name }) => name).filter((name) => name !== table.geometry && name !== numbering);
  const rows = db
    .prepare(`SELECT * FROM ${quoted(table.name)}`)
    .safeIntegers()
    .iterate() as Iterable<Record<string, unknown>>;
  for (const row of rows) {
    // An empty cell is no value, as in any table.
    const filled = fields.filter((name) => row[name] !== null);
    const values = filled.map((name) => [name, booleans.has(name) ? booleanOf(row[name]) : row[name]] as const);
    const properties = plainProperties(Object.fromEntries(values), taker);
    const geometry = table.geometry === null ? null : geometryOf(row[table.geometry], taker);
    taker.addFeature({ type: 'Feature', properties, geometry });
    await taker.ready();
  }
}

function booleanOf(value: unknown): unknown {
  return value === 0n || value === 1n ? value === 1n : value;
}

function geometryOf(blob: unknown, taker: FeatureTaker): object | null {
  if (!(blob instanceof Uint8Array)) return null;
  const { geometry, problem } = readGeometryBlob(blob);
  if (problem !== undefined) {
    const facts = { got: problem, expected: 'points, lines or areas with straight edges' };
    const where = { ...taker.place, feature: `#${taker.count() + 1}` };
    taker.findings.add(finding('geometry-unexpected', 'warning/left_out', where, facts));
  }
  return asRead(geometry);
}

/** As GeoJSON, nothing mended: what is wrong with it is for the checks to tell. */
function asRead(geometry: LonLatGeometry): object | null {
  switch (geometry.kind) {
    case 'none':
      return null;
    case 'point':
      return { type: 'MultiPoint', coordinates: pairs(geometry.points) };
    case 'line':
      return { type: 'MultiLineString', coordinates: geometry.lines.map(pairs) };
    case 'area':
      return { type: 'MultiPolygon', coordinates: geometry.polygons.map((rings) => rings.map(closed)) };
  }
}

function pairs(flat: Float64Array): number[][] {
  return Array.from({ length: flat.length / 2 }, (_, i) => [flat[2 * i], flat[2 * i + 1]]);
}

function closed(ring: Float64Array): number[][] {
  const open = pairs(ring);
  return open.length === 0 ? open : [...open, open[0]];
}
