/** One layer as a GeoPackage for other programs: OGC 12-128r18 (GeoPackage 1.3), longitude and latitude, with its R-tree. */
import { APPLICATION_ID, GEOPACKAGE_VERSION } from '../../formats/geopackage/geopackage-facts.ts';
import { type LayerProfile, type ProfiledColumn, valueAs } from '../../formats/layer-profile.ts';
import type { OutFeature } from '../../geojson/write-geojson.ts';
import { extentOf, geometryBlob } from '../../store/geopackage/geometry-blob.ts';
import type { StoredField } from '../../store/layer-fields.ts';
import { connect, orOutage } from './connection.ts';
import { GEOPACKAGE_TABLES } from './geopackage-tables.ts';
import { createTable, GEOMETRY_COLUMN, rtreeName, setExtent } from './layer-table.ts';
import { rtreeTriggers } from './layer-triggers.ts';
import { quoted } from './sql-names.ts';
import type { Connection } from './sqlite-module.ts';

type Batches = AsyncIterable<Iterable<OutFeature>>;

/**
 * Writes the features into a new file at `path` as they come; memory holds one batch. Columns have the types of all their
 * values, lists and objects are JSON text; a field named as the numbers or the geometry gets an underscore. A layer without any
 * geometry is a table of attributes. Throws an `Outage` when the disk fails.
 */
export async function writeGeoPackageLayer(
  path: string,
  batches: Batches,
  { profile, name }: { readonly profile: LayerProfile; readonly name: string },
): Promise<void> {
  const db = await connect(path, { readOnly: false, create: true });
  try {
    await orOutage('write', path, async () => {
      // The whole file is flushed before it is moved into place.
      db.pragma('synchronous = OFF');
      db.pragma(`application_id = ${APPLICATION_ID}`);
      db.pragma(`user_version = ${GEOPACKAGE_VERSION}`);
      db.exec('BEGIN');
      db.exec(GEOPACKAGE_TABLES);
      await filled(db, batches, { profile, name });
      db.exec('COMMIT');
    });
  } finally {
    db.close();
  }
}

async function filled(
  db: Connection,
  batches: Batches,
  { profile, name }: { readonly profile: LayerProfile; readonly name: string },
): Promise<void> {
  const fields = fieldsOf(profile.columns);
  const placed = profile.kinds.size > 0;
  createTable(db, { name, description: '', fields, placed, plain: { geometryType: geometryType(profile) } });
  const names = [...(placed ? [GEOMETRY_COLUMN] : []), ...fields.map((field) => field.name)];
  const places = names.length === 0 ? 'DEFAULT VALUES' : `VALUES (${names.map(() => '?').join(', ')})`;
  const columns = names.length === 0 ? '' : `(${names.map(quoted).join(', ')})`;
  const insert = db.prepare(`INSERT INTO ${quoted(name)} ${columns} ${places}`);
  const index = placed ? db.prepare(`INSERT INTO ${quoted(rtreeName(name))} VALUES (?, ?, ?, ?, ?)`) : null;
  for await (const batch of batches) {
    for (const { geometry, properties } of batch) {
      const values = profile.columns.map(({ name: field, type }) => cell(type, properties[field]));
      const { lastInsertRowid } = insert.run([...(placed ? [geometryBlob(geometry)] : []), ...values]);
      const box = extentOf(geometry);
      if (box !== null) index?.run(lastInsertRowid, ...box);
    }
  }
  if (!placed) return;
  if (profile.box !== null) setExtent(db, name, profile.box);
  for (const { sql } of rtreeTriggers(name)) db.exec(sql);
}

const SQL_TYPES: Readonly<Record<ProfiledColumn['type'], StoredField['type']>> = {
  boolean: 'boolean',
  integer: 'integer',
  'wide-integer': 'integer',
  number: 'number',
  text: 'text',
  json: 'text',
};

/** SQLite does not tell capitals from small letters, and the names of the numbers and the geometry are taken. */
function fieldsOf(columns: readonly ProfiledColumn[]): StoredField[] {
  const taken = new Set(['fid', GEOMETRY_COLUMN, 'rowid', 'oid', '_rowid_']);
  return columns.map(({ name, type }) => {
    let free = name === '' ? '_' : name;
    while (taken.has(free.toLowerCase())) free += '_';
    taken.add(free.toLowerCase());
    return { name: free, type: SQL_TYPES[type] };
  });
}

/** A type of its own where all geometries are single ones of one kind. */
function geometryType({ kinds, multi }: LayerProfile): string {
  const [kind] = kinds;
  if (kinds.size !== 1 || multi) return 'GEOMETRY';
  return { point: 'POINT', line: 'LINESTRING', area: 'POLYGON' }[kind];
}

function cell(type: ProfiledColumn['type'], value: unknown): string | number | null {
  const stored = valueAs(type, value);
  if (stored === null || stored === undefined) return null;
  if (type === 'json') return JSON.stringify(stored);
  return typeof stored === 'boolean' ? Number(stored) : (stored as string | number);
}
