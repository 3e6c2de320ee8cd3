/** The formats layers are read from. */
export type LayerFormat =
  | 'geojson'
  | 'geojsonl'
  | 'csv'
  | 'shapefile'
  | 'flatgeobuf'
  | 'geoparquet'
  | 'kml'
  | 'gpx'
  | 'geopackage'
  | 'zip';

/** The formats layers are written in, and the extension of each. */
export const WRITTEN_EXTENSIONS = {
  geojson: 'geojson',
  geojsonl: 'geojsonl',
  csv: 'csv',
  flatgeobuf: 'fgb',
  geoparquet: 'parquet',
} as const;
export type WrittenFormat = keyof typeof WRITTEN_EXTENSIONS;

/** What to give when a file is in none of them. */
export const READABLE_FORMATS =
  'GeoJSON (.geojson, .json), GeoJSON text sequence (.geojsonl), delimited text (.csv, .tsv, .txt), Shapefile (.shp with ' +
  '.dbf and .prj, or zipped), FlatGeobuf (.fgb), GeoParquet (.parquet), KML (.kml, .kmz), GPX (.gpx), GeoPackage (.gpkg; by programs with a disk)';

const BY_EXTENSION: Readonly<Record<string, LayerFormat>> = {
  geojson: 'geojson',
  json: 'geojson',
  geojsonl: 'geojsonl',
  geojsons: 'geojsonl',
  ndjson: 'geojsonl',
  jsonl: 'geojsonl',
  csv: 'csv',
  tsv: 'csv',
};

/** How files of the binary formats start: file code of Shapefile 9994 big-endian; magic bytes of the others (`SQLite`). */
const BY_MAGIC: readonly (readonly [LayerFormat, readonly number[]])[] = [
  ['shapefile', [0x00, 0x00, 0x27, 0x0a]],
  ['flatgeobuf', [0x66, 0x67, 0x62, 0x03]],
  ['geoparquet', [0x50, 0x41, 0x52, 0x31]],
  ['zip', [0x50, 0x4b, 0x03, 0x04]],
  ['geopackage', [0x53, 0x51, 0x4c, 0x69, 0x74, 0x65]],
];

/**
 * The format of a layer's file, by its first bytes, else by its name; `null` when it is none that can be read: a binary
 * file of another kind, or a name of another format. A binary file is never taken for what its name says.
 */
export function layerFormat(path: string, head: Uint8Array): LayerFormat | null {
  const magic = BY_MAGIC.find(([, bytes]) => bytes.every((byte, i) => head[i] === byte));
  if (magic) return magic[0];
  if (looksBinary(head)) return null;
  const start = textStart(head);
  if (start.startsWith('<')) return xmlFormat(start);
  const extension = /\.([^./\\]+)$/.exec(path)?.[1].toLowerCase() ?? '';
  if (Object.hasOwn(BY_EXTENSION, extension)) return BY_EXTENSION[extension];
  if (start.startsWith('{') || start.startsWith('\u001e')) return 'geojson';
  return extension === '' || extension === 'txt' ? 'csv' : null;
}

/** The format a written file's name asks for; `null` when it is none that is written. */
export function writtenFormat(path: string): WrittenFormat | null {
  const extension = /\.([^./\\]+)$/.exec(path)?.[1].toLowerCase() ?? '';
  const found = Object.entries(WRITTEN_EXTENSIONS).find(([, its]) => its === extension);
  if (found) return found[0] as WrittenFormat;
  const other = Object.hasOwn(BY_EXTENSION, extension) ? BY_EXTENSION[extension] : undefined;
  return other === 'geojson' || other === 'geojsonl' ? other : extension === 'geoparquet' ? 'geoparquet' : null;
}

function textStart(head: Uint8Array): string {
  const utf16 = head[0] === 0xff && head[1] === 0xfe ? 'utf-16le' : head[0] === 0xfe && head[1] === 0xff && 'utf-16be';
  return new TextDecoder(utf16 || 'utf-8').decode(head.subarray(0, 4096)).trimStart();
}

/** XML is known by its root element; what stands before it (declaration, comments, a document type) is passed over. */
function xmlFormat(start: string): LayerFormat | null {
  const root = /<(?:[\w.-]+:)?(kml|gpx)[\s>/]/i.exec(start)?.[1].toLowerCase();
  return root === 'kml' || root === 'gpx' ? root : null;
}

/** A NUL byte occurs in no text but UTF-16, which starts with a byte order mark. */
function looksBinary(head: Uint8Array): boolean {
  const utf16 = (head[0] === 0xff && head[1] === 0xfe) || (head[0] === 0xfe && head[1] === 0xff);
  return !utf16 && head.subarray(0, 4096).includes(0);
}
