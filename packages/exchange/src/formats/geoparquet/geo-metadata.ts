/** The `geo` key of GeoParquet 1.0 and 1.1: which column is the geometry, how it is encoded, in which system. */

/** What is needed of a file's `geo` metadata to read it. */
export interface GeoMetadata {
  readonly column: string;
  readonly encoding: string;
  /** Text that `resolveCrs` reads; null: the file says that the system is unknown. */
  readonly crs: string | null;
  /** The column that holds boxes for lookups, no data of its own. */
  readonly boxColumn: string | null;
}

/** Reads the metadata; throws a `RangeError` saying what is wrong with it. */
export function readGeoMetadata(text: string | undefined): GeoMetadata {
  if (text === undefined) throw new RangeError('it is a Parquet table without the "geo" metadata of GeoParquet');
  const geo = JSON.parse(text) as { primary_column?: unknown; columns?: Record<string, unknown> };
  const column = String(geo.primary_column);
  const its = geo.columns && Object.hasOwn(geo.columns, column) ? geo.columns[column] : undefined;
  if (typeof its !== 'object' || its === null) throw new RangeError(`its primary column "${column}" is not described`);
  const { encoding, crs, covering } = its as { encoding?: unknown; crs?: unknown; covering?: unknown };
  if (typeof encoding !== 'string') throw new RangeError(`the encoding of "${column}" is not stated`);
  return { column, encoding, crs: crsText(crs), boxColumn: boxColumn(covering) };
}

/** Absent means longitude and latitude on WGS 84; null means unknown; else it is PROJJSON (GeoParquet 1.1, "crs"). */
function crsText(crs: unknown): string | null {
  if (crs === undefined) return 'OGC:CRS84';
  if (crs === null) return null;
  return typeof crs === 'string' ? crs : JSON.stringify(crs);
}

function boxColumn(covering: unknown): string | null {
  const path = (covering as { bbox?: { xmin?: unknown } } | undefined)?.bbox?.xmin;
  return Array.isArray(path) && path.length === 2 && typeof path[0] === 'string' ? path[0] : null;
}

/** A native (GeoArrow) geometry as GeoJSON: points are `{x, y}`, everything else lists of them. */
export function geometryFromNative(encoding: string, value: unknown): object | null {
  const type = NATIVE_TYPES[encoding.toLowerCase()];
  return type === undefined || value === null || value === undefined ? null : { type, coordinates: positions(value) };
}

const NATIVE_TYPES: Readonly<Record<string, string>> = {
  point: 'Point',
  linestring: 'LineString',
  polygon: 'Polygon',
  multipoint: 'MultiPoint',
  multilinestring: 'MultiLineString',
  multipolygon: 'MultiPolygon',
};

function positions(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(positions);
  const { x, y } = value as { x?: unknown; y?: unknown };
  return [x, y];
}

/** Whether geometries of this encoding can be read. */
export function isReadableEncoding(encoding: string): boolean {
  return encoding === 'WKB' || Object.hasOwn(NATIVE_TYPES, encoding.toLowerCase());
}
