import type { Finding, Place } from '@crownfall/geometry';
import type { LayerName, RawLayer } from '@crownfall/survey';
import type { ByteStream } from './byte-stream.ts';
import type { FeatureTaker } from './geojson/feature-taker.ts';

/** How a project describes one layer's file. */
export interface LayerEntry {
  /** As written in project.json. */
  readonly path: string;
  readonly crs?: string;
  /** OUR_NAME: THEIR_NAME. Columns that are not named here keep their own name. */
  readonly fields?: Readonly<Record<string, string>>;
  /** OUR_NAME: the unit the file has it in. */
  readonly units?: Readonly<Record<string, string>>;
  /** Which table of a GeoPackage; without it the one of the layer's name, or the only one. */
  readonly table?: string;
  /** Table columns (their names) whose cells are not what they look like: `text`, or JSON text in each cell. */
  readonly types?: Readonly<Record<string, 'text' | 'json'>>;
}

/** Any part of a file, as often as wanted: what formats with their directory at the end need. */
export interface RandomAccess {
  readonly byteLength: number;
  /** The bytes from `start` up to, not including, `end`. */
  slice(start: number, end: number): Promise<Uint8Array>;
}

/** One file to read as one layer. */
export interface LayerSource {
  readonly bytes: ByteStream;
  readonly entry: LayerEntry;
  /** The same file once more, for formats that cannot be read from front to back; without it they are held in memory. */
  readonly file?: RandomAccess;
  /** The file of the same name with another extension (`dbf`); null when there is none. */
  readonly beside?: (extension: string) => Promise<ByteStream | null>;
  /** Reads a GeoPackage; absent where there is no SQLite (a browser): such a file is then of an unknown format. */
  readonly takeGeoPackage?: (source: Pick<LayerSource, 'entry' | 'layer'>, taker: FeatureTaker) => Promise<void>;
  /** Which layer of a project it is; without it the reader has no field that names a feature. */
  readonly layer?: LayerName;
}

export interface LayerReading {
  /** null when nothing could be read. */
  readonly layer: RawLayer | null;
  readonly findings: readonly Finding[];
}

/** The field that names a record of each layer. */
export const ID_FIELD: Readonly<Record<LayerName, string>> = {
  crowns: 'tree_id',
  pavement: 'pavement_id',
  blocks: 'block_id',
  ratings: 'tree_id',
  quadrats: 'quadrat_id',
  complaints: 'complaint_id',
  bloom: 'tree_id',
  water: 'water_id',
  sites: 'site_id',
  streets: 'street_id',
};

/** Where a source is, for its findings. */
export function placeOf(source: Pick<LayerSource, 'entry' | 'layer'>): Place {
  return { ...(source.layer === undefined ? {} : { layer: source.layer }), file: source.entry.path };
}

/** How a person would name a feature: by its own id, else by its position in the file, `#12`. */
export function featureName(layer: LayerName | undefined, properties: object, row: number): string {
  const id = layer === undefined ? undefined : (properties as Record<string, unknown>)[ID_FIELD[layer]];
  return (typeof id === 'string' && id !== '') || typeof id === 'number' ? String(id) : `#${row}`;
}
