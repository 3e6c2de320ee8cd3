/** The formats layers are read from. */
export type LayerFormat = 'geojson' | 'geojsonl' | 'csv';

/** What to give when a file is in none of them. */
export const READABLE_FORMATS =
  'GeoJSON (.geojson, .json), GeoJSON text sequence (.geojsonl), delimited text (.csv, .tsv, .txt)';

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

/**
 * The format of a layer's file, by its name, else by its first bytes; `null` when it is none that can be read: a binary
 * file, or a name of another format.
 */
export function layerFormat(path: string, head: Uint8Array): LayerFormat | null {
  const extension = /\.([^./\\]+)$/.exec(path)?.[1].toLowerCase() ?? '';
  if (looksBinary(head)) return null;
  if (Object.hasOwn(BY_EXTENSION, extension)) return BY_EXTENSION[extension];
  const start = new TextDecoder().decode(head.subarray(0, 1024)).trimStart();
  if (start.startsWith('{') || start.startsWith('\u001e')) return 'geojson';
  return extension === '' || extension === 'txt' ? 'csv' : null;
}

/** A NUL byte occurs in no text but UTF-16, which starts with a byte order mark. */
function looksBinary(head: Uint8Array): boolean {
  const utf16 = (head[0] === 0xff && head[1] === 0xfe) || (head[0] === 0xfe && head[1] === 0xff);
  return !utf16 && head.subarray(0, 4096).includes(0);
}
