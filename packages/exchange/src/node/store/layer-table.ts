import { LAYER_NAMES, type LayerName } from '@crownfall/survey';
import type { Database } from 'better-sqlite3';
import {
  contractFields,
  LOOKUP_FIELDS,
  NAMING_FIELDS,
  PLACELESS_LAYERS,
  type StoredField,
} from '../../store/layer-fields.ts';
import type { FieldType } from '../../store/project-store.ts';
import { RTREE_EXTENSION } from './geopackage-tables.ts';
import { rtreeExtent } from './rtree-extent.ts';
import { literal, quoted } from './sql-names.ts';

/** One table with its columns as they stand in the file, in their order. */
export interface LayerTable {
  readonly name: string;
  readonly fields: readonly StoredField[];
  /** Name of the geometry column; null in a table of attributes. */
  readonly geometry: string | null;
  /** Whether it has a column for values that fit no other. */
  readonly extra: boolean;
}

export const GEOMETRY_COLUMN = 'geom';
export const EXTRA_COLUMN = 'extra';
const OWN_COLUMNS = ['fid', GEOMETRY_COLUMN, EXTRA_COLUMN];
/** Names that SQLite gives another meaning. */
const RESERVED = new Set([...OWN_COLUMNS, 'rowid', 'oid', '_rowid_']);
/** Of fields beyond the contract so many become columns; the others are kept in `extra`. */
export const MOST_FURTHER_COLUMNS = 60;

const SQL_TYPES: Readonly<Record<FieldType, string>> = {
  text: 'TEXT',
  number: 'DOUBLE',
  integer: 'INTEGER',
  boolean: 'BOOLEAN',
  day: 'DATE',
  numbers: 'TEXT',
};

const DESCRIPTIONS: Readonly<Record<LayerName, string>> = {
  crowns: 'Crowns of street trees: area, or point with spreads',
  pavement: 'Pavement: area, or line with a width',
  blocks: 'Blocks',
  ratings: 'Ratings of crowns',
  quadrats: 'Measured plots on the pavement',
  complaints: 'Complaints',
  bloom: 'Bloom observations',
  water: 'Water, drains and wells',
  sites: 'Sensitive sites',
  streets: 'Streets',
};

/** Whether a field can be a column beside those that are there; SQLite does not tell capitals from small letters. */
export function canBeColumn(name: string, taken: ReadonlySet<string>): boolean {
  const key = name.toLowerCase();
  return name.trim() !== '' && name.length <= 60 && !/\p{Cc}|"/u.test(name) && !RESERVED.has(key) && !taken.has(key);
}

/** The tables of all layers, empty, with the contract's columns; without indexes and triggers. */
export function createLayerTables(db: Database): void {
  for (const layer of LAYER_NAMES) {
    createTable(db, {
      name: layer,
      description: DESCRIPTIONS[layer],
      fields: contractFields(layer),
      placed: isPlaced(layer),
    });
    for (const field of lookedUp(layer)) {
      db.exec(`CREATE INDEX ${quoted(`crownfall_${layer}_${field}`)} ON ${quoted(layer)} (${quoted(field)})`);
    }
  }
}

function isPlaced(layer: LayerName): boolean {
  return !PLACELESS_LAYERS.includes(layer);
}

function lookedUp(layer: LayerName): readonly string[] {
  return [...(LOOKUP_FIELDS[layer] ?? []), ...(NAMING_FIELDS[layer] ? [NAMING_FIELDS[layer].field] : [])];
}

export interface TableWish {
  readonly name: string;
  readonly description: string;
  readonly fields: readonly StoredField[];
  /** Features with a place, or attributes. */
  readonly placed: boolean;
  /** A layer for other programs: without the column `extra` and our index; its geometries are of this type. */
  readonly plain?: { readonly geometryType: string };
}

/** A table registered as GeoPackage asks, with its R-tree (empty) when its records have a place. */
export function createTable(db: Database, { name, description, fields, placed, plain }: TableWish): void {
  const columns = [
    'fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL',
    ...(placed ? [`${GEOMETRY_COLUMN} GEOMETRY`] : []),
    ...fields.map((field) => `${quoted(field.name)} ${SQL_TYPES[field.type]}`),
    ...(plain ? [] : [`${EXTRA_COLUMN} TEXT`]),
  ];
  db.exec(`CREATE TABLE ${quoted(name)} (${columns.join(', ')})`);
  db.prepare(
    'INSERT INTO gpkg_contents (table_name, data_type, identifier, description, srs_id) VALUES (?, ?, ?, ?, ?)',
  ).run(name, placed ? 'features' : 'attributes', name, description, placed ? 4326 : null);
  if (!plain) describeColumns(db, name, fields);
  if (placed) registerGeometry(db, name, plain?.geometryType);
  if (placed && !plain) indexPlaceless(db, name);
}

/** Adds a column for a field that the table does not have yet. */
export function addColumn(db: Database, table: string, field: StoredField): void {
  db.exec(`ALTER TABLE ${quoted(table)} ADD COLUMN ${quoted(field.name)} ${SQL_TYPES[field.type]}`);
}

/** Gives an attribute table a place: somebody keeps positions where the contract has none, and they are not to be lost. */
export function makePlaced(db: Database, name: string): void {
  db.exec(`ALTER TABLE ${quoted(name)} ADD COLUMN ${GEOMETRY_COLUMN} GEOMETRY`);
  db.prepare("UPDATE gpkg_contents SET data_type = 'features', srs_id = 4326 WHERE table_name = ?").run(name);
  registerGeometry(db, name);
  indexPlaceless(db, name);
}

/** Sets the extent that other programs zoom to: west, south, east, north. */
export function setExtent(db: Database, name: string, box: readonly [number, number, number, number]): void {
  const sql = 'UPDATE gpkg_contents SET min_x = ?, min_y = ?, max_x = ?, max_y = ? WHERE table_name = ?';
  db.prepare(sql).run(...box, name);
}

function registerGeometry(db: Database, name: string, type = 'GEOMETRY'): void {
  db.prepare('INSERT INTO gpkg_geometry_columns VALUES (?, ?, ?, 4326, 0, 0)').run(name, GEOMETRY_COLUMN, type);
  const rtree = rtreeName(name);
  db.exec(`CREATE VIRTUAL TABLE ${quoted(rtree)} USING rtree(id, minx, maxx, miny, maxy)`);
  db.prepare("INSERT INTO gpkg_extensions VALUES (?, ?, 'gpkg_rtree_index', ?, 'write-only')").run(
    name,
    GEOMETRY_COLUMN,
    RTREE_EXTENSION,
  );
}

function indexPlaceless(db: Database, name: string): void {
  db.exec(
    `CREATE INDEX ${quoted(`crownfall_${name}_placeless`)} ON ${quoted(name)} (fid) WHERE ${GEOMETRY_COLUMN} IS NULL`,
  );
}

export function rtreeName(table: string): string {
  return `rtree_${table}_${GEOMETRY_COLUMN}`;
}

function describeColumns(db: Database, table: string, fields: readonly StoredField[]): void {
  const describe = db.prepare('INSERT INTO gpkg_data_columns VALUES (?, ?, ?, NULL, ?, ?, ?)');
  const allow = db.prepare(
    "INSERT INTO gpkg_data_column_constraints VALUES (?, 'enum', ?, NULL, NULL, NULL, NULL, NULL)",
  );
  for (const { name, description, words } of fields) {
    if (description === undefined) continue;
    const domain = words === undefined ? null : `${table}_${name}`;
    for (const word of words ?? []) allow.run(domain, word);
    describe.run(table, name, name, description, null, domain);
  }
  describe.run(
    table,
    EXTRA_COLUMN,
    EXTRA_COLUMN,
    'Values that fit no other column, as a JSON object.',
    'application/json',
    null,
  );
}

/** A table's columns as they stand, those that other programs added included; null when there is no such table. */
export function readLayerTable(db: Database, name: string): LayerTable | null {
  const columns = db.pragma(`table_info(${literal(name)})`) as readonly { name: string; type: string }[];
  if (columns.length === 0) return null;
  const fields = columns
    .filter((column) => !OWN_COLUMNS.includes(column.name))
    .flatMap((column) => {
      const type = typeOf(name, column);
      return type === null ? [] : [{ name: column.name, type }];
    });
  const has = (column: string): boolean => columns.some((other) => other.name === column);
  return { name, fields, geometry: has(GEOMETRY_COLUMN) ? GEOMETRY_COLUMN : null, extra: has(EXTRA_COLUMN) };
}

function typeOf(table: string, { name, type }: { readonly name: string; readonly type: string }): FieldType | null {
  if (table === 'crowns' && name === 'radii_m') return 'numbers';
  const plain = type.toUpperCase().replace(/\(.*/, '').trim();
  if (['TEXT', 'VARCHAR', 'DATETIME'].includes(plain)) return 'text';
  if (['DOUBLE', 'REAL', 'FLOAT'].includes(plain)) return 'number';
  if (['INTEGER', 'INT', 'MEDIUMINT', 'SMALLINT', 'TINYINT', 'BIGINT'].includes(plain)) return 'integer';
  if (plain === 'BOOLEAN') return 'boolean';
  return plain === 'DATE' ? 'day' : null;
}

/** Tells other programs when tables last changed, and widens what they zoom to. */
export function touchContents(db: Database, layers: ReadonlySet<string>, at: string): void {
  const touch = db.prepare('UPDATE gpkg_contents SET last_change = ? WHERE table_name = ?');
  const widen = db.prepare(
    'UPDATE gpkg_contents SET min_x = min(coalesce(min_x, @west), @west), min_y = min(coalesce(min_y, @south), @south), ' +
      'max_x = max(coalesce(max_x, @east), @east), max_y = max(coalesce(max_y, @north), @north) WHERE table_name = @name',
  );
  for (const name of layers) {
    touch.run(new Date(at).toISOString(), name);
    const placed = readLayerTable(db, name)?.geometry !== null;
    const box = placed ? rtreeExtent(db, rtreeName(name)) : null;
    if (box !== null) widen.run({ west: box[0], south: box[1], east: box[2], north: box[3], name });
  }
}
