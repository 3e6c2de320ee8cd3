/**
 * One layer as a GeoPackage file in memory, for pages that have no SQLite: OGC 12-128r18 (GeoPackage 1.3), tables of reference
 * systems, contents and geometry columns, and one of features.
 */
import type { OutFeature } from '../../geojson/write-geojson.ts';
import { extentOf, geometryBlob } from '../../store/geopackage/geometry-blob.ts';
import { APPLICATION_ID, GEOPACKAGE_VERSION, WGS84 } from './geopackage-facts.ts';
import { type SqliteTable, type SqliteValue, sqliteFile } from './sqlite-file.ts';

export interface GeopackageLayer {
  readonly name: string;
  readonly description: string;
  /** Longitude and latitude; properties are text, numbers, yes or no, or values kept as JSON text. */
  readonly features: readonly OutFeature[];
  /** When it was made, ISO instant. */
  readonly madeAt: string;
}

/**
 * The bytes of the file. Columns are the properties of all features, in the order in which they first appear. No features give an
 * empty layer.
 *
 * @example geopackageFile({ name: 'blocks', description: '', features: [], madeAt: '2026-05-20T00:00:00Z' })
 */
export function geopackageFile(layer: GeopackageLayer): Uint8Array {
  const { name, description, features, madeAt } = layer;
  const columns = columnsOf(features);
  const box = boundsOf(features);
  const rows = features.map(({ geometry, properties }): SqliteValue[] => [
    null,
    geometryBlob(geometry),
    ...columns.map(({ field }) => stored(properties[field])),
  ]);
  const types = [
    'fid INTEGER PRIMARY KEY NOT NULL',
    'geom GEOMETRY',
    ...columns.map(({ field, type }) => `${quoted(field)} ${type}`),
  ];
  const tables: SqliteTable[] = [
    { name: 'gpkg_spatial_ref_sys', sql: REFERENCE_SYSTEMS, rows: SYSTEMS, rowIds: SYSTEM_IDS },
    {
      name: 'gpkg_contents',
      sql: CONTENTS,
      rows: [[name, 'features', name, description, madeAt, ...box, 4326]],
      uniques: [[0], [2]],
    },
    {
      name: 'gpkg_geometry_columns',
      sql: GEOMETRY_COLUMNS,
      rows: [[name, 'geom', 'GEOMETRY', 4326, 0, 0]],
      uniques: [[0, 1], [0]],
    },
    { name, sql: `CREATE TABLE ${quoted(name)} (${types.join(', ')})`, rows },
  ];
  return sqliteFile(tables, { applicationId: APPLICATION_ID, userVersion: GEOPACKAGE_VERSION });
}

const REFERENCE_SYSTEMS =
  'CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT NOT NULL, srs_id INTEGER NOT NULL PRIMARY KEY, organization TEXT NOT NULL, ' +
  'organization_coordsys_id INTEGER NOT NULL, definition TEXT NOT NULL, description TEXT)';
const CONTENTS =
  "CREATE TABLE gpkg_contents (table_name TEXT NOT NULL PRIMARY KEY, data_type TEXT NOT NULL, identifier TEXT UNIQUE, description TEXT DEFAULT '', " +
  "last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')), min_x DOUBLE, min_y DOUBLE, max_x DOUBLE, max_y DOUBLE, " +
  'srs_id INTEGER, CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id))';
const GEOMETRY_COLUMNS =
  'CREATE TABLE gpkg_geometry_columns (table_name TEXT NOT NULL, column_name TEXT NOT NULL, geometry_type_name TEXT NOT NULL, ' +
  'srs_id INTEGER NOT NULL, z TINYINT NOT NULL, m TINYINT NOT NULL, CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name), ' +
  'CONSTRAINT uk_gc_table_name UNIQUE (table_name), CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name), ' +
  'CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id))';

/** Requirement 11: what every file knows. Their ids are the row ids. */
const SYSTEM_IDS = [-1, 0, 4326];
const SYSTEMS: readonly (readonly SqliteValue[])[] = [
  ['Undefined Cartesian', null, 'NONE', -1, 'undefined', 'plane coordinates without a system'],
  ['Undefined geographic', null, 'NONE', 0, 'undefined', 'geographic coordinates without a system'],
  ['WGS 84', null, 'EPSG', 4326, WGS84, 'longitude and latitude in degrees'],
];

interface Column {
  readonly field: string;
  readonly type: 'REAL' | 'TEXT' | 'BOOLEAN';
}

function columnsOf(features: readonly OutFeature[]): readonly Column[] {
  const fields = new Set(features.flatMap(({ properties }) => Object.keys(properties)));
  return [...fields].map((field) => {
    const values = features.map(({ properties }) => properties[field] ?? null).filter((value) => value !== null);
    return { field, type: typeOf(values) };
  });
}

function typeOf(values: readonly unknown[]): Column['type'] {
  if (values.length > 0 && values.every((value) => typeof value === 'number')) return 'REAL';
  return values.length > 0 && values.every((value) => typeof value === 'boolean') ? 'BOOLEAN' : 'TEXT';
}

function stored(value: unknown): SqliteValue {
  if (typeof value === 'number') return Number.isFinite(value) ? value : null;
  if (typeof value === 'boolean') return value ? 1 : 0;
  if (value === null || value === undefined) return null;
  return typeof value === 'string' ? value : JSON.stringify(value);
}

/** Of the contents: min x, min y, max x, max y. */
function boundsOf(features: readonly OutFeature[]): SqliteValue[] {
  const boxes = features.flatMap(({ geometry }) => extentOf(geometry) ?? []);
  if (boxes.length === 0) return [null, null, null, null];
  const every = (offset: number): number[] => boxes.filter((_, i) => i % 4 === offset);
  const least = (offset: number): number => every(offset).reduce((a, b) => Math.min(a, b));
  const most = (offset: number): number => every(offset).reduce((a, b) => Math.max(a, b));
  return [least(0), least(2), most(1), most(3)];
}

const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;
